import { STAGES } from "../../base/index.js";
import { CATALOGUE, SURVEY_FACTS } from "../../facts/index.js";
import { BAND_PARTS, CITATIONS, CITES, choose, DAY, DAY_OR_NONE, DIALECT, ID, type JsonSchema, TEXT } from "./parts.js";

const LIMIT: JsonSchema = {
  title: "limit",
  description: "Limits in force on [from, until).",
  type: "object",
  properties: {
    from: { ...DAY, description: "First day in force." },
    until: { ...DAY_OR_NONE, description: "First day not in force; null while none is set." },
    reviewBy: { ...DAY_OR_NONE, description: "Past this day the limit still holds, and results say that it is due." },
    fail: { $ref: "#/definitions/bands" },
    warn: { $ref: "#/definitions/bands" },
    cites: CITES,
  },
  required: ["from", "until", "cites"],
  additionalProperties: false,
};

const GIVEN_VALUE: JsonSchema = {
  description: "A value, an interval { lowest, highest }, { unknown: reason }, or null for a fact that is not there.",
  ...choose(
    { type: "object" },
    {
      title: "given value",
      type: "object",
      properties: {
        lowest: { type: ["string", "number"] },
        highest: { type: ["string", "number"] },
        unknown: { title: "reason", type: "string", enum: ["missing", "doubtful", "unreadable", "conflicting"] },
      },
      minProperties: 1,
      maxProperties: 2,
      additionalProperties: false,
      $comment: "lowest and highest, one of them, or unknown",
    },
    { title: "given value", type: ["string", "number", "boolean", "null"] },
  ),
};

const GIVEN: JsonSchema = {
  title: "given facts",
  description: "Facts by id; `model`, `asOf` and `stage` are settings.",
  type: "object",
  properties: {
    ...Object.fromEntries(
      CATALOGUE.filter((definition) => definition.id !== "stage").map((definition) => [
        definition.id,
        { $ref: "#/definitions/given" },
      ]),
    ),
    model: { ...ID, description: "Id of a sensor model of the rulebook." },
    asOf: { ...DAY, description: "Day for which limits and model values are looked up." },
    stage: { title: "stage", type: "string", enum: STAGES },
  },
  additionalProperties: false,
};

const CASE: JsonSchema = {
  title: "case",
  type: "object",
  properties: {
    name: TEXT,
    given: GIVEN,
    expect: {
      title: "outcome",
      type: "string",
      enum: ["pass", "warn", "fail", "undecided", "not-applicable", "no-limit-in-force"],
    },
    missing: {
      description: "The facts that must be named as open, in any order.",
      type: "array",
      items: { $ref: "#/definitions/fact" },
      uniqueItems: true,
    },
  },
  required: ["name", "given", "expect"],
  additionalProperties: false,
};

/** One rule file. */
export const RULE_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "rule",
  description: "One rule: when it applies, the fact it judges, its dated limits, their sources, and cases.",
  type: "object",
  properties: {
    id: { ...ID, description: "The name of the file without its ending." },
    title: { ...TEXT, description: "What holds when the rule passes, in one line." },
    group: {
      ...ID,
      description: "Name of a group file: the rule judges each group of rows once, and all its rows by that.",
    },
    sets: { type: "array", items: ID, minItems: 1, uniqueItems: true, $comment: "at least one set of the manifest" },
    stages: {
      type: "array",
      items: { title: "stage", type: "string", enum: STAGES },
      minItems: 1,
      uniqueItems: true,
      $comment: "at least one stage",
    },
    appliesWhen: { $ref: "#/definitions/condition" },
    judges: {
      description: "The fact that the limits speak of, or one per stage.",
      ...choose(
        { type: "object" },
        {
          title: "judged facts",
          type: "object",
          properties: Object.fromEntries(STAGES.map((stage) => [stage, { $ref: "#/definitions/fact" }])),
          minProperties: 1,
          additionalProperties: false,
          $comment: "a fact for each stage of the rule",
        },
        { $ref: "#/definitions/fact" },
      ),
    },
    limits: { type: "array", items: LIMIT, minItems: 1, $comment: "at least one limit" },
    citations: CITATIONS,
    messages: {
      title: "messages",
      description: "What a finding says; {fact_id} stands for the value of a fact.",
      type: "object",
      properties: { fail: TEXT, warn: TEXT },
      additionalProperties: false,
    },
    remedy: {
      title: "remedy",
      type: "object",
      properties: {
        text: TEXT,
        change: {
          description: "Survey facts that can be changed.",
          type: "array",
          items: { title: "survey fact", type: "string", enum: SURVEY_FACTS.map((definition) => definition.id) },
          uniqueItems: true,
        },
      },
      required: ["text", "change"],
      additionalProperties: false,
    },
    undecided: { title: "word", type: "string", enum: ["warn", "fail"] },
    releases: {
      title: "word",
      description: "never: it can hurt somebody where this rule is broken or open; no deviation from it is accepted.",
      type: "string",
      enum: ["never"],
    },
    cases: { type: "array", items: CASE, minItems: 1, $comment: "at least one case" },
    casesGive: { ...GIVEN, description: "Settings and facts that every case starts from." },
  },
  required: ["id", "title", "sets", "stages", "limits", "citations", "messages", "remedy", "cases"],
  additionalProperties: false,
  definitions: { ...BAND_PARTS, given: GIVEN_VALUE },
};
