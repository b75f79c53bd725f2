import { readFileSync, writeFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import {
  BUILT_SCHEMA,
  builtSchemaText,
  ISSUED_HEAD_SCHEMA,
  ISSUED_POINT_SCHEMA,
  jsonDocument,
} from "../../../src/outputs/index.js";
import { fakeScreening } from "../fake-screening.js";

const FILE = new URL("../../../schemas/built.schema.json", import.meta.url);
/** Set to 1 to write the schema file anew from the source. */
const REWRITE = "WRITE_SCHEMAS";

const ajv = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true });

describe("the schema of the comparison", () => {
  it(`is what the file holds (${REWRITE}=1 writes it anew)`, () => {
    if (process.env[REWRITE] === "1") writeFileSync(FILE, builtSchemaText());
    // The formatter breaks lines its own way, so that only the order of keys and the values count.
    expect(JSON.stringify(JSON.parse(readFileSync(FILE, "utf8")))).toBe(JSON.stringify(BUILT_SCHEMA));
  });

  it("is a schema, and describes every key of its own", () => {
    expect(() => ajv.compile(BUILT_SCHEMA)).not.toThrow();
    const bare: string[] = [];
    const walk = (part: unknown, path: string): void => {
      if (typeof part !== "object" || part === null) return;
      const described = "description" in part || "$ref" in part || "anyOf" in part;
      if (/\/properties\/\w+$/.test(path) && !described) bare.push(path);
      for (const [key, inner] of Object.entries(part)) walk(inner, `${path}/${key}`);
    };
    walk(BUILT_SCHEMA, "");
    expect(bare).toEqual([]);
  });
});

describe("the schema of a stored result that is compared with", () => {
  it("accepts what a screening writes", () => {
    const document = JSON.parse([...jsonDocument(fakeScreening())].join("")) as { points: unknown[] };
    const [head, point] = [ajv.compile(ISSUED_HEAD_SCHEMA), ajv.compile(ISSUED_POINT_SCHEMA)];
    head(document);
    expect(head.errors).toBeNull();
    for (const one of document.points) expect(point(one), JSON.stringify(point.errors)).toBe(true);
  });
});
