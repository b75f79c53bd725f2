import { readFileSync, writeFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { WORK_PACKS_SCHEMA, workPacksJson, workPacksSchemaText } from "../../../src/outputs/index.js";
import { known } from "../../tools/make-record.js";
import { packsOf, safePoint } from "../../workpacks/made.js";

const FILE = new URL("../../../schemas/work-packs.schema.json", import.meta.url);
/** Set to 1 to write the schema file anew from the source. */
const REWRITE = "WRITE_SCHEMAS";

const ajv = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true });

describe("the schema of work packs", () => {
  it(`is what the file holds (${REWRITE}=1 writes it anew)`, () => {
    if (process.env[REWRITE] === "1") writeFileSync(FILE, workPacksSchemaText());
    // The formatter breaks lines its own way, so that only the order of keys and the values count.
    expect(JSON.stringify(JSON.parse(readFileSync(FILE, "utf8")))).toBe(JSON.stringify(WORK_PACKS_SCHEMA));
  });

  it("accepts packs, what is accepted and what is held back, and refuses what it does not know", async () => {
    const strong = { target_torque: known(12) };
    const rows = [safePoint("P-1"), safePoint("P-2", strong), safePoint("P-3", strong)];
    const packs = await packsOf(rows, [{ point: "P-2", rule: "tightening-torque" }]);
    expect(packs.packs.flatMap(({ points }) => points.map(({ accepted }) => accepted.length))).toEqual([0, 1]);
    expect(packs.heldBack).toHaveLength(1);
    const validates = ajv.compile(WORK_PACKS_SCHEMA);
    const document = JSON.parse(workPacksJson(packs));
    validates(document);
    expect(validates.errors).toBeNull();
    for (const broken of [
      { ...document, more: 1 },
      { ...document, packs: [{ ...document.packs[0], id: "A b" }] },
      {
        ...document,
        heldBack: [{ ...document.heldBack[0], reasons: [{ cause: "mood", rule: null, text: "", remedy: "" }] }],
      },
    ]) {
      expect(validates(broken)).toBe(false);
    }
  });

  it("describes every key of its own", () => {
    const bare: string[] = [];
    const walk = (part: unknown, path: string): void => {
      if (typeof part !== "object" || part === null) return;
      const described = "description" in part || "$ref" in part || "anyOf" in part;
      if (/\/properties\/\w+$/.test(path) && !described) bare.push(path);
      for (const [key, inner] of Object.entries(part)) walk(inner, `${path}/${key}`);
    };
    walk(WORK_PACKS_SCHEMA, "");
    expect(bare).toEqual([]);
  });
});
