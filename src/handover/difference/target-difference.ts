import type { MappedColumn, MappedFile, MappedRow, WithdrawnWord } from "../mapped.js";
import { byId, type StateRow, type StateTarget } from "./exported-state.js";
import type { Cause } from "./source.js";

type Values = readonly (string | null)[];

export const CHANGES = ["new", "changed", "withdrawn"] as const;

/** A value that is another one than the other side has. */
export interface ChangedValue {
  readonly heading: string;
  readonly old: string | null;
  readonly new: string | null;
}

/** A row that is sent. */
export interface SentRow {
  readonly id: string;
  readonly change: (typeof CHANGES)[number];
  /** Id of a row that is gone and whose key this row has now; it is one record on the other side. Else null. */
  readonly replaces: string | null;
  /** By column, as written; of a withdrawn row the last accepted ones, with the word for it. */
  readonly values: readonly (string | null)[];
  /** The values that changed; none where the row is new. */
  readonly changed: readonly ChangedValue[];
  /** What may be the cause; where it is one, that is the cause. None where the row is new or nothing else differs. */
  readonly because: readonly Cause[];
}

/** What is to be told of one target file. */
export interface TargetDifference {
  readonly target: string;
  readonly columns: readonly MappedColumn[];
  /** Changed and new rows in the order in which they are mapped, then the withdrawn ones by id. */
  readonly rows: readonly SentRow[];
  readonly unchanged: number;
  /** Columns that the other side was not told of before, and columns that it is told nothing of any more. */
  readonly addedColumns: readonly string[];
  readonly droppedColumns: readonly string[];
}

/** Compares one target file, whole, with what was accepted of it. */
export function targetDifference(
  { target, columns, rows }: MappedFile,
  before: StateTarget | undefined,
  causes: readonly Cause[],
  word: WithdrawnWord | undefined,
): TargetDifference {
  const oldColumn = columnsBefore(columns, before);
  const added = new Set(before === undefined ? [] : columns.filter((_, i) => oldColumn[i] === -1).map(headingOf));
  const refused = new Set(before?.refused);
  const again = (id: string): readonly Cause[] => (refused.has(id) ? ["refused before"] : []);
  const old = accepted(columns, oldColumn, before, rows);
  const sent: SentRow[] = [];
  for (const { id, values } of rows) {
    const { had, replaces } = old.of(id, values);
    if (had === null) {
      sent.push({ id, change: "new", replaces, values, changed: [], because: again(id) });
      continue;
    }
    const changed = changedValues(columns, had, values);
    if (changed.length === 0) continue;
    // A column that was not there before is the cause by itself, whatever else went on.
    const reasons = changed.every(({ heading }) => added.has(heading)) ? (["mapping"] as const) : causes;
    sent.push({ id, change: "changed", replaces, values, changed, because: [...again(id), ...reasons] });
  }
  const gone = old.gone().map(({ id, values: last }): SentRow => {
    const values = columns.map(({ heading }, i) => (heading === word?.column ? word.value : (last[i] ?? null)));
    const changed = changedValues(columns, last, values);
    return { id, change: "withdrawn", replaces: null, values, changed, because: [...again(id), ...causes] };
  });
  const headings = new Set(columns.map(headingOf));
  return {
    target,
    columns,
    rows: [...sent, ...gone],
    unchanged: rows.length - sent.length,
    addedColumns: [...added],
    droppedColumns: (before?.columns ?? []).map(headingOf).filter((heading) => !headings.has(heading)),
  };
}

/**
 * What was accepted, found by id, or by key where the row of that id is gone: a record of the other side that now belongs
 * to a row of another id must not be withdrawn.
 */
function accepted(
  columns: readonly MappedColumn[],
  oldColumn: readonly number[],
  before: StateTarget | undefined,
  rows: readonly MappedRow[],
): {
  readonly of: (id: string, values: Values) => { readonly had: Values | null; readonly replaces: string | null };
  readonly gone: () => readonly { readonly id: string; readonly values: Values }[];
} {
  const keyOf = keyIn(columns);
  const mapped = new Set(rows.map(({ id }) => id));
  const byIdOf = new Map<string, Values>();
  const gone = new Map<string, Values>();
  const goneByKey = new Map<string, string>();
  for (const row of before?.rows ?? []) {
    const values = valuesUnder(oldColumn, row);
    (mapped.has(row.id) ? byIdOf : gone).set(row.id, values);
    const key = keyOf(values);
    if (key !== null && !mapped.has(row.id)) goneByKey.set(key, row.id);
  }
  return {
    of: (id, values) => {
      const key = keyOf(values);
      const replaces = (key === null ? undefined : goneByKey.get(key)) ?? null;
      const had = byIdOf.get(id) ?? (replaces === null ? undefined : gone.get(replaces)) ?? null;
      if (replaces !== null) gone.delete(replaces);
      return { had, replaces };
    },
    gone: () => byId([...gone].map(([id, values]) => ({ id, values }))),
  };
}

/** The key of a row as one text; null where there is no key column, or one is empty. */
function keyIn(columns: readonly MappedColumn[]): (values: Values) => string | null {
  const places = columns.flatMap(({ key }, i) => (key ? [i] : []));
  return (values) => {
    const key = places.map((i) => values[i] ?? null);
    return key.length === 0 || key.includes(null) ? null : JSON.stringify(key);
  };
}

export function headingOf({ heading }: { readonly heading: string }): string {
  return heading;
}

/** For each column its place in the state, -1 where it was not there. */
export function columnsBefore(columns: readonly MappedColumn[], before: StateTarget | undefined): readonly number[] {
  return columns.map(({ heading }) => before?.columns.findIndex((column) => column.heading === heading) ?? -1);
}

/** The values of a stored row under the columns of today; what was never written is empty. */
export function valuesUnder(oldColumn: readonly number[], { values }: StateRow): readonly (string | null)[] {
  return oldColumn.map((at) => values[at] ?? null);
}

function changedValues(
  columns: readonly MappedColumn[],
  old: readonly (string | null)[],
  now: readonly (string | null)[],
): readonly ChangedValue[] {
  return columns.flatMap(({ heading }, i) => {
    const [before, after] = [old[i] ?? null, now[i] ?? null];
    return before === after ? [] : [{ heading, old: before, new: after }];
  });
}
