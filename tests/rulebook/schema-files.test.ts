import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { Ajv } from "ajv";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { isPlainDay } from "../../src/base/index.js";
import { CATALOGUE } from "../../src/facts/index.js";
import { MAPPING_SCHEMA } from "../../src/handover/index.js";
import { editorSchema, type JsonSchema, SCHEMA_FILES } from "../../src/rulebook/index.js";
import { projectPath, shippedFiles } from "../tools/shipped.js";
import { BROKEN } from "./broken-files.js";
import { SMALL_BOOK, SMALL_GROUPS } from "./small-book.js";

// The files are for editors; the objects in src/rulebook/schemas and src/handover are what rule files are checked against.
// REWRITE_SCHEMAS=1 npx vitest run tests/rulebook/schema-files.test.ts writes the files anew.
const rewrite = process.env.REWRITE_SCHEMAS === "1";

describe("schemas/", () => {
  it.each(Object.entries({ ...SCHEMA_FILES, "mapping.schema.json": MAPPING_SCHEMA }))(
    "%s is what the program checks, explained",
    (name, schema) => {
      const file = projectPath(`schemas/${name}`);
      if (rewrite) writeFileSync(file, `${JSON.stringify(editorSchema(schema), null, 2)}\n`);
      expect(readSchema(name)).toEqual(JSON.parse(JSON.stringify(editorSchema(schema))));
    },
  );

  it.each(readdirSync(projectPath("schemas")))("%s explains every key", (name) => {
    const whole = readSchema(name);
    expect(keysWithoutWords(whole, whole, "")).toEqual([]);
  });

  it("list the facts of the catalogue, each with its name, its unit and its choices", () => {
    const { enum: ids, enumDescriptions: words } = readSchema("rule.schema.json").definitions.fact;
    expect(ids).toEqual(CATALOGUE.map(({ id }) => id));
    for (const [index, { name, unit, choices, kind }] of CATALOGUE.entries()) {
      expect(words[index]).toContain(name);
      if (kind === "quantity") expect(words[index]).toContain(`(${unit})`);
      for (const choice of choices ?? []) expect(words[index]).toContain(choice);
    }
    const given = readSchema("rule.schema.json").properties.casesGive.properties;
    expect(Object.keys(given).filter((key) => !["model", "asOf", "stage"].includes(key))).toEqual(
      CATALOGUE.map(({ id }) => id).filter((id) => id !== "stage"),
    );
    expect(given.mounting_method.anyOf[0].enum).toContain("tapped-hole");
  });

  it("explain operators, bases, stages, outcomes and reasons word by word", () => {
    const explained = new Map<string, readonly string[]>();
    for (const name of Object.keys(SCHEMA_FILES)) gatherLists(readSchema(name), explained);
    for (const title of ["operator", "basis", "stage", "outcome", "reason", "fact", "survey fact"]) {
      expect(explained.get(title), title).toBeDefined();
    }
  });
});

/** Files of the roles that have a schema, with whatever their folder says they are. */
const FOLDERS: Readonly<Record<string, string>> = {
  conditions: "condition",
  models: "model",
  tables: "table",
  groups: "group",
  words: "words",
  measuring: "measuring",
};

function schemaNameOf(inside: string): string {
  const [folder = ""] = inside.split("/");
  return `${inside === "rulebook.yaml" ? "rulebook" : (FOLDERS[folder] ?? "rule")}.schema.json`;
}

describe("a schema for editors", () => {
  // What only editors read is no keyword of the standard.
  const compiled = (form: (schema: JsonSchema) => JsonSchema): Ajv => {
    const ajv = new Ajv({ strict: false, formats: { date: isPlainDay }, inlineRefs: false });
    for (const [name, schema] of Object.entries(SCHEMA_FILES)) ajv.addSchema(form(schema), name);
    return ajv;
  };
  const checking = compiled((schema) => schema);
  const editor = compiled(editorSchema);
  const isAlike = (inside: string, text: string): boolean => {
    const name = schemaNameOf(inside);
    const data: unknown = parse(text, { logLevel: "silent" });
    const allowed = checking.validate(name, data);
    expect(editor.validate(name, data), inside).toBe(allowed);
    return allowed;
  };

  it("allows every file of the rulebook", async () => {
    for (const { path, text } of await shippedFiles())
      expect(isAlike(path.slice("rules/".length), text), path).toBe(true);
  });

  it("allows and refuses what the program does, over all mistakes of the tests", () => {
    const count = { allowed: 0, refused: 0 };
    for (const { file, from, to } of BROKEN) {
      const text = (SMALL_BOOK[file] ?? SMALL_GROUPS[file] ?? "").replace(from, () => to.replace("▶", ""));
      try {
        parse(text, { logLevel: "silent" });
      } catch {
        continue;
      }
      count[isAlike(file, text) ? "allowed" : "refused"] += 1;
    }
    expect(count.refused).toBeGreaterThan(50);
    expect(count.allowed).toBeGreaterThan(50);
  });
});

/** A stored schema, as far as the tests look into it. */
// biome-ignore lint/suspicious/noExplicitAny: the tests look into it by the keys that they expect
function readSchema(name: string): any {
  return JSON.parse(readFileSync(projectPath(`schemas/${name}`), "utf8"));
}

function isMapping(value: unknown): value is JsonSchema {
  return typeof value === "object" && value !== null && !Array.isArray(value);
}

/** Keys without a description of their own or of what they refer to. */
function keysWithoutWords(schema: unknown, whole: JsonSchema, at: string): readonly string[] {
  if (Array.isArray(schema)) return schema.flatMap((one, index) => keysWithoutWords(one, whole, `${at}/${index}`));
  if (!isMapping(schema)) return [];
  const properties = isMapping(schema.properties) ? Object.entries(schema.properties) : [];
  const bare = properties.filter(([, value]) => isMapping(value) && !isDescribed(value, whole));
  const inner = Object.entries(schema).filter(([key]) => !["enum", "if", "required"].includes(key));
  return [
    ...bare.map(([key]) => `${at}/${key}`),
    ...inner.flatMap(([key, value]) => keysWithoutWords(value, whole, `${at}/${key}`)),
  ];
}

function isDescribed(value: JsonSchema, whole: JsonSchema): boolean {
  if (typeof value.description === "string" && value.description.length > 2) return true;
  // A thing or nothing: the thing is described.
  if (Array.isArray(value.anyOf)) return value.anyOf.some((one) => isMapping(one) && isDescribed(one, whole));
  const [, part, name] = /^#\/(definitions|\$defs)\/(.+)$/.exec(String(value.$ref)) ?? [];
  const parts = part === undefined ? null : whole[part];
  const target = isMapping(parts) && name !== undefined ? parts[name] : null;
  return isMapping(target) && isDescribed(target, whole);
}

/** Closed lists with words for each of their words, by title. */
function gatherLists(schema: unknown, lists: Map<string, readonly string[]>): void {
  if (Array.isArray(schema)) for (const one of schema) gatherLists(one, lists);
  if (!isMapping(schema)) return;
  if (Array.isArray(schema.enumDescriptions) && Array.isArray(schema.enum)) {
    expect(schema.enumDescriptions).toHaveLength(schema.enum.length);
    lists.set(String(schema.title), schema.enumDescriptions);
  }
  for (const one of Object.values(schema)) gatherLists(one, lists);
}
