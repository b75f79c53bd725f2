import { CATALOGUE, factOf } from "../../facts/index.js";
import { BASES, OPERATORS } from "../book/rule.js";

/** A JSON Schema (draft 7) as a plain object. */
export type JsonSchema = Readonly<Record<string, unknown>>;

/** The dialect that editors understand best. */
export const DIALECT = "http://json-schema.org/draft-07/schema#";

/**
 * In every schema, `title` names the thing in findings and `$comment` says what is expected there; where neither
 * stands, the finding is worded from the keyword alone.
 */
export const ID: JsonSchema = {
  title: "id",
  type: "string",
  pattern: "^[a-z0-9]+(-[a-z0-9]+)*$",
  maxLength: 64,
  $comment: "lower-case letters, digits and single hyphens, at most 64 characters, such as thread-depth",
};

/** A text of one line that may be neither empty nor blank. */
export const TEXT: JsonSchema = {
  type: "string",
  pattern: "^[^\\S\\n\\r]*\\S[^\\n\\r]*$",
  $comment: "a text of one line, neither empty nor blank",
};

/** A calendar day. */
export const DAY: JsonSchema = { type: "string", format: "date", $comment: "a day that exists, written YYYY-MM-DD" };

/** A list of different words. */
export const WORD_LIST: JsonSchema = { type: "array", items: TEXT, minItems: 1, uniqueItems: true };

/** A list of different mounting methods. */
export const METHOD_LIST: JsonSchema = {
  title: "mounting methods",
  type: "array",
  items: { title: "mounting method", type: "string", enum: factOf("mounting_method").choices ?? [] },
  minItems: 1,
  uniqueItems: true,
  $comment: "at least one mounting method, each once",
};

/** The id of any fact of the catalogue. */
const FACT: JsonSchema = {
  title: "fact",
  description: "Id of a fact of the catalogue.",
  type: "string",
  enum: CATALOGUE.map((definition) => definition.id),
};

/** A number with its unit as text, a choice, yes or no as true or false. */
const VALUE: JsonSchema = { title: "value", type: ["string", "number", "boolean"] };

/** One schema or another, chosen by a test, so that findings come from one of them only. */
export function choose(test: JsonSchema, yes: JsonSchema, no: JsonSchema): JsonSchema {
  // biome-ignore lint/suspicious/noThenProperty: the keyword of JSON Schema
  return { if: test, then: yes, else: no };
}

/** Chooses a schema by a key that is there. */
function withKey(key: string, schema: JsonSchema, otherwise: JsonSchema): JsonSchema {
  return choose({ type: "object", properties: { [key]: true }, required: [key] }, schema, otherwise);
}

function mapping(title: string, properties: JsonSchema, required: readonly string[]): JsonSchema {
  return { title, type: "object", properties, required, additionalProperties: false };
}

const CONDITIONS: JsonSchema = {
  type: "array",
  items: { $ref: "#/definitions/condition" },
  minItems: 1,
  $comment: "at least one condition; an empty list would speak of every point",
};

const COMPARED: JsonSchema = choose(
  { type: "object" },
  mapping("value", { fact: { $ref: "#/definitions/fact" } }, ["fact"]),
  choose(
    { type: "array" },
    { type: "array", items: VALUE, minItems: 1, uniqueItems: true, $comment: "at least one value" },
    VALUE,
  ),
);

const COMPARISON: JsonSchema = {
  $comment: "a fact, an operator and a value, such as { fact: wetting, operator: equal, value: dry }",
  ...mapping(
    "comparison",
    {
      fact: { $ref: "#/definitions/fact" },
      operator: { title: "operator", type: "string", enum: OPERATORS },
      value: {
        description: "A number with its unit, a choice, true or false, a list of these for in and notIn, or a fact.",
        ...COMPARED,
      },
    },
    ["fact", "operator", "value"],
  ),
};

const CONDITION: JsonSchema = {
  description: "A condition in the grammar of json-rules-engine: all, any, not, a named condition, or a comparison.",
  ...withKey(
    "all",
    mapping("condition", { all: CONDITIONS }, ["all"]),
    withKey(
      "any",
      mapping("condition", { any: CONDITIONS }, ["any"]),
      withKey(
        "not",
        mapping("condition", { not: { $ref: "#/definitions/condition" } }, ["not"]),
        withKey("condition", mapping("named condition", { condition: ID }, ["condition"]), COMPARISON),
      ),
    ),
  ),
};

const BOUND: JsonSchema = {
  description: "A number with its unit, or a fact, scaled by `times` and shifted by `plus`.",
  ...choose(
    { type: "object" },
    mapping(
      "bound",
      { fact: { $ref: "#/definitions/fact" }, times: { type: "number" }, plus: { type: ["string", "number"] } },
      ["fact"],
    ),
    { title: "bound", type: ["string", "number"], $comment: "a number with its unit, or a fact" },
  ),
};

const BAND: JsonSchema = {
  title: "band",
  type: "object",
  properties: {
    below: { $ref: "#/definitions/bound" },
    above: { $ref: "#/definitions/bound" },
    atOrBelow: { $ref: "#/definitions/bound" },
    atOrAbove: { $ref: "#/definitions/bound" },
    outside: {
      description: "The lowest and the highest good value.",
      type: "array",
      items: { $ref: "#/definitions/bound" },
      minItems: 2,
      maxItems: 2,
      $comment: "two bounds, the lower one first",
    },
    oneOf: { ...WORD_LIST, $comment: "at least one choice" },
    noneOf: { ...WORD_LIST, $comment: "at least one choice" },
    when: { $ref: "#/definitions/condition" },
  },
  minProperties: 1,
  maxProperties: 1,
  additionalProperties: false,
  $comment: "one band in each mapping, such as { below: 9 mm }; write several as a list",
};

const BANDS: JsonSchema = {
  description: "One band, or a list of which any may hold.",
  ...choose(
    { type: "array" },
    { type: "array", items: { $ref: "#/definitions/band" }, minItems: 1, $comment: "at least one band" },
    { $ref: "#/definitions/band" },
  ),
};

/** The parts of conditions, for the `definitions` of a schema that uses them. */
export const CONDITION_PARTS: JsonSchema = { fact: FACT, condition: CONDITION };

/** The parts of limits, for the `definitions` of a schema that uses them. */
export const BAND_PARTS: JsonSchema = { ...CONDITION_PARTS, bound: BOUND, band: BAND, bands: BANDS };

/** Citations by their ids. */
export const CITATIONS: JsonSchema = {
  title: "citations",
  type: "object",
  propertyNames: ID,
  additionalProperties: mapping(
    "citation",
    {
      basis: {
        title: "basis",
        description: "How well it is founded; never better than it is.",
        type: "string",
        enum: BASES,
      },
      says: { ...TEXT, description: "What the source says, in words of your own." },
      source: {
        ...TEXT,
        description: "Title of the standard, book, data set or data sheet; all four need one.",
      },
      clause: { ...TEXT, description: "Only where it was read." },
      readOn: DAY,
    },
    ["basis", "says"],
  ),
};

/** Which citations something rests on. */
export const CITES: JsonSchema = {
  type: "array",
  items: ID,
  minItems: 1,
  uniqueItems: true,
  $comment: "at least one citation; nothing holds without a source",
};

/** The first day not in force, or none yet. */
export const DAY_OR_NONE: JsonSchema = {
  type: ["string", "null"],
  format: "date",
  $comment: "a day that exists, written YYYY-MM-DD, or null",
};
