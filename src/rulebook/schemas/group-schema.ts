import { GROUP_FACTS, SURVEY_FACTS } from "../../facts/index.js";
import { CONDITION_PARTS, choose, DIALECT, ID, type JsonSchema, TEXT } from "./parts.js";

const FACT: JsonSchema = { $ref: "#/definitions/fact" };
const CONDITION: JsonSchema = { $ref: "#/definitions/condition" };

const MEMBER: JsonSchema = {
  title: "group member",
  description: "How a fact of the group is taken from its rows: one of the ways, and for which rows.",
  type: "object",
  properties: {
    sum: { ...FACT },
    minimum: { ...FACT },
    maximum: { ...FACT },
    distinct: { description: "How many different values the rows have.", ...FACT },
    same: { description: "What the rows state alike; where they disagree, the fact is conflicting.", ...FACT },
    count: {
      description: "true for every row, or the rows for which a condition holds.",
      ...choose(
        { type: "object" },
        {
          title: "count",
          type: "object",
          properties: { where: CONDITION },
          required: ["where"],
          additionalProperties: false,
        },
        { title: "count", type: "boolean", enum: [true], $comment: "true, or { where: condition }" },
      ),
    },
    where: CONDITION,
  },
  minProperties: 1,
  maxProperties: 2,
  additionalProperties: false,
  $comment: "one of sum, minimum, maximum, distinct, same and count, and beside it where, if need be",
};

/** Rows that share a key, and what they come to together. */
export const GROUP_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "group",
  description: "Rows that share a key (a supply, a machine), and the facts that they come to together.",
  type: "object",
  properties: {
    id: { ...ID, description: "The name of the file without its ending." },
    title: { ...TEXT, description: "What the rows of a group have in common, in one line." },
    key: {
      description:
        "Survey facts that the rows of a group share; a row in which one is not known is counted in no group, and rules of groups stay open for it. The site is always part of it.",
      type: "array",
      items: { title: "survey fact", type: "string", enum: SURVEY_FACTS.map((definition) => definition.id) },
      minItems: 1,
      uniqueItems: true,
      $comment: "at least one fact",
    },
    members: {
      title: "group members",
      type: "object",
      properties: Object.fromEntries(
        GROUP_FACTS.map(({ id, name }) => [id, { description: name, $ref: "#/definitions/member" }]),
      ),
      minProperties: 1,
      additionalProperties: false,
      $comment: "at least one fact",
    },
  },
  required: ["id", "title", "key", "members"],
  additionalProperties: false,
  definitions: { ...CONDITION_PARTS, member: MEMBER },
};
