import { type CommonWords, LANGUAGES, MODEL_FACTS, SURVEY_FACTS } from "../../facts/index.js";
import {
  CITATIONS,
  CITES,
  CONDITION_PARTS,
  DAY,
  DAY_OR_NONE,
  DIALECT,
  ID,
  type JsonSchema,
  TEXT,
  WORD_LIST,
} from "./parts.js";

/** The manifest of a rulebook. */
export const RULEBOOK_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "manifest",
  description: "The manifest of a rulebook folder.",
  type: "object",
  properties: {
    name: TEXT,
    version: {
      title: "version",
      type: "string",
      pattern: "^\\d+\\.\\d+\\.\\d+$",
      $comment: 'three numbers in quotes, such as "1.0.0"',
    },
    language: {
      title: "language",
      description: "Language of titles, messages and remedies.",
      type: "string",
      enum: LANGUAGES,
    },
    sets: { type: "array", items: ID, minItems: 1, uniqueItems: true, $comment: "at least one set" },
    defaultSet: { ...ID, description: "The set that is screened when none is named." },
    baselineModel: { ...ID, description: "The sensor model for surveys without any word on models." },
  },
  required: ["name", "version", "language", "sets", "defaultSet", "baselineModel"],
  additionalProperties: false,
};

/** A named condition, for use in several rules. */
export const CONDITION_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "condition file",
  description: "A condition with a name, for use in rules as { condition: name }.",
  type: "object",
  properties: {
    id: { ...ID, description: "The name of the file without its ending." },
    title: TEXT,
    when: { $ref: "#/definitions/condition" },
  },
  required: ["id", "title", "when"],
  additionalProperties: false,
  definitions: CONDITION_PARTS,
};

const MODEL_VALUE: JsonSchema = {
  title: "model value",
  description: "A value in force on [from, until).",
  type: "object",
  properties: {
    from: { ...DAY, description: "First day in force." },
    until: { ...DAY_OR_NONE, description: "First day not in force; null while none is set." },
    value: { title: "value", description: "A number with its unit.", type: ["string", "number", "boolean"] },
    cites: CITES,
  },
  required: ["from", "until", "value", "cites"],
  additionalProperties: false,
};

/** A sensor model. */
export const MODEL_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "model",
  description: "A sensor model: what it needs and bears, with sources.",
  type: "object",
  properties: {
    id: { ...ID, description: "The name of the file without its ending." },
    title: TEXT,
    alsoWritten: { ...WORD_LIST, minItems: 0, description: "Other ways in which surveys write the model." },
    facts: {
      title: "model facts",
      type: "object",
      properties: Object.fromEntries(
        MODEL_FACTS.map((definition) => [
          definition.id.slice("model.".length),
          {
            description: definition.name,
            type: "array",
            items: { $ref: "#/definitions/value" },
            minItems: 1,
            $comment: "at least one value",
          },
        ]),
      ),
      minProperties: 1,
      additionalProperties: false,
      $comment: "at least one fact",
    },
    citations: CITATIONS,
  },
  required: ["id", "title", "facts", "citations"],
  additionalProperties: false,
  definitions: { value: MODEL_VALUE },
};

const EXAMPLE: JsonSchema = {
  title: "example",
  description: "A cell and what reading it must give.",
  type: "object",
  properties: {
    heading: { type: "string" },
    cell: { type: ["string", "number", "boolean"] },
    locale: { title: "locale", type: ["string", "null"], enum: [...LANGUAGES, "de-CH", "es-MX", null] },
    expect: { type: "object", minProperties: 1, $comment: "what is read, such as { value: 12, unit: mm }" },
  },
  required: ["heading", "cell", "locale", "expect"],
  additionalProperties: false,
};

function byLanguage(): JsonSchema {
  return Object.fromEntries(LANGUAGES.map((language) => [language, WORD_LIST]));
}

/** Named one by one, so that the compiler tells when the importer asks for other words. */
const COMMON_LISTS: Readonly<Record<Exclude<keyof CommonWords, "marks">, JsonSchema>> = {
  yes: WORD_LIST,
  no: WORD_LIST,
  missing: WORD_LIST,
  about: WORD_LIST,
  or: WORD_LIST,
  to: WORD_LIST,
  from: WORD_LIST,
  not: WORD_LIST,
  most: WORD_LIST,
  least: WORD_LIST,
  ditto: WORD_LIST,
  total: WORD_LIST,
};

/** A word list for the importer: words of fields, or words that mean the same in every column. */
export const WORDS_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "word list",
  description: "What people write in surveys.",
  type: "object",
  properties: {
    common: {
      title: "common words",
      type: "object",
      properties: {
        ...COMMON_LISTS,
        marks: {
          title: "marks",
          type: "object",
          properties: byLanguage(),
          required: LANGUAGES,
          additionalProperties: false,
        },
      },
      required: [...Object.keys(COMMON_LISTS), "marks"],
      additionalProperties: false,
    },
    fields: {
      title: "fields",
      type: "object",
      properties: Object.fromEntries(SURVEY_FACTS.map(({ id }) => [id, { $ref: "#/definitions/field" }])),
      minProperties: 1,
      additionalProperties: false,
      $comment: "at least one field",
    },
  },
  minProperties: 1,
  additionalProperties: false,
  $comment: "common or fields",
  definitions: {
    field: {
      title: "field",
      type: "object",
      properties: {
        headings: {
          title: "headings",
          type: "object",
          properties: byLanguage(),
          minProperties: 1,
          additionalProperties: false,
          $comment: "headings in at least one language",
        },
        choices: { title: "choices", type: "object", additionalProperties: WORD_LIST },
        examples: { type: "array", items: EXAMPLE },
      },
      required: ["headings"],
      additionalProperties: false,
    },
  },
};

/** Facts that make up the identity of a point, which only the row itself can tell. */
const NOT_FOR_STATING: ReadonlySet<string> = new Set([
  "site",
  "point_id",
  "asset_tag",
  "component",
  "bearing_position",
  "direction",
]);

const STATED: JsonSchema = {
  title: "stated facts",
  type: "object",
  properties: Object.fromEntries(
    SURVEY_FACTS.filter(({ id }) => !NOT_FOR_STATING.has(id)).map((definition) => [
      definition.id,
      { title: "stated value", description: definition.name, type: ["string", "number", "boolean"] },
    ]),
  ),
  minProperties: 1,
  additionalProperties: false,
  $comment: "at least one fact",
};

const MACHINE_TYPES = SURVEY_FACTS.find(({ id }) => id === "machine_type")?.choices ?? [];

/** A site file: facts stated once. */
export const SITE_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "site file",
  description: "Facts stated once, for the whole site, for a type of machine, or for a machine.",
  type: "object",
  properties: {
    site: { ...TEXT, description: "Name of the site, part of every point's id." },
    states: { $ref: "#/definitions/stated" },
    machineTypes: {
      title: "machine types",
      type: "object",
      properties: Object.fromEntries(MACHINE_TYPES.map((type) => [type, { $ref: "#/definitions/stated" }])),
      additionalProperties: false,
    },
    machines: {
      title: "machines",
      description: "By asset tag, as surveys write it.",
      type: "object",
      additionalProperties: { $ref: "#/definitions/stated" },
    },
  },
  minProperties: 1,
  additionalProperties: false,
  $comment: "at least one of site, states, machineTypes and machines",
  definitions: { stated: STATED },
};
