import { type CommonWords, LANGUAGES, SURVEY_FACTS } from "../../facts/index.js";
import { DIALECT, type JsonSchema, WORD_LIST } from "./parts.js";

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
  doubt: WORD_LIST,
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
        otherThings: WORD_LIST,
        itsOwn: WORD_LIST,
        notMeant: WORD_LIST,
        asides: WORD_LIST,
        choices: { title: "choices", type: "object", additionalProperties: WORD_LIST },
        unclear: WORD_LIST,
        examples: { type: "array", items: EXAMPLE },
      },
      minProperties: 1,
      additionalProperties: false,
      $comment: "headings, choices or other words",
    },
  },
};
