import { CATALOGUE, type FactDefinition, TABLE_FACTS } from "../../facts/index.js";
import { CITATIONS, CITES, DAY, DAY_OR_NONE, DIALECT, ID, type JsonSchema, TEXT } from "./parts.js";

const KEYS: ReadonlySet<string> = new Set(TABLE_FACTS.flatMap(({ needs = [] }) => needs));

/** Facts by which some table is looked up. */
const KEY_FACTS: readonly FactDefinition[] = CATALOGUE.filter(({ id }) => KEYS.has(id));

const ROW: JsonSchema = {
  title: "row",
  description: "Choices of the facts it is looked up by, and the values that hold for them; null where nobody has one.",
  type: "object",
  properties: {
    ...Object.fromEntries(KEY_FACTS.map(({ id, name }) => [id, { title: "choice", description: name }])),
    ...Object.fromEntries(
      TABLE_FACTS.map(({ id, name }) => [
        id,
        { title: "value", description: name, type: ["string", "number", "boolean", "null"] },
      ]),
    ),
  },
  additionalProperties: false,
};

const ENTRY: JsonSchema = {
  title: "entry",
  description: "Rows in force on [from, until).",
  type: "object",
  properties: {
    from: { ...DAY, description: "First day in force." },
    until: { ...DAY_OR_NONE, description: "First day not in force; null while none is set." },
    reviewBy: { ...DAY_OR_NONE, description: "Past this day the rows still hold, and results say that review is due." },
    cites: CITES,
    rows: { type: "array", items: ROW, minItems: 1, $comment: "at least one row" },
  },
  required: ["from", "until", "cites", "rows"],
  additionalProperties: false,
};

/** A table of values that other facts look up. */
export const TABLE_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "table",
  description: "Values looked up by other facts, with dates and sources.",
  type: "object",
  properties: {
    id: { ...ID, description: "The name of the file without its ending." },
    title: TEXT,
    by: {
      description: "The facts it is looked up by, as the catalogue has them; empty for values that hold everywhere.",
      type: "array",
      items: { title: "key fact", type: "string", enum: KEY_FACTS.map(({ id }) => id) },
      uniqueItems: true,
    },
    gives: {
      description: "The facts it gives.",
      type: "array",
      items: { title: "table fact", type: "string", enum: TABLE_FACTS.map(({ id }) => id) },
      minItems: 1,
      uniqueItems: true,
      $comment: "at least one fact",
    },
    entries: { type: "array", items: ENTRY, minItems: 1, $comment: "at least one entry" },
    citations: CITATIONS,
  },
  required: ["id", "title", "by", "gives", "entries", "citations"],
  additionalProperties: false,
};
