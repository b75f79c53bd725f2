import { CONDITION_SCHEMA, MODEL_SCHEMA, RULEBOOK_SCHEMA } from "./book-schemas.js";
import { CHANGE_SCHEMA } from "./change-schema.js";
import { COLUMNS_SCHEMA } from "./columns-schema.js";
import { DEVIATIONS_SCHEMA } from "./deviations-schema.js";
import { GROUP_SCHEMA } from "./group-schema.js";
import { MEASURING_SCHEMA } from "./measuring-schema.js";
import { OVERLAY_SCHEMA } from "./overlay-schema.js";
import type { JsonSchema } from "./parts.js";
import { RULE_SCHEMA } from "./rule-schema.js";
import { SIGNATURE_SCHEMA } from "./signature-schema.js";
import { SITE_SCHEMA } from "./site-schema.js";
import { TABLE_SCHEMA } from "./table-schema.js";
import { WORDS_SCHEMA } from "./words-schema.js";

export { CONDITION_SCHEMA, MODEL_SCHEMA, RULEBOOK_SCHEMA } from "./book-schemas.js";
export { CHANGE_SCHEMA, REFERRED_BY_CHANGES } from "./change-schema.js";
export { COLUMNS_SCHEMA, IGNORE } from "./columns-schema.js";
export { DEVIATIONS_SCHEMA } from "./deviations-schema.js";
export { editorSchema } from "./editor/editor-schema.js";
export { GROUP_SCHEMA } from "./group-schema.js";
export { MEASURING_SCHEMA } from "./measuring-schema.js";
export { OVERLAY_SCHEMA } from "./overlay-schema.js";
export { choose, DIALECT, ID, type JsonSchema, TEXT } from "./parts.js";
export { RULE_SCHEMA } from "./rule-schema.js";
export { SIGNATURE_SCHEMA } from "./signature-schema.js";
export { SITE_SCHEMA } from "./site-schema.js";
export { TABLE_SCHEMA } from "./table-schema.js";
export { WORDS_SCHEMA } from "./words-schema.js";

/**
 * The schemas by the names of their files in `schemas/`, which editors read. Those files are written from these
 * objects, with explanations: `REWRITE_SCHEMAS=1 npx vitest run tests/rulebook/schema-files.test.ts`.
 */
export const SCHEMA_FILES: Readonly<Record<string, JsonSchema>> = {
  "rulebook.schema.json": RULEBOOK_SCHEMA,
  "rule.schema.json": RULE_SCHEMA,
  "condition.schema.json": CONDITION_SCHEMA,
  "model.schema.json": MODEL_SCHEMA,
  "group.schema.json": GROUP_SCHEMA,
  "measuring.schema.json": MEASURING_SCHEMA,
  "table.schema.json": TABLE_SCHEMA,
  "words.schema.json": WORDS_SCHEMA,
  "overlay.schema.json": OVERLAY_SCHEMA,
  "change.schema.json": CHANGE_SCHEMA,
  "site.schema.json": SITE_SCHEMA,
  "columns.schema.json": COLUMNS_SCHEMA,
  "deviations.schema.json": DEVIATIONS_SCHEMA,
  "signature.schema.json": SIGNATURE_SCHEMA,
};
