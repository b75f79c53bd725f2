import { sha256OfData } from "../../../src/base/index.js";
import {
  acceptExport,
  differenceSince,
  digestOfState,
  type ExportedState,
  type ExportReceipt,
  type ExportSource,
  exportReceipt,
  type TargetDifference,
} from "../../../src/handover/difference/index.js";
import type { MappedColumn, MappedFile, WithdrawnWord } from "../../../src/handover/index.js";

/** Columns of a made-up target; the first names the row. */
export const COLUMNS: readonly MappedColumn[] = [
  { heading: "Key", key: true },
  { heading: "Status", key: false },
  { heading: "Text", key: false },
];

export const WITHDRAWN: ReadonlyMap<string, WithdrawnWord> = new Map([
  ["points", { column: "Status", value: "withdrawn" }],
]);

/** What made-up exports are made from, but for what a test says otherwise. */
export function sourceOf(over: Partial<ExportSource> = {}): ExportSource {
  return {
    program: { name: "spotface", version: "0.1.0" },
    asOf: "2026-11-26",
    stage: "proposed",
    set: "core",
    site: null,
    options: [],
    rulebook: { name: "book", version: "1", digest: sha256OfData("book 1"), folder: null, over: [] },
    files: [
      { role: "survey", file: "survey.xlsx", digest: sha256OfData("survey 1") },
      { role: "mapping", file: "mapping.yaml", digest: sha256OfData("mapping 1") },
    ],
    ...over,
  };
}

/** The same source with another survey. */
export function surveyOf(text: string): ExportSource {
  const { files } = sourceOf();
  return sourceOf({
    files: files.map((file) => (file.role === "survey" ? { ...file, digest: sha256OfData(text) } : file)),
  });
}

/** A target file, filled: each row its id and its values. */
export function fileOf(
  rows: readonly (readonly [id: string, ...values: (string | null)[]])[],
  columns: readonly MappedColumn[] = COLUMNS,
  target = "points",
): MappedFile {
  return { target, columns, rows: rows.map(([id, ...values]) => ({ id, points: [id], values })) };
}

/** The difference, or the failure of the test. */
export function differences(
  files: readonly MappedFile[],
  state: ExportedState | null,
  source: ExportSource = sourceOf(),
): readonly TargetDifference[] {
  const found = differenceSince(files, state, source, WITHDRAWN);
  if (!found.ok) throw new Error(found.problems.join("\n"));
  return found.targets;
}

/** The receipt of an export of these files. */
export function receiptOf(
  files: readonly MappedFile[],
  state: ExportedState | null,
  source: ExportSource = sourceOf(),
): ExportReceipt {
  const since = state === null ? null : { file: "state.json", digest: digestOfState(state) };
  return exportReceipt(differences(files, state, source), since, source, [
    { file: "points.csv", digest: sha256OfData(files) },
  ]);
}

/** The state after these files were exported and accepted but for the refused rows. */
export function acceptedState(
  files: readonly MappedFile[],
  before: ExportedState | null = null,
  refused: readonly string[] = [],
  source: ExportSource = sourceOf(),
): ExportedState {
  const byTarget = new Map(files.map(({ target }) => [target, new Set(refused)]));
  const moved = acceptExport(before, receiptOf(files, before, source), byTarget);
  if (!moved.ok) throw new Error(moved.text);
  return moved.state;
}
