import { readFileSync } from "node:fs";
import { parse } from "yaml";

/** The parts of a mapping file that a table is made from. */
interface MappedColumn {
  readonly heading: string;
  readonly type?: "text" | "number" | "date" | "code";
  readonly key?: boolean;
  readonly required?: boolean;
  readonly values?: Readonly<Record<string, string>>;
  readonly length?: { readonly most: number };
  readonly references?: string;
}

interface MappedTarget {
  readonly target: string;
  readonly columns: readonly MappedColumn[];
  readonly withdrawn?: { readonly column: string; readonly value: string };
}

const TYPES = { text: "text", code: "text", number: "numeric", date: "date" } as const;

/** The targets of a mapping file, in the order in which they are to be loaded. */
export function targetsOf(mapping: string): readonly MappedTarget[] {
  const { targets } = parse(readFileSync(mapping, "utf8")) as { readonly targets: readonly MappedTarget[] };
  return targets;
}

/** Tables with the keys, references and limits that the mapping promises to keep. */
export function tablesFor(targets: readonly MappedTarget[]): string {
  const keys = new Map(targets.map(({ target, columns }) => [target, keysOf(columns)]));
  return targets
    .map(({ target, columns, withdrawn }) => {
      const lines = columns.map((column) => columnLine(column, withdrawn));
      const parents = columns.flatMap(({ heading, references }) => {
        const [parent = ""] = keys.get(references ?? "") ?? [];
        return references === undefined
          ? []
          : [`foreign key (${name(heading)}) references ${name(references)} (${name(parent)})`];
      });
      const primary = `primary key (${keysOf(columns).map(name).join(", ")})`;
      return `create table ${name(target)} (\n  ${[...lines, primary, ...parents].join(",\n  ")}\n);\n`;
    })
    .join("");
}

function keysOf(columns: readonly MappedColumn[]): readonly string[] {
  return columns.filter(({ key }) => key === true).map(({ heading }) => heading);
}

function columnLine(column: MappedColumn, withdrawn: MappedTarget["withdrawn"]): string {
  const { heading, type = column.key === true ? "code" : "text", required, values, length } = column;
  const checks: string[] = [];
  if (length !== undefined) checks.push(`char_length(${name(heading)}) <= ${length.most}`);
  if (values !== undefined) {
    const words = [...Object.values(values), ...(withdrawn?.column === heading ? [withdrawn.value] : [])];
    checks.push(`${name(heading)} in (${words.map(literal).join(", ")})`);
  }
  const limits = checks.map((check) => ` check (${check})`).join("");
  return `${name(heading)} ${TYPES[type]}${required === true ? " not null" : ""}${limits}`;
}

/** Loads a file into an empty table of the same columns. */
export function copyInto(table: string, file: string): string {
  return `\\copy ${name(table)} from ${literal(file)} with (format csv, header match, encoding 'UTF8')\n`;
}

/** Loads a file as a system does that may have the rows already: by their key, new ones added, others replaced. */
export function upsert({ target, columns }: MappedTarget, file: string): string {
  const headings = columns.map(({ heading }) => name(heading));
  const keys = keysOf(columns).map(name);
  const set = headings.map((heading) => `${heading} = excluded.${heading}`).join(", ");
  return (
    `create temporary table arriving as select * from ${name(target)} with no data;\n` +
    copyInto("arriving", file) +
    `insert into ${name(target)} select * from arriving on conflict (${keys.join(", ")}) do update set ${set};\n` +
    "drop table arriving;\n"
  );
}

/** Every row of a table that does not say that it is withdrawn, as text. */
export function standing({ target, columns, withdrawn }: MappedTarget): string {
  const where =
    withdrawn === undefined ? "" : ` where ${name(withdrawn.column)} is distinct from ${literal(withdrawn.value)}`;
  const key = keysOf(columns).map(name).join(", ");
  return `select row_to_json(t) from ${name(target)} t${where} order by ${key} collate "C";\n`;
}

export function name(word: string): string {
  return `"${word.replaceAll('"', '""')}"`;
}

export function literal(text: string): string {
  return `'${text.replaceAll("'", "''")}'`;
}
