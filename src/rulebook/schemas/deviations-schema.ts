import { ACCEPTABLE } from "../book/deviation.js";
import { choose, DAY, DIALECT, ID, type JsonSchema, TEXT } from "./parts.js";

const LIMIT: JsonSchema = {
  description: "The limit in force when it was accepted, with its unit: one, or the two ends of a band.",
  ...choose(
    { type: "array" },
    {
      title: "limit",
      type: "array",
      items: { ...TEXT, title: "limit" },
      minItems: 2,
      maxItems: 2,
      $comment: "one limit, such as 9 mm, or the two ends of a band, such as [20 V, 28 V]",
    },
    { title: "limit", type: ["string", "number"] },
  ),
};

const DEVIATION: JsonSchema = {
  title: "deviation",
  type: "object",
  properties: {
    point: { ...TEXT, title: "point", description: "Id of the point (a UUID), or its name as results show it." },
    rule: { ...ID, description: "Id of the rule." },
    outcome: {
      title: "outcome",
      description: "The worst that is accepted; undecided is worse than warn, since it may turn out as a fail.",
      type: "string",
      enum: ACCEPTABLE,
    },
    limit: LIMIT,
    value: {
      title: "value",
      description: "What was found when it was accepted, with its unit; a worse value is then not accepted.",
      type: ["string", "number"],
    },
    reason: { ...TEXT, title: "reason", description: "Why it is accepted." },
    acceptedBy: { ...TEXT, title: "name and role", description: "Who answers for it: name and role." },
    from: { ...DAY, description: "First day in force." },
    until: { ...DAY, description: "First day not in force; nothing is accepted without an end." },
  },
  required: ["point", "rule", "outcome", "reason", "acceptedBy", "from", "until"],
  additionalProperties: false,
};

/** A file of accepted deviations. */
export const DEVIATIONS_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "file of deviations",
  description: "Deviations from rules, accepted for single points by somebody who answers for them, until a day.",
  type: "object",
  properties: {
    deviations: { title: "deviations", type: "array", items: DEVIATION },
  },
  required: ["deviations"],
  additionalProperties: false,
};
