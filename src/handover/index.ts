export type { MappedColumn, MappedFile, MappedRow } from "./mapped.js";
