import { basename, join } from "node:path";
import type { DiskProblem, OutputBatch } from "../disk/index.js";
import {
  findingsCsv,
  jsonDocument,
  ndjsonDocument,
  pointsCsv,
  screenedWorkbook,
  type WrittenFile,
} from "../outputs/index.js";
import type { Screening } from "../screening/index.js";
import type { OpenedSurvey } from "./open-surveys.js";
import type { ScreenOptions } from "./screen-options.js";
import type { Terminal } from "./terminal.js";

/** The files that a run is asked to write, each null where it is not. */
export interface Targets {
  readonly workbook: string | null;
  readonly csv: string | null;
  readonly findings: string | null;
  readonly result: string | null;
}

/** The targets of a run: those named one by one, and with a folder all of them under the survey's name. */
export function targetsOf(options: ScreenOptions, files: readonly string[]): Targets {
  const [first = "survey"] = files;
  const name = files.length === 1 ? basename(first).replace(/\.[^.]+$/, "") : "surveys";
  const inFolder = (ending: string): string | null =>
    options.out === undefined ? null : join(options.out, `${name}.${ending}`);
  return {
    workbook: options.workbook ?? inFolder("screened.xlsx"),
    csv: options.csv ?? inFolder("points.csv"),
    findings: options.findings ?? inFolder("findings.csv"),
    result: options.result ?? inFolder("result.json"),
  };
}

/** The paths of the files that are to be written. */
export function targetPaths(targets: Targets): readonly string[] {
  return [targets.workbook, targets.csv, targets.findings, targets.result].filter((path) => path !== null);
}

/** Writes the result to standard output as it is made. */
export async function printResult(screening: Screening, form: "json" | "ndjson", terminal: Terminal): Promise<void> {
  const pieces = form === "json" ? jsonDocument(screening) : ndjsonDocument(screening);
  let buffer = "";
  for (const piece of pieces) {
    buffer += piece;
    if (buffer.length < 65_536) continue;
    await terminal.out(buffer);
    buffer = "";
  }
  await terminal.out(buffer);
}

/**
 * Writes all files of a run together: all of them or none. The points are judged anew for each file: remembering
 * what is alike makes that cheap, where a hundred thousand points with their findings would fill the memory.
 */
export async function writeFiles(
  batch: OutputBatch,
  targets: Targets,
  screening: Screening,
  surveys: readonly OpenedSurvey[],
): Promise<{ ok: true; written: readonly WrittenFile[] } | { ok: false; error: DiskProblem }> {
  const { head } = screening;
  const written: WrittenFile[] = [];
  const stream = async (what: string, file: string | null, pieces: () => Iterable<string>): Promise<void> => {
    if (file === null) return;
    let buffer = "";
    for (const piece of pieces()) {
      buffer += piece;
      if (buffer.length < 1_000_000) continue;
      if (!(await batch.write(file, buffer))) return;
      buffer = "";
    }
    await batch.write(file, buffer);
    written.push({ what, file });
  };
  if (targets.workbook !== null) {
    const kept = surveys.flatMap(({ survey, workbook }) => (workbook ? [{ file: survey.file, survey, workbook }] : []));
    const points = [...screening.points()];
    const bytes = await screenedWorkbook({ head, points, summary: screening.summary(), surveys: kept });
    await batch.write(targets.workbook, bytes);
    written.push({ what: "screened workbook", file: targets.workbook });
  }
  await stream("table of points", targets.csv, () => pointsCsv(head, screening.points()));
  await stream("table of findings", targets.findings, () => findingsCsv(head, screening.points()));
  await stream("result document", targets.result, () => jsonDocument(screening));
  const done = await batch.finish();
  return done.ok ? { ok: true, written } : { ok: false, error: done.error };
}
