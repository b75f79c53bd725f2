/** A piece of JSON Schema as plain data. */
export type SchemaPart = { readonly [key: string]: unknown };

/** An object that has exactly these keys, all of them. */
export function exactly(description: string, properties: Readonly<Record<string, SchemaPart>>): SchemaPart {
  return { description, type: "object", properties, required: Object.keys(properties), additionalProperties: false };
}

export function text(description: string): SchemaPart {
  return { description, type: "string" };
}

export function textOrNull(description: string): SchemaPart {
  return { description, type: ["string", "null"] };
}

export function flag(description: string): SchemaPart {
  return { description, type: "boolean" };
}

export function numberOrNull(description: string): SchemaPart {
  return { description, type: ["number", "null"] };
}

/** A whole number from `minimum` on. */
export function whole(description: string, minimum: number = 0): SchemaPart {
  return { description, type: "integer", minimum };
}

export function oneOfWords(description: string, words: readonly (string | null)[]): SchemaPart {
  return { description, enum: words };
}

export function listOf(description: string, items: SchemaPart): SchemaPart {
  return { description, type: "array", items };
}

/** A part defined once under `$defs`. */
export function defined(name: string): SchemaPart {
  return { $ref: `#/$defs/${name}` };
}

/** Either the part or null. */
export function orNull(part: SchemaPart): SchemaPart {
  return { anyOf: [part, { type: "null" }] };
}

/** A text of a fixed form. */
export function form(description: string, pattern: string): SchemaPart {
  return { description, type: "string", pattern };
}

export function formOrNull(description: string, pattern: string): SchemaPart {
  return { description, type: ["string", "null"], pattern };
}

/** How a limit is broken. */
export const BANDS = ["below", "above", "atOrBelow", "atOrAbove", "outside", "oneOf", "noneOf", "when"];

export const SHA256 = "^[0-9a-f]{64}$";
export const DAY = "^[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])$";
export const UUID5 = "^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$";
export const CELL = "^[A-Z]{1,3}[1-9][0-9]{0,6}$";
export const COLUMN = "^[A-Z]{1,3}$";
export const KEBAB = "^[a-z0-9]+([.-][a-z0-9]+)*$";
/** Snake case, facts of a model, table or group with that prefix. */
export const FACT = "^([a-z]+\\.)?[a-z][a-z0-9_]*$";
