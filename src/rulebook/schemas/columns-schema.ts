import { DECIMAL_SIGNS, LANGUAGES, SURVEY_FACTS } from "../../facts/index.js";
import { choose, DIALECT, ID, type JsonSchema, TEXT } from "./parts.js";

/** What a column file writes for a column or a sheet from which nothing is to be read. */
export const IGNORE = "ignore";

const LANGUAGE: JsonSchema = {
  title: "language",
  description: "Language of headings and words; it also says how numbers are written.",
  type: "string",
  enum: LANGUAGES,
};

const DECIMAL_SIGN: JsonSchema = {
  title: "decimal sign",
  description: "The sign in front of the decimals; it comes before the language.",
  type: "string",
  enum: DECIMAL_SIGNS,
};

const HEADING_ROWS: JsonSchema = {
  title: "heading rows",
  description:
    "The row of headings of each table, as the spreadsheet program numbers it; headings above it and units below it are found as usual.",
  type: "array",
  items: { title: "heading row", type: "integer", minimum: 1, maximum: 1_048_576, $comment: "the number of a row" },
  minItems: 1,
  uniqueItems: true,
  $comment: "at least one row",
};

const COLUMN: JsonSchema = {
  title: "column",
  description: "What one column is read for. It is named by its heading, its letters, or both where headings repeat.",
  type: "object",
  properties: {
    heading: {
      ...TEXT,
      description:
        "As in the survey; case, accents and signs do not count. Two rows of headings: the upper, then the lower.",
    },
    column: {
      title: "column letters",
      description: "Letters of the column, for headings that repeat and columns without one.",
      type: "string",
      pattern: "^[A-Z]{1,3}$",
      $comment: "capital letters, such as F",
    },
    fact: {
      title: "fact",
      description: "Id of the fact of the catalogue, or ignore for a column that is not to be read.",
      type: "string",
      enum: [IGNORE, ...SURVEY_FACTS.map(({ id }) => id)],
    },
    unit: { ...TEXT, description: "Unit of bare numbers below the heading." },
    language: LANGUAGE,
    decimalSign: DECIMAL_SIGN,
    values: {
      title: "own words",
      description: "Words of this column, each with the choice (or true, false) that it stands for.",
      type: "object",
      additionalProperties: { title: "value", type: ["string", "boolean"] },
      minProperties: 1,
      $comment: "at least one word",
    },
    accuracy: {
      title: "accuracy",
      description:
        "How far its numbers may be off, to both sides, such as 0.5 mm or 2 %; a cell's own ± comes before it.",
      type: ["string", "number"],
    },
    measuredBy: { ...ID, description: "Id of a way of measuring of the rulebook, whose accuracy its numbers have." },
  },
  required: ["fact"],
  additionalProperties: false,
};

const COLUMNS: JsonSchema = {
  title: "columns",
  type: ["array", "null"],
  items: { $ref: "#/definitions/column" },
};

const READING: JsonSchema = {
  language: LANGUAGE,
  decimalSign: DECIMAL_SIGN,
  headingRows: HEADING_ROWS,
  columns: COLUMNS,
};

/** A column file: how surveys that come again are to be understood. */
export const COLUMNS_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "column file",
  description: "How surveys that come again are to be understood; what is not mentioned is understood as usual.",
  type: "object",
  properties: {
    ...READING,
    sheets: {
      title: "sheets",
      description: "By name. A sheet comes before what is said of all sheets.",
      type: ["object", "null"],
      additionalProperties: { $ref: "#/definitions/sheet" },
    },
  },
  minProperties: 1,
  additionalProperties: false,
  $comment: "at least one of language, decimalSign, headingRows, columns and sheets",
  definitions: {
    column: COLUMN,
    sheet: choose(
      { type: "string" },
      { title: "sheet", type: "string", enum: [IGNORE] },
      { title: "sheet", type: ["object", "null"], properties: READING, additionalProperties: false },
    ),
  },
};
