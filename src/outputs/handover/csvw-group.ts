import type { PlainDay } from "../../base/index.js";
import { type Filling, partsOf } from "../../handover/index.js";
import { CSVW_CONTEXT, columnNames, datatypeOf, type ForeignKey, tableDescription, tableUrl } from "./csvw-metadata.js";
import type { HandoverFile } from "./handover-files.js";

/** Where readers look for the description of all tables of a folder (Model for Tabular Data, 5.3). */
export const GROUP_NAME = "csv-metadata.json";

type FilledTarget = Filling["targets"][number];

/** What a description of all tables is made of. */
export interface GroupInput {
  readonly mapping: Filling["mapping"];
  readonly targets: Filling["targets"];
  readonly asOf: PlainDay;
  /** Whether all rows are written; in a difference, what is referred to may have been told before. */
  readonly isWhole: boolean;
}

/**
 * The description of all text tables of an export and how they refer to one another: a table group (W3C Metadata Vocabulary
 * for Tabular Data, 5.3) with foreign keys (5.5), which must lead to one table of the same group. The metadata beside each
 * table stays the one that holds for that table alone.
 *
 * @returns null where fewer than two text tables are written: the metadata of the one says all
 */
export function handoverGroup(input: GroupInput): HandoverFile | null {
  const { mapping, asOf } = input;
  const tables = input.targets.flatMap((filled) => {
    const { target, mapped } = filled;
    if (target.form.kind !== "csv") return [];
    const title = `${mapping.title}: ${target.id}`;
    return partsOf(target, mapped, asOf).map(({ name, rows }) =>
      tableDescription(target, name, title, foreignKeys(filled, rows, input)),
    );
  });
  if (tables.length < 2) return null;
  const group = { "@context": CSVW_CONTEXT, "dc:title": mapping.title, tables };
  const bytes = new TextEncoder().encode(`${JSON.stringify(group, null, 2)}\n`);
  return { name: GROUP_NAME, what: "all tables, metadata", rows: 0, bytes };
}

/** References that hold for every row of a file, and that the vocabulary can express. */
function foreignKeys(
  { target }: FilledTarget,
  rows: FilledTarget["mapped"]["rows"],
  { targets, asOf, isWhole }: GroupInput,
): readonly ForeignKey[] {
  if (!isWhole) return [];
  const names = columnNames(target.columns);
  return target.columns.flatMap((column, place): ForeignKey[] => {
    const parent = targets.find((one) => one.target.id === column.references);
    const key = parent?.target.columns.findIndex((one) => one.key) ?? -1;
    const keyColumn = parent?.target.columns[key];
    if (parent === undefined || keyColumn === undefined || parent.target.form.kind !== "csv") return [];
    const [table, ...more] = partsOf(parent.target, parent.mapped, asOf);
    // Every row must refer to a row of one table, by a value of the same kind.
    const isEmpty = rows.some(({ values }) => (values[place] ?? "") === "");
    if (
      table === undefined ||
      more.length > 0 ||
      isEmpty ||
      baseOf(column, target) !== baseOf(keyColumn, parent.target)
    )
      return [];
    const columnReference = columnNames(parent.target.columns)[key] ?? "";
    return [{ columnReference: names[place] ?? "", reference: { resource: tableUrl(table.name), columnReference } }];
  });
}

function baseOf(...of: Parameters<typeof datatypeOf>): string {
  return datatypeOf(...of).base;
}
