import { DIALECT, type JsonSchema, TEXT } from "./parts.js";

/** A version of a rulebook or an overlay. */
export const VERSION: JsonSchema = {
  title: "version",
  type: "string",
  pattern: "^\\d+\\.\\d+\\.\\d+$",
  $comment: 'three numbers in quotes, such as "1.0.0"',
};

/** The manifest of an overlay. */
export const OVERLAY_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "overlay manifest",
  description: "The manifest of an overlay: a folder that a site lays over a rulebook.",
  type: "object",
  properties: {
    name: { ...TEXT, description: "Name of the overlay, as results show it." },
    version: { ...VERSION, description: "Raised whenever something in the overlay changes." },
    over: {
      title: "book it lies over",
      description: "The rulebook, or an overlay given before this one.",
      type: "object",
      properties: { name: TEXT, version: { ...VERSION, description: "Exactly the version that it was made for." } },
      required: ["name", "version"],
      additionalProperties: false,
    },
  },
  required: ["name", "version", "over"],
  additionalProperties: false,
};
