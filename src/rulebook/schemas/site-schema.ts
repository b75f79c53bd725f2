import { SURVEY_FACTS } from "../../facts/index.js";
import { DIALECT, type JsonSchema, METHOD_LIST, TEXT } from "./parts.js";

/** Facts that make up the identity of a point, which only the row itself can tell. */
const NOT_FOR_STATING: ReadonlySet<string> = new Set([
  "site",
  "point_id",
  "asset_tag",
  "component",
  "bearing_position",
  "direction",
]);

const STATED: JsonSchema = {
  title: "stated facts",
  type: "object",
  properties: {
    methodsAllowed: {
      ...METHOD_LIST,
      description: "Mounting methods that the site allows here; the narrower list stands in for the wider one.",
    },
    ...Object.fromEntries(
      SURVEY_FACTS.filter(({ id }) => !NOT_FOR_STATING.has(id)).map((definition) => [
        definition.id,
        { title: "stated value", description: definition.name, type: ["string", "number", "boolean"] },
      ]),
    ),
  },
  minProperties: 1,
  additionalProperties: false,
  $comment: "at least one fact",
};

const MACHINE_TYPES = SURVEY_FACTS.find(({ id }) => id === "machine_type")?.choices ?? [];

/** A site file: facts stated once. */
export const SITE_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "site file",
  description: "Facts stated once, for the whole site, for a type of machine, or for a machine.",
  type: "object",
  properties: {
    site: { ...TEXT, description: "Name of the site, part of every point's id." },
    states: { $ref: "#/definitions/stated" },
    machineTypes: {
      title: "machine types",
      type: "object",
      properties: Object.fromEntries(MACHINE_TYPES.map((type) => [type, { $ref: "#/definitions/stated" }])),
      additionalProperties: false,
    },
    machines: {
      title: "machines",
      description: "By asset tag, as surveys write it.",
      type: "object",
      additionalProperties: { $ref: "#/definitions/stated" },
    },
  },
  minProperties: 1,
  additionalProperties: false,
  $comment: "at least one of site, states, machineTypes and machines",
  definitions: { stated: STATED },
};
