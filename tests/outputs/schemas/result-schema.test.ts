import { readFileSync, writeFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { jsonDocument, ndjsonDocument, RESULT_SCHEMA, resultSchemaText } from "../../../src/outputs/index.js";
import { fakeScreening } from "../fake-screening.js";

const FILE = new URL("../../../schemas/result.schema.json", import.meta.url);
/** Set to 1 to write the schema file anew from the source. */
const REWRITE = "WRITE_SCHEMAS";

const ajv = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true });
const validates = ajv.compile(RESULT_SCHEMA);
const validatesLine = ajv.compile({ $ref: "result.schema.json#/$defs/ndjsonLine" });

/** A document as read from text; the tests below break it on purpose. */
type Broken = ReturnType<typeof JSON.parse>;

function documentRead(): Broken {
  return JSON.parse([...jsonDocument(fakeScreening())].join(""));
}

describe("the schema of the result document", () => {
  it(`is what the file holds (${REWRITE}=1 writes it anew)`, () => {
    if (process.env[REWRITE] === "1") writeFileSync(FILE, resultSchemaText());
    // The formatter breaks lines its own way, so that only the order of keys and the values count.
    expect(JSON.stringify(JSON.parse(readFileSync(FILE, "utf8")))).toBe(JSON.stringify(RESULT_SCHEMA));
  });

  it("accepts every outcome and every kind of fact", () => {
    validates(documentRead());
    expect(validates.errors).toBeNull();
  });

  it("accepts every line of the NDJSON form, and no other", () => {
    for (const line of ndjsonDocument(fakeScreening())) {
      validatesLine(JSON.parse(line));
      expect(validatesLine.errors).toBeNull();
    }
    expect(validatesLine({})).toBe(false);
    expect(validatesLine({ summary: {}, points: [] })).toBe(false);
  });

  it.each<[string, (document: Broken) => void]>([
    ["a missing key", (d) => delete d.asOf],
    ["an unknown key", (d) => Object.assign(d.points[0], { score: 7 })],
    ["an unknown key in a finding", (d) => Object.assign(d.points[1].findings[0], { weight: 1 })],
    ["a day that is none", (d) => Object.assign(d, { asOf: "1.6.2026" })],
    ["a digest that is none", (d) => Object.assign(d.surveys[0], { digest: "abc" })],
    ["an id of another version", (d) => Object.assign(d.points[0], { id: "0c9d3a52-7b1e-4f0a-8c44-000000000004" })],
    ["an unknown verdict", (d) => Object.assign(d.points[0], { verdict: "maybe" })],
    ["an unknown outcome", (d) => Object.assign(d.points[0].findings[0], { outcome: "good" })],
    ["an unknown basis", (d) => Object.assign(d.rules[0].citations[0], { basis: "hearsay" })],
    ["a cell without a row", (d) => Object.assign(d.points[1].findings[0].facts[0].cells[0], { cell: "E" })],
    ["a pair of three", (d) => Object.assign(d.points[1].findings[1].limit, { value: [1, 2, 3] })],
    ["a row of 0", (d) => Object.assign(d.points[0], { row: 0 })],
    ["a count below 0", (d) => Object.assign(d.summary, { fail: -1 })],
    ["no summary", (d) => delete d.summary],
  ])("refuses %s", (_name, breakIt) => {
    const document = documentRead();
    breakIt(document);
    expect(validates(document)).toBe(false);
  });

  it("describes every key", () => {
    const bare: string[] = [];
    const walk = (part: unknown, path: string): void => {
      if (typeof part !== "object" || part === null) return;
      const described = "description" in part || "$ref" in part || "anyOf" in part;
      if (/\/properties\/\w+$/.test(path) && !described) bare.push(path);
      for (const [key, inner] of Object.entries(part)) walk(inner, `${path}/${key}`);
    };
    walk(RESULT_SCHEMA, "");
    expect(bare).toEqual([]);
  });
});
