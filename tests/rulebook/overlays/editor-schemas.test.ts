import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv, type ValidateFunction } from "ajv";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { isPlainDay } from "../../../src/base/index.js";
import { projectPath } from "../../tools/shipped.js";

/** The schemas as an editor has them: files in one folder that name one another. */
function editorSchema(name: string): ValidateFunction {
  // Editors know keywords of their own.
  const ajv = new Ajv({ allErrors: true, strict: false });
  ajv.addFormat("date", { type: "string", validate: isPlainDay });
  // What editors alone read.
  ajv.addVocabulary(["enumDescriptions", "patternErrorMessage"]);
  for (const file of readdirSync(projectPath("schemas"))) {
    if (/^(?:result|built)\./.test(file)) continue;
    const schema = JSON.parse(readFileSync(join(projectPath("schemas"), file), "utf8"));
    if (schema.$schema === "http://json-schema.org/draft-07/schema#") ajv.addSchema(schema, file);
  }
  const validate = ajv.getSchema(name);
  if (!validate) throw new Error(`no schema ${name}`);
  return validate;
}

function sample(path: string): Record<string, unknown> {
  return parse(readFileSync(projectPath(`samples/site-book/${path}`), "utf8"), { schema: "core" });
}

describe("the schemas of overlays for editors", () => {
  it.each([
    ["overlay.schema.json", "overlay.yaml"],
    ["change.schema.json", "changes/adhesive-cure.yaml"],
    ["change.schema.json", "changes/drip-loop.yaml"],
    ["rule.schema.json", "rules/cable/cable-in-store.yaml"],
    ["model.schema.json", "models/example-works-unit.yaml"],
  ])("%s accepts %s, which names it", (schema, path) => {
    const validate = editorSchema(schema);
    validate(sample(path));
    expect(validate.errors).toBeNull();
    expect(readFileSync(projectPath(`samples/site-book/${path}`), "utf8")).toContain(`/schemas/${schema}\n`);
  });

  it("know what may be replaced of which kind of thing", () => {
    const validate = editorSchema("change.schema.json");
    const word = { reason: "x", by: "y", on: "2026-01-01" };
    const fits = (changes: object, replaces: object): boolean => validate({ changes, replaces, ...word }) === true;
    expect(fits({ rule: "min-speed" }, { undecided: "warn" })).toBe(true);
    expect(fits({ rule: "min-speed" }, { undecided: null })).toBe(true);
    expect(fits({ rule: "min-speed" }, { undecided: "maybe" })).toBe(false);
    expect(fits({ rule: "min-speed" }, { title: null })).toBe(false);
    expect(fits({ model: "baseline" }, { undecided: "warn" })).toBe(false);
    expect(fits({ model: "baseline" }, { alsoWritten: ["X"] })).toBe(true);
    expect(fits({ table: "adhesives" }, { by: ["adhesive"], entries: [] })).toBe(false);
    expect(fits({ rule: "min-speed", model: "baseline" }, { title: "x" })).toBe(false);
  });
});
