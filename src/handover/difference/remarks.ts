import { showText } from "../../base/index.js";
import type { DifferenceFound } from "./difference.js";
import type { SentRow, TargetDifference } from "./target-difference.js";

const MOST_NAMED = 3;

/**
 * What a person should know of a difference before it is loaded: what the other side cannot do rightly by itself.
 *
 * @returns each in one sentence that begins with the target
 */
export function differenceRemarks({
  targets,
  droppedTargets,
  surveysLeftOut,
}: Extract<DifferenceFound, { ok: true }>): readonly string[] {
  return [
    ...surveysLeftOut.map(
      (file) =>
        `${showText(file, 400)}: this survey went into the last accepted export and not into this one; its points are ` +
        "told as withdrawn. Hand it in, too, if they are still there",
    ),
    ...targets.flatMap((target) => remarksOn(target).map((text) => `${target.target}: ${text}`)),
    ...droppedTargets.map(
      (target) =>
        `${showText(target)}: the mapping has this target no more; what the other side has of it is not withdrawn`,
    ),
  ];
}

function remarksOn({ columns, rows, addedColumns, droppedColumns }: TargetDifference): readonly string[] {
  const keys = new Set(columns.flatMap(({ heading, key }) => (key ? [heading] : [])));
  const changed = rows.filter(({ change }) => change === "changed");
  const renamed = changed.flatMap((row) =>
    row.changed.flatMap(({ heading, old, new: now }) => (keys.has(heading) && old !== null ? [{ row, old, now }] : [])),
  );
  const replacing = rows.filter(({ replaces }) => replaces !== null);
  const remarks: string[] = [];
  if (addedColumns.length > 0) {
    remarks.push(`new in the mapping: ${quoted(addedColumns)}; rows in which nothing else changed are sent for it`);
  }
  if (droppedColumns.length > 0) {
    remarks.push(`no more in the mapping: ${quoted(droppedColumns)}; what the other side has there stays`);
  }
  if (renamed.length > 0) {
    const shown = renamed.map(({ old, now }) => `"${showText(old ?? "")}" is now "${showText(now ?? "")}"`);
    remarks.push(
      `${few(shown)}: a key changed. A system that finds rows by this key makes second ones: rename them there first`,
    );
  }
  if (replacing.length > 0) {
    remarks.push(
      `${few(namesOf(replacing, columns))}: the key stayed and the id behind it changed, so nothing is withdrawn`,
    );
  }
  return [...remarks, ...emptied(changed)];
}

/** A value that is left out does not take the old one away. */
function emptied(changed: readonly SentRow[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const { heading, new: now } of changed.flatMap((row) => row.changed)) {
    if (now === null) counts.set(heading, (counts.get(heading) ?? 0) + 1);
  }
  return [...counts].map(
    ([heading, count]) =>
      `"${showText(heading)}" became empty in ${count === 1 ? "a row" : `${count} rows`}. Where the other side leaves a ` +
      "field as it is for an empty cell, the old value stays: give the column whenEmpty with a word that clears",
  );
}

function namesOf(rows: readonly SentRow[], columns: TargetDifference["columns"]): readonly string[] {
  return rows.map(({ values }) =>
    columns.flatMap(({ key }, i) => (key ? [`"${showText(values[i] ?? "")}"`] : [])).join(", "),
  );
}

function few(shown: readonly string[]): string {
  const more = shown.length - MOST_NAMED;
  return shown.slice(0, MOST_NAMED).join("; ") + (more > 0 ? ` and ${more} more` : "");
}

function quoted(headings: readonly string[]): string {
  return headings.map((heading) => `"${showText(heading)}"`).join(", ");
}
