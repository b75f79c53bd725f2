import { CATALOGUE } from "../facts/index.js";
import { choose, ID, type JsonSchema, TEXT } from "../rulebook/index.js";
import { FIELDS } from "./fields.js";
import {
  CHARACTER_CLASSES,
  COLUMN_TYPES,
  COUNTED_IN,
  DAY_PATTERNS,
  DECIMAL_SIGNS_WRITTEN,
  ENCODINGS,
  LINE_ENDS,
  SEPARATORS,
  TAKES,
} from "./mapping.js";

/** One of a list of words. */
export function oneOf(title: string, words: readonly string[], description: string): JsonSchema {
  return { title, description, type: "string", enum: words };
}

/** A whole number of rows or characters. */
export const WHOLE: JsonSchema = {
  type: "integer",
  minimum: 1,
  maximum: 1_048_575,
  $comment: "a whole number above 0",
};

const WHEN_EMPTY: JsonSchema = {
  description:
    "What an empty value becomes: omit (nothing at all), blank (an empty text), or { clear: WORD }, a word by which the other side clears the field.",
  ...choose(
    { type: "object" },
    {
      title: "when empty",
      type: "object",
      properties: { clear: { ...TEXT, title: "clear word", description: "The word by which a field is cleared." } },
      required: ["clear"],
      additionalProperties: false,
    },
    { title: "when empty", type: "string", enum: ["omit", "blank"] },
  ),
};

const DAYS: JsonSchema = oneOf("day pattern", DAY_PATTERNS, "How days are written.");

/** How files are written. */
export const FORM: JsonSchema = {
  title: "form",
  description: "How the files are written; of a workbook only days and whenEmpty count.",
  type: "object",
  properties: {
    encoding: oneOf(
      "encoding",
      ENCODINGS,
      "utf-8-bom has a byte order mark. A character that does not fit is an error.",
    ),
    separator: oneOf("separator", SEPARATORS, "Between the fields of a record."),
    lineEnd: oneOf("line end", LINE_ENDS, "Behind each record."),
    decimalSign: oneOf("decimal sign", DECIMAL_SIGNS_WRITTEN, "In front of decimals; nothing is ever grouped."),
    days: DAYS,
    whenEmpty: WHEN_EMPTY,
    separatorInValues: {
      description: "A separator within a value: quote it, stop, or { replaceBy: TEXT }.",
      ...choose(
        { type: "object" },
        {
          title: "separator in values",
          type: "object",
          properties: {
            replaceBy: {
              type: "string",
              maxLength: 10,
              $comment: "at most 10 characters",
              description: "What stands in its place.",
            },
          },
          required: ["replaceBy"],
          additionalProperties: false,
        },
        { title: "separator in values", type: "string", enum: ["quote", "stop"] },
      ),
    },
  },
  additionalProperties: false,
};

const LENGTH: JsonSchema = {
  title: "length",
  description: "How long a value may be, and what is done with one that is longer.",
  type: "object",
  properties: {
    most: { ...WHOLE, description: "The greatest length." },
    counted: oneOf("way of counting", COUNTED_IN, "As the other side counts."),
    tooLong: oneOf("too long", ["stop", "shorten"], "Codes are never shortened."),
    mark: {
      type: "string",
      maxLength: 5,
      $comment: "at most 5 characters",
      description: "At the end of a shortened text; … if left out.",
    },
  },
  required: ["most", "counted", "tooLong"],
  additionalProperties: false,
};

/** One column. */
export const COLUMN: JsonSchema = {
  title: "column",
  description:
    "One column: a heading, one source (field, fact, constant, template or each), and how its values are written.",
  type: "object",
  properties: {
    heading: { ...TEXT, description: "Exactly as the other side expects it." },
    field: oneOf("field", Object.keys(FIELDS), "A field of the results."),
    fact: {
      title: "fact",
      description: "Id of a fact of the catalogue.",
      type: "string",
      enum: CATALOGUE.map(({ id }) => id),
    },
    unit: { ...TEXT, description: "Unit in which the number of a fact is written; its own if left out." },
    constant: { type: "string", $comment: "a text", description: "The same text in every row." },
    template: {
      type: "string",
      minLength: 1,
      $comment: "a text with {names}",
      description: "Fixed text and {names}; [parts in brackets] are left out where a name in them is empty.",
    },
    each: {
      type: "string",
      minLength: 1,
      $comment: "a text with {names}",
      description: "A template that is filled for each point of the row.",
    },
    join: { type: "string", description: "Between the texts of `each`; a line feed if left out." },
    type: oneOf(
      "type of column",
      COLUMN_TYPES,
      "text (neutralised where it looks like a formula), number, date, or code: an identifier, written unchanged and never cut.",
    ),
    key: {
      type: "boolean",
      description: "Its values, with those of the other keys, name the row: no two rows have the same.",
    },
    required: { type: "boolean", description: "Refuse rows in which it is empty." },
    values: {
      title: "list of values",
      description: "What is written for each word of the source.",
      type: "object",
      additionalProperties: { ...TEXT, title: "value" },
      minProperties: 1,
      $comment: "at least one word",
    },
    otherwise: oneOf("otherwise", ["stop"], "A word that is not in the list is refused; say so."),
    length: LENGTH,
    characters: {
      title: "characters",
      description: "All that a code may hold: upper, lower, digits, blank, and single signs.",
      type: "array",
      items: {
        title: "class of characters",
        type: "string",
        minLength: 1,
        $comment: `${CHARACTER_CLASSES.join(", ")}, or a single sign`,
      },
      minItems: 1,
      uniqueItems: true,
      $comment: "at least one class or sign",
    },
    lines: oneOf("lines", ["one", "many"], "one: line breaks become blanks."),
    whenEmpty: WHEN_EMPTY,
    days: DAYS,
    decimals: {
      title: "decimals",
      description: "Decimals that a number is rounded to and written with.",
      type: "integer",
      minimum: 0,
      maximum: 9,
      $comment: "a whole number from 0 to 9",
    },
    takes: oneOf("end of a number", TAKES, "Which end of a number that is known within bounds."),
    references: {
      ...ID,
      title: "target",
      description: "A target before this one, among whose keys the values must be.",
    },
  },
  required: ["heading"],
  additionalProperties: false,
};
