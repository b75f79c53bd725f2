import { parse } from "csv-parse/sync";
import type { CsvwFinding } from "./check-metadata.js";

/** A group, which has been checked, with the foreign keys of its tables. */
interface Group {
  readonly tables: readonly (Metadata & {
    readonly url: string;
    readonly tableSchema: {
      readonly foreignKeys?: readonly {
        readonly columnReference: string;
        readonly reference: { readonly resource: string; readonly columnReference: string };
      }[];
    };
  })[];
}

/**
 * What is wrong with the references between tables: each row must refer to just one row of the other table, by cells of one
 * value and one datatype. An empty cell refers to none.
 *
 * @param bytesOf - the tables by their urls
 */
export function checkReferences(groupText: string, bytesOf: ReadonlyMap<string, Uint8Array>): readonly CsvwFinding[] {
  const { tables } = JSON.parse(groupText) as Group;
  const findings: CsvwFinding[] = [];
  const column = (url: string, name: string): { readonly base: string; readonly cells: readonly string[] } => {
    const table = tables.find((one) => one.url === url);
    const place = table?.tableSchema.columns.findIndex((one) => one.name === name) ?? -1;
    const [, ...rows] = table === undefined ? [] : recordsOf(bytesOf.get(url) ?? new Uint8Array(), table.dialect);
    const base = table?.tableSchema.columns[place]?.datatype.base ?? "";
    return { base, cells: rows.map((row) => row[place] ?? "") };
  };
  for (const { url, tableSchema } of tables) {
    for (const { columnReference, reference } of tableSchema.foreignKeys ?? []) {
      const [own, other] = [column(url, columnReference), column(reference.resource, reference.columnReference)];
      for (const [index, cell] of own.cells.entries()) {
        const found = cell === "" || own.base !== other.base ? 0 : other.cells.filter((one) => one === cell).length;
        if (found !== 1)
          findings.push({ section: "metadata 5.5", text: `${url}, row ${index + 1}: ${found} rows are "${cell}"` });
      }
    }
  }
  return findings;
}

/** The parts of a metadata document, which has been checked, that its table is held to. */
interface Metadata {
  readonly dialect: {
    readonly encoding: string;
    readonly delimiter: string;
    readonly lineTerminators: readonly string[];
  };
  readonly tableSchema: {
    readonly columns: readonly {
      readonly name: string;
      readonly titles: readonly string[];
      readonly required?: boolean;
      readonly null?: readonly string[];
      readonly datatype: { readonly base: string; readonly format?: unknown; readonly maxLength?: number };
    }[];
    readonly primaryKey?: string | readonly string[];
  };
}

/** What is wrong with a table by its metadata: headings, numbers of cells, empty and ill-formed values, keys. */
export function checkTable(bytes: Uint8Array, metadataText: string): readonly CsvwFinding[] {
  const { dialect, tableSchema } = JSON.parse(metadataText) as Metadata;
  const { columns, primaryKey = [] } = tableSchema;
  const findings: CsvwFinding[] = [];
  const say = (section: string, text: string): void => void findings.push({ section, text });
  const [headings = [], ...rows] = recordsOf(bytes, dialect);
  // Headings are the titles of embedded metadata, which must be compatible.
  const fits =
    headings.length === columns.length && columns.every(({ titles }, place) => titles.includes(headings[place] ?? ""));
  if (!fits) say("metadata 5.5.1", `headings ${headings.join("|")} do not fit the titles`);
  const keys = new Set<string>();
  for (const [index, row] of rows.entries()) {
    const at = `row ${index + 1}`;
    if (row.length !== columns.length) {
      say("metadata 2", `${at} has ${row.length} cells, ${columns.length} are described`);
      continue;
    }
    for (const [place, column] of columns.entries()) {
      const cell = row[place] ?? "";
      const trouble = (column.null ?? [""]).includes(cell)
        ? column.required
          ? ["model 6.4", "it is required"]
          : null
        : troubleOf(cell, column.datatype);
      if (trouble) say(trouble[0] ?? "", `${at}, ${column.name}: ${trouble[1]}`);
    }
    const named = typeof primaryKey === "string" ? [primaryKey] : primaryKey;
    const key = JSON.stringify(named.map((name) => row[columns.findIndex((column) => column.name === name)]));
    if (named.length > 0 && keys.has(key)) say("metadata 5.5", `${at}: its primary key ${key} stands twice`);
    keys.add(key);
  }
  return findings;
}

/** Records by the flags of the dialect (model 8): no trimming, rows that begin with the comment prefix left out. */
function recordsOf(
  bytes: Uint8Array,
  { encoding, delimiter, lineTerminators }: Metadata["dialect"],
): readonly (readonly string[])[] {
  // As a stream: in one go, some versions of Node take Windows-1252 for Latin-1.
  const text = new TextDecoder(encoding).decode(bytes, { stream: true }).replace(/^\ufeff/, "");
  const options = { delimiter, record_delimiter: [...lineTerminators], relax_column_count: true, relax_quotes: true };
  const raw = parse(text, { ...options, raw: true }) as unknown as readonly {
    readonly raw: string;
    readonly record: string[];
  }[];
  return raw.filter((one) => !one.raw.startsWith("#")).map(({ record }) => record);
}

function troubleOf(
  cell: string,
  { base, format, maxLength }: Metadata["tableSchema"]["columns"][number]["datatype"],
): readonly [string, string] | null {
  if (base === "string") {
    return maxLength !== undefined && [...cell].length > maxLength
      ? ["metadata 5.11.2", `"${cell}" is longer than ${maxLength}`]
      : null;
  }
  if (base === "decimal") {
    const sign = (format as { readonly decimalChar?: string } | undefined)?.decimalChar ?? ".";
    const digits = new RegExp(`^[+-]?\\d+(?:${sign === "." ? "\\." : sign}\\d+)?$`);
    return digits.test(cell.trim()) ? null : ["model 6.4.2", `"${cell}" is no number with "${sign}"`];
  }
  if (base !== "date") return null;
  const pattern = String(format ?? "yyyy-MM-dd")
    .replaceAll(".", "\\.")
    .replace("yyyy", "(?<y>\\d{4})")
    .replace("MM", "(?<m>\\d{2})")
    .replace("dd", "(?<d>\\d{2})");
  const { y, m, d } = new RegExp(`^${pattern}$`).exec(cell.trim())?.groups ?? {};
  const day = new Date(`${y}-${m}-${d}T00:00:00Z`);
  const exists = !Number.isNaN(day.getTime()) && day.getUTCDate() === Number(d);
  return exists ? null : ["model 6.4.4", `"${cell}" is no day as ${String(format)}`];
}
