import { showText } from "../../base/index.js";
import type { MappedFile, MappedRow, WithdrawnWord } from "../mapped.js";
import type { ExportedState } from "./exported-state.js";
import { causesBetween, type ExportSource, surveysLeftOut } from "./source.js";
import { headingOf, type SentRow, type TargetDifference, targetDifference } from "./target-difference.js";

/** The rows that the other side does not have yet, or why they cannot be told; each problem in one sentence. */
export type DifferenceFound =
  | {
      readonly ok: true;
      readonly targets: readonly TargetDifference[];
      /** Targets of the state that are mapped no more; what was accepted of them stays as it is. */
      readonly droppedTargets: readonly string[];
      /** Where rows are withdrawn: surveys of the last accepted export that were not handed in again. */
      readonly surveysLeftOut: readonly string[];
    }
  | { readonly ok: false; readonly problems: readonly string[] };

const MOST_NAMED = 5;

/**
 * Compares what is mapped now with what was accepted, row by row under their ids, value by value under their headings.
 * The order of rows and columns does not count.
 *
 * @param files - the filled target files, whole
 * @param state - what was accepted; null: nothing yet, so that every row is new
 * @param source - what the files were made from
 * @param withdrawn - by target: how a row that is gone is written
 */
export function differenceSince(
  files: readonly MappedFile[],
  state: ExportedState | null,
  source: ExportSource,
  withdrawn: ReadonlyMap<string, WithdrawnWord>,
): DifferenceFound {
  const causes = state === null ? [] : causesBetween(state.source, source);
  const before = new Map(state?.targets.map((target) => [target.target, target]));
  const problems = files.flatMap((file) => notComparable(file, withdrawn.get(file.target)));
  const targets = files.map((file) =>
    targetDifference(file, before.get(file.target), causes, withdrawn.get(file.target)),
  );
  for (const { target, rows } of targets) {
    const gone = rows.filter(({ change }) => change === "withdrawn");
    if (gone.length > 0 && !withdrawn.has(target)) problems.push(noWord(target, gone));
  }
  if (problems.length > 0) return { ok: false, problems };
  const mapped = new Set(files.map(({ target }) => target));
  const withdraws = targets.some(({ rows }) => rows.some(({ change }) => change === "withdrawn"));
  return {
    ok: true,
    targets,
    droppedTargets: [...before.keys()].filter((target) => !mapped.has(target)),
    surveysLeftOut: state !== null && withdraws ? surveysLeftOut(state.source, source) : [],
  };
}

/** The files of a difference: the same columns, the rows that are sent. */
export function filesToSend(files: readonly MappedFile[], targets: readonly TargetDifference[]): readonly MappedFile[] {
  const points = new Map(
    files.map(({ target, rows }) => [target, new Map(rows.map((row) => [row.id, row.points]))] as const),
  );
  return targets.map(({ target, columns, rows }) => ({
    target,
    columns,
    rows: rows.map(({ id, values }): MappedRow => ({ id, points: points.get(target)?.get(id) ?? [], values })),
  }));
}

/** Why rows of a file cannot be told apart, or columns not. */
function notComparable({ target, columns, rows }: MappedFile, word: WithdrawnWord | undefined): string[] {
  const problems = repeated(columns.map(headingOf)).map(
    (heading) => `${target}: two columns are headed "${showText(heading)}"; give one another heading`,
  );
  for (const id of repeated(rows.map((row) => row.id))) {
    problems.push(`${target}: two rows have the id ${showText(id)}; a row is known by its id, so each needs its own`);
  }
  if (word !== undefined && !columns.some(({ heading }) => heading === word.column)) {
    problems.push(
      `${target}: withdrawn rows are to be marked in the column "${showText(word.column)}", which the file does not have`,
    );
  }
  return problems;
}

function repeated(words: readonly string[]): readonly string[] {
  const seen = new Set<string>();
  const twice = new Set<string>();
  for (const word of words) (seen.has(word) ? twice : seen).add(word);
  return [...twice];
}

function noWord(target: string, gone: readonly SentRow[]): string {
  const named = gone.slice(0, MOST_NAMED).map(({ id }) => showText(id));
  const more = gone.length > named.length ? ` and ${gone.length - named.length} more` : "";
  return (
    `${target}: ${gone.length === 1 ? "a row is" : `${gone.length} rows are`} gone since the last accepted export ` +
    `(${named.join(", ")}${more}), and the mapping does not say how that is written; ` +
    "add withdrawn with column and value to the target"
  );
}
