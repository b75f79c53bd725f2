import { CHANGEABLE_KINDS, type ChangeableKind } from "../book/overlay.js";
import { CONDITION_SCHEMA, MODEL_SCHEMA } from "./book-schemas.js";
import { GROUP_SCHEMA } from "./group-schema.js";
import { MEASURING_SCHEMA } from "./measuring-schema.js";
import { choose, DAY, DIALECT, ID, type JsonSchema, TEXT } from "./parts.js";
import { RULE_SCHEMA } from "./rule-schema.js";
import { TABLE_SCHEMA } from "./table-schema.js";

/** The schema of the files of each kind. */
const KIND_SCHEMAS: Readonly<Record<ChangeableKind, JsonSchema>> = {
  rule: RULE_SCHEMA,
  model: MODEL_SCHEMA,
  condition: CONDITION_SCHEMA,
  table: TABLE_SCHEMA,
  group: GROUP_SCHEMA,
  measuring: MEASURING_SCHEMA,
};

function fileOf(kind: ChangeableKind): string {
  return `${kind}.schema.json`;
}

/** The schemas that the schema of change files points into, by the names of their files. */
export const REFERRED_BY_CHANGES: Readonly<Record<string, JsonSchema>> = Object.fromEntries(
  CHANGEABLE_KINDS.map((kind) => [fileOf(kind), KIND_SCHEMAS[kind]]),
);

function partsOf(kind: ChangeableKind): { readonly keys: readonly string[]; readonly required: readonly string[] } {
  const { properties, required } = KIND_SCHEMAS[kind] as { properties: object; required: readonly string[] };
  return { keys: Object.keys(properties).filter((key) => key !== "id"), required };
}

/** Every key of a file of the kind but its id; null takes one away that a file need not have. */
function replacedKeys(kind: ChangeableKind): JsonSchema {
  const { keys, required } = partsOf(kind);
  const forKey = (key: string): JsonSchema => {
    const whole = { $ref: `${fileOf(kind)}#/properties/${key}` };
    return required.includes(key) ? whole : choose({ type: "null" }, { type: "null" }, whole);
  };
  return {
    title: `changed ${kind}`,
    type: "object",
    properties: Object.fromEntries(keys.map((key) => [key, forKey(key)])),
    additionalProperties: false,
  };
}

/** What `replaces` may hold hangs on what is changed. */
function replacesOf(kind: ChangeableKind): JsonSchema {
  return {
    if: {
      type: "object",
      properties: { changes: { type: "object", properties: { [kind]: true }, required: [kind], maxProperties: 1 } },
      required: ["changes"],
    },
    // biome-ignore lint/suspicious/noThenProperty: the keyword of JSON Schema
    then: { type: "object", properties: { replaces: replacedKeys(kind) } },
  };
}

/** A change file of an overlay. */
export const CHANGE_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "change file",
  description: "What a site changes of one thing of the rulebook below, and why; the rest is inherited.",
  type: "object",
  properties: {
    changes: {
      title: "thing changed",
      description: "The one thing that is changed: its kind, and its id.",
      type: "object",
      properties: Object.fromEntries(CHANGEABLE_KINDS.map((kind) => [kind, ID])),
      minProperties: 1,
      maxProperties: 1,
      additionalProperties: false,
      $comment: `one thing: ${CHANGEABLE_KINDS.join(", ")}`,
    },
    replaces: {
      description: "Whole keys as they would stand in the file of the thing; null takes a key away.",
      type: "object",
      minProperties: 1,
      $comment: "at least one key",
    },
    addsCases: {
      $ref: `${fileOf("rule")}#/properties/cases`,
    },
    switchedOff: {
      title: "switched off",
      description: "true: the rule is not applied here. Never a rule of the set core, nor one marked releases: never.",
      type: "boolean",
      enum: [true],
    },
    reason: { ...TEXT, title: "reason", description: "Why the site wants it otherwise; results show it." },
    by: { ...TEXT, title: "name and role", description: "Who answers for it: name and role." },
    on: { ...DAY, description: "The day on which it was decided." },
  },
  required: ["changes", "reason", "by", "on"],
  additionalProperties: false,
  allOf: CHANGEABLE_KINDS.map(replacesOf),
};
