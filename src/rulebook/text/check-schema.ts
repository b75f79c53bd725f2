import { Ajv, type ErrorObject, type ValidateFunction } from "ajv";
import { isPlainDay } from "../../base/index.js";
import { CHANGE_SCHEMA, type JsonSchema, REFERRED_BY_CHANGES } from "../schemas/index.js";
import { wordSchemaError } from "./schema-words.js";
import { below, type Report, type Source } from "./source.js";

const ajv = new Ajv({
  strict: true,
  allErrors: true,
  verbose: true,
  allowUnionTypes: true,
  strictRequired: false,
  inlineRefs: false,
  // Each schema runs over a few files once: polishing its code takes longer than it saves.
  code: { optimize: false },
});
ajv.addFormat("date", { type: "string", validate: isPlainDay });

const validators = new Map<JsonSchema, ValidateFunction>();

function validatorOf(schema: JsonSchema): ValidateFunction {
  const known = validators.get(schema);
  if (known) return known;
  // Copies: a schema that was compiled by itself already keeps the pointers of its own.
  if (schema === CHANGE_SCHEMA) {
    for (const [name, part] of Object.entries(REFERRED_BY_CHANGES)) ajv.addSchema({ ...part }, name);
  }
  const fresh = ajv.compile(schema);
  validators.set(schema, fresh);
  return fresh;
}

/** Keywords whose errors only repeat what an error inside them says. */
const ECHOES: ReadonlySet<string> = new Set(["if", "propertyNames"]);

/**
 * Checks plain data against a schema and reports every mistake at the key or value where it stands.
 *
 * @returns whether the data fits the schema
 */
export function checkSchema(source: Source, schema: JsonSchema, report: Report): boolean {
  const validate = validatorOf(schema);
  if (validate(source.data)) return true;
  const errors = (validate.errors ?? []).filter((error) => !ECHOES.has(error.keyword));
  const seen = new Set<string>();
  for (const error of errors) {
    if (isFollowOn(error, errors)) continue;
    const { pointer, atKey } = placeOfError(error);
    if (seen.has(pointer)) continue;
    seen.add(pointer);
    const { code, text } = wordSchemaError(error, missingKeys(error, errors));
    if (atKey) report.atKey(pointer, code, text);
    else report.atValue(pointer, code, text);
  }
  return false;
}

/** Every key that is missing in the same mapping; they are said in one finding. */
function missingKeys(error: ErrorObject, all: readonly ErrorObject[]): readonly string[] {
  return all
    .filter((other) => other.keyword === "required" && other.instancePath === error.instancePath)
    .map((other) => String(other.params.missingProperty));
}

function placeOfError(error: ErrorObject): { readonly pointer: string; readonly atKey: boolean } {
  if (error.keyword === "additionalProperties") {
    return { pointer: below(error.instancePath, error.params.additionalProperty), atKey: true };
  }
  // Within `propertyNames` the instance is the mapping; the key in question is named beside it.
  if (error.propertyName !== undefined) return { pointer: below(error.instancePath, error.propertyName), atKey: true };
  return { pointer: error.instancePath, atKey: error.keyword === "required" };
}

/** One slip of the pen is one finding: a misspelt key is not said again as a missing or surplus one. */
function isFollowOn(error: ErrorObject, all: readonly ErrorObject[]): boolean {
  const beside = all.filter((other) => other.instancePath === error.instancePath && other !== error);
  // A whole comparison beside another condition is said once, at its fact.
  if (["operator", "value"].includes(error.params.additionalProperty)) {
    return beside.some((other) => other.params.additionalProperty === "fact");
  }
  if (!["required", "minProperties", "maxProperties"].includes(error.keyword)) return false;
  return beside.some((other) => other.keyword === "additionalProperties");
}
