import { showText } from "../../base/index.js";
import { byId, type ExportedState, exportedState, type StateRow, type StateTarget } from "./exported-state.js";
import { digestOfState } from "./read-stored.js";
import type { ExportReceipt } from "./receipt.js";
import { columnsBefore, valuesUnder } from "./target-difference.js";

type ReceiptTarget = ExportReceipt["targets"][number];

/** The state after an export was accepted, or why it was not, in one sentence. */
export type Accepting =
  | { readonly ok: true; readonly state: ExportedState }
  | { readonly ok: false; readonly text: string };

/**
 * Moves the state on by one export. Rows that were refused stay as they were before, so that the next difference has
 * just these again.
 *
 * @param state - what was accepted so far; null: nothing yet
 * @param refused - by target: ids of rows that the other side did not take
 */
export function acceptExport(
  state: ExportedState | null,
  receipt: ExportReceipt,
  refused: ReadonlyMap<string, ReadonlySet<string>>,
): Accepting {
  const text = whyNot(state, receipt);
  if (text !== null) return { ok: false, text };
  const told = new Map(receipt.targets.map((target) => [target.target, target]));
  const before = new Map(state?.targets.map((target) => [target.target, target]));
  // A target that the mapping has lost keeps what was accepted of it.
  const names = [...told.keys(), ...[...before.keys()].filter((target) => !told.has(target))];
  const targets = names.map((name): StateTarget => {
    const [now, old] = [told.get(name), before.get(name)];
    if (now !== undefined) return moved(now, old, refused.get(name) ?? new Set());
    if (old !== undefined) return old;
    throw new Error(`target ${name} is in neither`);
  });
  const accepted = [...(state?.accepted ?? []), receipt.digest];
  return { ok: true, state: exportedState({ accepted, source: receipt.source, targets }) };
}

function whyNot(state: ExportedState | null, { digest, since }: ExportReceipt): string | null {
  const place = state?.accepted.indexOf(digest) ?? -1;
  if (state !== null && place >= 0) {
    return place === state.accepted.length - 1
      ? "it was accepted already; there is nothing to do"
      : "it was accepted already, and later ones after it; export again with --since and this state to see what is open";
  }
  if (state === null) {
    if (since === null) return null;
    return `it tells only what changed since a state (${showText(since.file, 400)}), and there is no state here; hand in that one`;
  }
  if (since === null) {
    return (
      "it is of an export of all rows, and this state has accepted exports already; " +
      "export again with --since and this state, or accept it into a new state file"
    );
  }
  if (since.digest === digestOfState(state)) return null;
  return (
    "it was made against another state than this one, or this one has moved on since; " +
    "export again with --since and this state, and accept that export"
  );
}

function moved(now: ReceiptTarget, old: StateTarget | undefined, refused: ReadonlySet<string>): StateTarget {
  const oldColumn = columnsBefore(now.columns, old);
  const rows = new Map<string, StateRow>();
  for (const row of old?.rows ?? []) rows.set(row.id, { id: row.id, values: [...valuesUnder(oldColumn, row)] });
  for (const { id, change, replaces, values } of now.rows) {
    if (refused.has(id)) continue;
    if (replaces !== null) rows.delete(replaces);
    if (change === "withdrawn") rows.delete(id);
    else rows.set(id, { id, values });
  }
  return {
    target: now.target,
    columns: now.columns,
    refused: now.rows
      .map(({ id }) => id)
      .filter((id) => refused.has(id))
      .sort(),
    rows: byId(rows.values()),
  };
}
