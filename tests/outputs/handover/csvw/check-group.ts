import {
  type CsvwFinding,
  checkDocument,
  checkKeys,
  checkTableDescription,
  isObject,
  type Json,
  type Say,
} from "./check-metadata.js";

/** The findings about a metadata document that describes a group of tables and how they refer to one another. */
export function checkGroup(text: string): readonly CsvwFinding[] {
  return checkDocument(text, (group, say) => {
    const known = ["@context", "@id", "@type", "dialect", "notes", "tableDirection", "tables", "tableSchema"];
    checkKeys(group, [...known, "transformations"], "metadata 4", say);
    if (group["@type"] !== undefined && group["@type"] !== "TableGroup") say("metadata 5.3.2", "@type is TableGroup");
    const tables: readonly unknown[] = Array.isArray(group.tables) ? group.tables : [];
    if (tables.length === 0 || !tables.every(isObject)) {
      say("metadata 5.3.1", "tables is an array of one or more table descriptions");
      return;
    }
    const described = tables.filter(isObject);
    for (const table of described) checkTableDescription(table, [], say);
    for (const table of described) {
      const schema = isObject(table.tableSchema) ? table.tableSchema : {};
      if (schema.foreignKeys !== undefined) checkForeignKeys(schema, described, say);
    }
  });
}

function checkForeignKeys(schema: Json, tables: readonly Json[], say: Say): void {
  const keys: readonly unknown[] = Array.isArray(schema.foreignKeys) ? schema.foreignKeys : [null];
  for (const key of keys) {
    if (!isObject(key) || !isObject(key.reference)) {
      say("metadata 5.5", "a foreign key is an object with columnReference and reference");
      continue;
    }
    // These alone, not even common properties.
    const more = [...Object.keys(key), ...Object.keys(key.reference)].filter(
      (name) => !["columnReference", "reference", "resource", "schemaReference"].includes(name),
    );
    if (more.length > 0) say("metadata 5.5", `a foreign key has no ${more.join(", ")}`);
    const { resource, schemaReference } = key.reference;
    if ((resource === undefined) === (schemaReference === undefined))
      say("metadata 5.5", "a reference has either a resource or a schemaReference");
    const found = tables.filter((table) => table.url === resource);
    if (found.length !== 1) say("metadata 5.5", `the group has no table ${String(resource)}, or several`);
    const [other] = found;
    const referenced = isObject(other?.tableSchema) ? other.tableSchema : {};
    const own = columnsOf(schema, key.columnReference);
    const theirs = columnsOf(referenced, key.reference.columnReference);
    if (own === null) say("metadata 5.5", "columnReference names columns of its own table");
    if (theirs === null && other !== undefined) say("metadata 5.5", "columnReference names columns of the other table");
    if (own !== null && theirs !== null && own.length !== theirs.length)
      say("metadata 5.5", "as many columns are referred to as refer");
  }
}

function columnsOf(schema: Json, reference: unknown): readonly Json[] | null {
  const columns: readonly unknown[] = Array.isArray(schema.columns) ? schema.columns : [];
  const names: readonly unknown[] = Array.isArray(reference) ? reference : [reference];
  const found = names.map((name) => columns.filter(isObject).find((column) => column.name === name));
  return found.length > 0 && found.every((column) => column !== undefined) ? found : null;
}
