import { readFileSync, writeFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { MAPPING_SCHEMA } from "../../src/handover/index.js";
import { SCHEMA_FILES } from "../../src/rulebook/index.js";

// The files are for editors; the objects in src/rulebook/schemas and src/handover are what rule files are checked against.
// REWRITE_SCHEMAS=1 npx vitest run tests/rulebook/schema-files.test.ts writes the files anew.
const rewrite = process.env.REWRITE_SCHEMAS === "1";

describe("schemas/", () => {
  it.each(Object.entries({ ...SCHEMA_FILES, "mapping.schema.json": MAPPING_SCHEMA }))(
    "%s says what the program checks",
    (name, schema) => {
      const file = new URL(`../../schemas/${name}`, import.meta.url);
      if (rewrite) writeFileSync(file, `${JSON.stringify(schema, null, 2)}\n`);
      expect(JSON.parse(readFileSync(file, "utf8"))).toEqual(JSON.parse(JSON.stringify(schema)));
    },
  );
});
