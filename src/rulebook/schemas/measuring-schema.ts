import type { Dimension } from "../../base/index.js";
import { LANGUAGES, SURVEY_FACTS } from "../../facts/index.js";
import { CITATIONS, CITES, DAY, DAY_OR_NONE, DIALECT, ID, type JsonSchema, TEXT, WORD_LIST } from "./parts.js";

/** Quantities that surveys hold. */
const MEASURED: readonly Dimension[] = [
  ...new Set(
    SURVEY_FACTS.flatMap(({ kind, dimension }) => (kind === "quantity" && dimension !== undefined ? [dimension] : [])),
  ),
].sort();

const ACCURACY: JsonSchema = {
  title: "accuracy",
  description: "What is held for sure of the way in ordinary use, in force on [from, until); the two parts add up.",
  type: "object",
  properties: {
    from: { ...DAY, description: "First day in force." },
    until: { ...DAY_OR_NONE, description: "First day not in force; null while none is set." },
    plusMinus: {
      title: "plusMinus",
      description: "A number with its unit, to both sides.",
      type: ["string", "number"],
    },
    percent: { title: "percent", description: "Percent of the value, to both sides.", type: ["number", "string"] },
    cites: CITES,
  },
  required: ["from", "until", "cites"],
  additionalProperties: false,
};

/** A way of measuring and how accurate it is. */
export const MEASURING_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "way of measuring",
  description: "How accurate numbers are that were measured in this way, where a survey or a site file names it.",
  type: "object",
  properties: {
    id: { ...ID, description: "The name of the file without its ending." },
    title: { ...TEXT, description: "As it stands behind an article: ± 0.5 mm of a steel rule." },
    words: {
      title: "words",
      description:
        "What people write for it in headings and beside numbers; left out where it can only be named by its id.",
      type: "object",
      properties: Object.fromEntries(LANGUAGES.map((language) => [language, WORD_LIST])),
      minProperties: 1,
      additionalProperties: false,
      $comment: "words in at least one language",
    },
    only: {
      title: "facts",
      description: "Facts that alone it measures; left out where it measures any fact of its quantities.",
      type: "array",
      items: {
        title: "measured fact",
        type: "string",
        enum: SURVEY_FACTS.filter(({ kind }) => kind === "quantity").map(({ id }) => id),
      },
      minItems: 1,
      uniqueItems: true,
      $comment: "at least one fact",
    },
    measures: {
      title: "quantities",
      type: "object",
      properties: Object.fromEntries(
        MEASURED.map((dimension) => [
          dimension,
          {
            title: "accuracies",
            type: "array",
            items: { $ref: "#/definitions/accuracy" },
            minItems: 1,
            $comment: "at least one accuracy",
          },
        ]),
      ),
      minProperties: 1,
      additionalProperties: false,
      $comment: "at least one quantity that it measures",
    },
    citations: CITATIONS,
  },
  required: ["id", "title", "measures", "citations"],
  additionalProperties: false,
  definitions: { accuracy: ACCURACY },
};
