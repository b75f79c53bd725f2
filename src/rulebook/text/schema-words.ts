import type { ErrorObject } from "ajv";
import { didYouMean, showText } from "../../base/index.js";
import { factMeant } from "./fact-meant.js";

/** A finding without its place. */
export interface Worded {
  readonly code: string;
  readonly text: string;
}

/** Keys that the engine of other programs would follow, with the reason why ours does not. */
const NEVER_KEYS: ReadonlyMap<string, string> = new Map([
  ["path", "a fact has one value, nothing is looked up inside it"],
  ["params", "a fact takes no parameters"],
  ["priority", "conditions have no order"],
  ["include", "a rulebook is one folder, nothing is fetched"],
  ["$ref", "a rulebook is one folder, nothing is fetched"],
]);

/** Bands by the operators of conditions, which people write in their place. */
const BANDS_OF_OPERATORS: ReadonlyMap<string, string> = new Map([
  ["lessThan", "below"],
  ["lessThanInclusive", "atOrBelow"],
  ["greaterThan", "above"],
  ["greaterThanInclusive", "atOrAbove"],
  ["in", "oneOf"],
  ["notIn", "noneOf"],
]);

/** Keys that a condition can begin with; it holds one of them. */
const CONDITION_KEYS: ReadonlySet<string> = new Set(["all", "any", "not", "condition", "fact"]);

/**
 * Says in plain words what a schema error means: what was found, what was expected, what to do.
 *
 * @param missing - every key that the mapping of the error lacks
 */
export function wordSchemaError(error: ErrorObject, missing: readonly string[]): Worded {
  const schema = partsOf(error.parentSchema);
  switch (error.keyword) {
    case "additionalProperties":
      return wordUnknownKey(error.params.additionalProperty, schema);
    case "required":
      return {
        code: "missing-key",
        text: `the ${schema.title} has no ${missing.map((key) => `"${key}"`).join(", ")}; add ${missing.length > 1 ? "them" : "it"}`,
      };
    case "type":
      return wordWrongKind(error, schema);
    case "enum":
      return wordUnknownWord(error, schema);
    case "uniqueItems":
      return {
        code: "said-twice",
        text: `item ${error.params.j + 1} says the same as item ${error.params.i + 1}; leave one out`,
      };
    case "format":
      return { code: "bad-date", text: `${found(error.data)} is not a day that exists; write it YYYY-MM-DD` };
    default:
      return {
        code: CODES.get(error.keyword) ?? "wrong-form",
        text: `found ${found(error.data)}; expected ${schema.expected}`,
      };
  }
}

const CODES: ReadonlyMap<string, string> = new Map([
  ["pattern", "bad-form"],
  ["maxLength", "bad-form"],
  ["minLength", "empty-text"],
  ["minItems", "list-too-short"],
  ["maxItems", "list-too-long"],
  ["minProperties", "too-few-keys"],
  ["maxProperties", "too-many-keys"],
]);

interface SchemaParts {
  readonly title: string;
  readonly expected: string;
  readonly keys: readonly string[];
  readonly isDay: boolean;
}

/** Where a schema does not say what is expected. */
const UNSAID = "another form";

function partsOf(schema: unknown): SchemaParts {
  const empty: SchemaParts = { title: "mapping", expected: UNSAID, keys: [], isDay: false };
  if (typeof schema !== "object" || schema === null) return empty;
  const title = "title" in schema && typeof schema.title === "string" ? schema.title : empty.title;
  const expected = "$comment" in schema && typeof schema.$comment === "string" ? schema.$comment : empty.expected;
  const properties = "properties" in schema && typeof schema.properties === "object" ? schema.properties : null;
  const isDay = "format" in schema && schema.format === "date";
  return { title, expected, keys: Object.keys(properties ?? {}), isDay };
}

function wordUnknownKey(key: string, schema: SchemaParts): Worded {
  const never = NEVER_KEYS.get(key);
  if (never) return { code: "refused-key", text: `the key "${key}" is not allowed (${never}); leave it out` };
  const [meant = ""] = schema.keys;
  if (schema.title.endsWith("condition") && CONDITION_KEYS.has(key)) {
    const text = `"${key}" stands beside "${meant}", and only one of them can be meant; put one inside the other, or leave one out`;
    return { code: "two-in-one", text };
  }
  if (/^\d/.test(key)) {
    const text = `"${showText(key)}" stands behind a comma, which ends the number before it; write numbers with a decimal point and without grouping, such as 9.5`;
    return { code: "unknown-key", text };
  }
  const band = schema.title === "band" ? BANDS_OF_OPERATORS.get(key) : undefined;
  const near = band === undefined ? didYouMean(key, schema.keys) : `; did you mean "${band}"?`;
  const known = schema.keys.length > 12 ? "see the schema for its keys" : `its keys are ${schema.keys.join(", ")}`;
  return { code: "unknown-key", text: `"${showText(key)}" is no key of the ${schema.title}${near || `; ${known}`}` };
}

const KINDS: Readonly<Record<string, string>> = {
  string: "text",
  number: "a number",
  boolean: "true or false",
  null: "null",
  array: "a list",
  object: "a mapping",
};

function wordWrongKind(error: ErrorObject, schema: SchemaParts): Worded {
  const kinds: readonly string[] = [error.params.type].flat();
  if (schema.isDay) return { code: "bad-date", text: `found ${found(error.data)}; expected ${schema.expected}` };
  const wanted = kinds.map((kind) => KINDS[kind] ?? kind).join(" or ");
  const what = schema.title === "mapping" ? "" : ` for the ${schema.title}`;
  const more = schema.expected === UNSAID || kinds.includes("string") ? "" : `: ${schema.expected}`;
  return {
    code: "wrong-kind",
    text: `found ${found(error.data)}; expected ${wanted}${what}${more}${hint(error.data, kinds)}`,
  };
}

function hint(data: unknown, kinds: readonly string[]): string {
  if (kinds.includes("string") && typeof data === "number") return "; put it in quotes";
  if (!kinds.includes("number") || typeof data !== "string") return "";
  const [, digits, percent] = /^\s*([+-]?\d+(?:\.\d+)?)\s*(%?)\s*$/.exec(data) ?? [];
  if (digits === undefined) return "";
  return percent ? `; write it as ${Number(digits) / 100}` : `; write it as ${Number(digits)}, without quotes`;
}

function wordUnknownWord(error: ErrorObject, schema: SchemaParts): Worded {
  const allowed: readonly string[] = error.params.allowedValues.map(String);
  const word = String(error.data);
  const near = didYouMean(word, allowed);
  const code = `unknown-${schema.title.replaceAll(" ", "-")}`;
  const choices = allowed.length > 12 ? "see the schema for its words" : `use one of ${allowed.join(", ")}`;
  const meant = /\bfact$/.test(schema.title) && allowed.length > 12 ? factMeant(word, allowed) : near || `; ${choices}`;
  return { code, text: `"${showText(word)}" is no known ${schema.title}${meant}` };
}

/** What stands there, short enough for one line. */
function found(data: unknown): string {
  if (data === null) return "nothing";
  if (Array.isArray(data)) return data.length === 0 ? "an empty list" : `a list of ${data.length}`;
  if (typeof data === "object") return `a mapping with ${Object.keys(data).length} keys`;
  return typeof data === "string" ? `"${showText(data)}"` : `${typeof data === "number" ? "the number " : ""}${data}`;
}
