export { jsonDocument, ndjsonDocument } from "./json/document.js";
export { RESULT_SCHEMA, resultSchemaText } from "./schemas/result-schema.js";
