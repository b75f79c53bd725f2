import { choose, DIALECT, ID, type JsonSchema, TEXT } from "../rulebook/index.js";
import { COLUMN, FORM, oneOf, WHOLE } from "./column-schema.js";

const WORDS: JsonSchema = { type: "array", items: TEXT, minItems: 1, uniqueItems: true, $comment: "at least one word" };
const OUTCOMES: JsonSchema = {
  title: "rules",
  type: "object",
  additionalProperties: {
    type: "array",
    items: oneOf("outcome", ["fail", "warn", "undecided", "no-limit-in-force"], "What the rule says."),
    minItems: 1,
    uniqueItems: true,
    $comment: "at least one outcome",
  },
};

const WHERE: JsonSchema = {
  title: "filter",
  description: "Which points are taken; all that is said must hold.",
  type: "object",
  properties: {
    verdicts: {
      description: "Only points with one of these verdicts.",
      type: "array",
      items: oneOf("verdict", ["pass", "warn", "fail"], "A verdict of the point."),
      minItems: 1,
      uniqueItems: true,
      $comment: "at least one verdict",
    },
    released: {
      title: "released",
      description:
        "Only points on which work may be planned: they pass, or what speaks against them is accepted, and every rule on what can hurt somebody was asked and passes.",
      type: "boolean",
      enum: [true],
    },
    rulesSay: { ...OUTCOMES, description: "By rule, outcomes of which the point must have one." },
    rulesDoNotSay: { ...OUTCOMES, description: "By rule, outcomes of which the point must have none." },
    facts: {
      title: "facts",
      description: "By fact, the values of which the point must have one; where the fact is not known, it has none.",
      type: "object",
      additionalProperties: {
        type: "array",
        items: { type: ["string", "boolean"] },
        minItems: 1,
        $comment: "at least one value",
      },
    },
  },
  minProperties: 1,
  additionalProperties: false,
  $comment: "at least one of verdicts, released, rulesSay, rulesDoNotSay and facts",
};

const PER: JsonSchema = choose(
  { type: "object" },
  {
    title: "thing to group by",
    type: "object",
    properties: {
      by: { ...TEXT, title: "field or fact", description: "A field of the results or a fact of the catalogue." },
      whenEmpty: oneOf("when empty", ["stop", "together"], "together: all points without it make a row."),
    },
    required: ["by"],
    additionalProperties: false,
  },
  { ...TEXT, title: "field or fact" },
);

const ROWS: JsonSchema = {
  description:
    "point: a row for each point. Else a row for all points with the same values, and the word for what it is.",
  ...choose(
    { type: "object" },
    {
      title: "rows",
      type: "object",
      properties: {
        one: { ...ID, description: "The word for what a row is (order, machine); part of its id." },
        per: {
          description: "What the points of a row have in common.",
          type: "array",
          items: PER,
          minItems: 1,
          uniqueItems: true,
          $comment: "at least one field or fact",
        },
      },
      required: ["one", "per"],
      additionalProperties: false,
    },
    { title: "rows", type: "string", enum: ["point"] },
  ),
};

const TARGET: JsonSchema = {
  title: "target",
  type: "object",
  properties: {
    target: { ...ID, description: "Id of the target file." },
    file: {
      ...TEXT,
      description: "Name of the file, ending in .csv or .xlsx, with {number}, {target}, {part} and {asOf}.",
    },
    rows: ROWS,
    where: WHERE,
    rowLimit: { ...WHOLE, title: "row limit", description: "Rows of one file; more go into further parts." },
    form: { ...FORM, description: "Where it differs from the form of all targets." },
    columns: {
      description: "The columns, in their order.",
      type: "array",
      items: { $ref: "#/definitions/column" },
      minItems: 1,
      $comment: "at least one column",
    },
    withdrawn: {
      title: "withdrawn rows",
      description:
        "How a difference tells that a row is gone: once, with its last values and this one. Without it a difference with rows that are gone is refused.",
      type: "object",
      properties: {
        column: { ...TEXT, description: "Heading of the column that says so; no key." },
        value: { ...TEXT, description: "What stands there then; no word that it has otherwise." },
      },
      required: ["column", "value"],
      additionalProperties: false,
    },
  },
  required: ["target", "columns"],
  additionalProperties: false,
};

const GIVEN: JsonSchema = { title: "given values", type: "object" };

const CHECK: JsonSchema = {
  title: "check",
  description: "A sample row: what is given, and what must be written.",
  type: "object",
  properties: {
    name: { ...TEXT, title: "name", description: "What the sample shows." },
    target: { ...ID, title: "target", description: "Id of the target file that is tried." },
    given: {
      description: "Fields and facts of a point, or of each point of the row.",
      ...choose({ type: "array" }, { type: "array", items: GIVEN, minItems: 1, $comment: "at least one point" }, GIVEN),
    },
    expect: {
      title: "expected values",
      description: "By heading; null where nothing is written.",
      type: "object",
      additionalProperties: { type: ["string", "null"] },
    },
    refuses: { ...WORDS, description: "Headings whose values must be refused." },
  },
  required: ["name", "target", "given"],
  additionalProperties: false,
};

/** A mapping file: what is handed to a maintenance system, and in which form. */
export const MAPPING_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "mapping",
  description:
    "Which files are made of a screening for another system: their columns, values and form. There is no code in it.",
  type: "object",
  properties: {
    mapping: { ...ID, description: "Id of the mapping." },
    version: { ...TEXT, description: "Version of the mapping, in quotes." },
    title: { ...TEXT, description: "What it is for." },
    form: FORM,
    targets: {
      type: "array",
      description: "In the order in which the files are to be loaded.",
      items: TARGET,
      minItems: 1,
      maxItems: 99,
      $comment: "1 to 99 targets",
    },
    checks: { description: "Sample rows, tried whenever the file is read.", type: "array", items: CHECK },
  },
  required: ["mapping", "version", "title", "targets"],
  additionalProperties: false,
  definitions: { column: COLUMN },
};
