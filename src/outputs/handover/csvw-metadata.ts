import { foldText } from "../../base/index.js";
import { type Column, type DayPattern, SIGNS, type Target } from "../../handover/index.js";

/** The name of the metadata beside a text table, where readers look for it first. */
export function metadataName(csvName: string): string {
  return `${csvName}-metadata.json`;
}

/** Values of columns of one table that are keys of another. */
export interface ForeignKey {
  readonly columnReference: string;
  /** The table by its url in the same document. */
  readonly reference: { readonly resource: string; readonly columnReference: string };
}

export const CSVW_CONTEXT = ["http://www.w3.org/ns/csvw", { "@language": "en" }] as const;

/**
 * What a text table is, for programs: W3C Metadata Vocabulary for Tabular Data and Model for Tabular Data and Metadata on
 * the Web, Recommendations of 17 December 2015. A table description (5.4) with dialect (5.9), columns (5.6) and
 * datatypes (5.11); sections read 2026-11-26.
 *
 * @param csvName - name of the file, which stands beside the metadata
 * @returns JSON, ending in a line feed
 */
export function csvwMetadata(target: Described, csvName: string, title: string): string {
  const metadata = { "@context": CSVW_CONTEXT, ...tableDescription(target, csvName, title, []) };
  return `${JSON.stringify(metadata, null, 2)}\n`;
}

/** A target as far as its table is described. */
export type Described = Pick<Target, "form" | "columns">;

/** The url of a table that stands beside its metadata. */
export function tableUrl(csvName: string): string {
  return encodeURIComponent(csvName);
}

/** The description of one table (5.4), alone or in a group. */
export function tableDescription(
  target: Described,
  csvName: string,
  title: string,
  foreignKeys: readonly ForeignKey[],
): object {
  const { form, columns } = target;
  const names = columnNames(columns);
  const keys = columns.flatMap(({ key }, place) => (key ? [names[place] ?? ""] : []));
  const id = columns.findIndex(
    ({ source, values }) =>
      source.from === "name" && source.name.of === "field" && source.name.name === "id" && values === null,
  );
  const schema = {
    columns: columns.map((column, place) => ({
      name: names[place],
      titles: [column.heading],
      datatype: datatypeOf(column, target),
      ...(column.required ? { required: true } : {}),
      ...(typeof column.whenEmpty === "object" && !column.required ? { null: ["", column.whenEmpty.clear] } : {}),
    })),
    ...(keys.length === 0 ? {} : { primaryKey: keys.length === 1 ? keys[0] : keys }),
    ...(foreignKeys.length === 0 ? {} : { foreignKeys }),
    ...(id < 0 ? {} : { aboutUrl: `urn:uuid:{${names[id]}}` }),
  };
  return {
    url: tableUrl(csvName),
    "dc:title": title,
    dialect: {
      encoding: form.encoding === "windows-1252" ? "windows-1252" : "utf-8",
      delimiter: SIGNS[form.separator],
      lineTerminators: [form.lineEnd === "lf" ? "\n" : "\r\n"],
      quoteChar: '"',
      doubleQuote: true,
      header: true,
      headerRowCount: 1,
      skipBlankRows: false,
      // The text of the Recommendation has true as the default, its list of defaults false: so it is said.
      trim: false,
    },
    tableSchema: schema,
  };
}

/** The datatype of what stands in a column (5.11). */
export function datatypeOf(column: Column, { form }: Pick<Target, "form">): { readonly base: string } {
  const { type, days, length } = column;
  if (type === "number") {
    const format = { decimalChar: "," };
    return { base: "decimal", ...(form.decimalSign === "comma" ? { format } : {}) };
  }
  const format = dayFormat(days);
  if (type === "date") return { base: "date", ...{ format } };
  // Units and bytes are never fewer than characters, in which the vocabulary counts.
  return { base: "string", ...(length === null ? {} : { maxLength: length.most }) };
}

/** Day patterns as the model writes them (6.4.4). */
function dayFormat(days: DayPattern): string {
  return days.replace("YYYY", "yyyy").replace("DD", "dd");
}

/** Names that may stand in a URI template: letters, digits and low lines, each once, none with a low line in front. */
export function columnNames(columns: readonly Column[]): readonly string[] {
  const taken = new Set<string>();
  return columns.map(({ heading }, place) => {
    const plain = foldText(heading)
      .replace(/[^a-z0-9]+/g, "_")
      .replace(/^_+|_+$/g, "");
    const name = plain === "" ? `column_${place + 1}` : plain;
    let free = name;
    for (let number = 2; taken.has(free); number++) free = `${name}_${number}`;
    taken.add(free);
    return free;
  });
}
