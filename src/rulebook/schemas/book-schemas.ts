import { LANGUAGES, MODEL_FACTS } from "../../facts/index.js";
import { BASES } from "../book/rule.js";
import { VERSION } from "./overlay-schema.js";
import {
  CITATIONS,
  CITES,
  CONDITION_PARTS,
  DAY,
  DAY_OR_NONE,
  DIALECT,
  ID,
  type JsonSchema,
  METHOD_LIST,
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
    version: VERSION,
    language: {
      title: "language",
      description: "Language of titles, messages and remedies.",
      type: "string",
      enum: LANGUAGES,
    },
    sets: { type: "array", items: ID, minItems: 1, uniqueItems: true, $comment: "at least one set" },
    defaultSet: { ...ID, description: "The set that is screened when none is named." },
    baselineModel: { ...ID, description: "The sensor model for surveys without any word on models." },
    methods: {
      title: "methods",
      description: "What is to be known for trying and advising mounting methods beside the proposed one.",
      type: "object",
      properties: {
        lasting: { ...METHOD_LIST, description: "Methods that are meant to stay; tried where a site states none." },
        gates: {
          title: "gates",
          description: "Rules that a method must have been asked, where they concern it, before it is advised.",
          type: "array",
          items: ID,
          uniqueItems: true,
        },
        basis: { type: "string", enum: BASES, description: "How well the choice is founded." },
        says: { ...TEXT, description: "Why these and not the others." },
      },
      required: ["lasting", "gates", "basis", "says"],
      additionalProperties: false,
    },
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
    forExamplesOnly: {
      title: "for examples only",
      type: "boolean",
      description: "An invented model: points that name it are judged by it, and it is never proposed as a remedy.",
    },
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
