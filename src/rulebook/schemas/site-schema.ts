import { SURVEY_FACTS } from "../../facts/index.js";
import { DIALECT, ID, type JsonSchema, METHOD_LIST, TEXT } from "./parts.js";

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

const MEASURED_BY: JsonSchema = {
  title: "ways of measuring",
  description:
    "By fact: the way in which its values are measured there. Values whose cell, column or heading says how accurate they are keep that.",
  type: "object",
  properties: Object.fromEntries(
    SURVEY_FACTS.filter(({ kind }) => kind === "quantity").map(({ id, name }) => [id, { ...ID, description: name }]),
  ),
  minProperties: 1,
  additionalProperties: false,
  $comment: "at least one fact",
};

/** Of a type of machine or of a machine: facts, and how others are measured. */
const NARROWER: JsonSchema = {
  ...STATED,
  properties: { ...(STATED.properties as object), measuredBy: { $ref: "#/definitions/measuredBy" } },
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
    measuredBy: { $ref: "#/definitions/measuredBy" },
    machineTypes: {
      title: "machine types",
      type: "object",
      properties: Object.fromEntries(MACHINE_TYPES.map((type) => [type, { $ref: "#/definitions/narrower" }])),
      additionalProperties: false,
    },
    machines: {
      title: "machines",
      description: "By asset tag, as surveys write it.",
      type: "object",
      additionalProperties: { $ref: "#/definitions/narrower" },
    },
  },
  minProperties: 1,
  additionalProperties: false,
  $comment: "at least one of site, states, measuredBy, machineTypes and machines",
  definitions: { stated: STATED, narrower: NARROWER, measuredBy: MEASURED_BY },
};
