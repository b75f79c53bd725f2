import { basename, extname, join } from "node:path";
import { shownFile } from "./open-surveys.js";
import type { ScreenOptions } from "./screen-options.js";

/** A screened workbook that is to be written. */
export interface WorkbookTarget {
  readonly path: string;
  /** The survey that it is of, as results name it; null for one that holds all surveys of the run. */
  readonly survey: string | null;
}

/** The files that a run is asked to write, each null where it is not. */
export interface Targets {
  readonly workbooks: readonly WorkbookTarget[];
  readonly csv: string | null;
  readonly findings: string | null;
  readonly result: string | null;
  readonly report: string | null;
}

/**
 * The targets of a run: those named one by one, and with a folder all of them under the survey's name. Each survey
 * has a screened workbook of its own there; a file named for the workbook holds all surveys of the run.
 */
export function targetsOf(options: ScreenOptions, files: readonly string[]): Targets {
  const [first = "survey"] = files;
  const name = files.length === 1 ? stemOf(first) : "surveys";
  const inFolder = (ending: string): string | null =>
    options.out === undefined ? null : join(options.out, `${name}.${ending}`);
  return {
    workbooks: workbookTargets(options, files),
    csv: options.csv ?? inFolder("points.csv"),
    findings: options.findings ?? inFolder("findings.csv"),
    result: options.result ?? inFolder("result.json"),
    report: options.report ?? inFolder("report.html"),
  };
}

function workbookTargets({ workbook, out }: ScreenOptions, files: readonly string[]): readonly WorkbookTarget[] {
  const [first] = files;
  if (workbook !== undefined) {
    return [{ path: workbook, survey: files.length === 1 && first !== undefined ? shownFile(first) : null }];
  }
  if (out === undefined) return [];
  const taken = new Set<string>();
  return files.map((file) => {
    const stem = freeStem(stemOf(file), taken);
    // A workbook with macros stays one, and opens under this ending alone.
    const ending = extname(file).toLowerCase() === ".xlsm" ? ".xlsm" : ".xlsx";
    return { path: join(out, `${stem}.screened${ending}`), survey: shownFile(file) };
  });
}

/** Surveys of one name from several folders are told apart by a number, in the order in which they are given. */
function freeStem(stem: string, taken: Set<string>): string {
  let free = stem;
  for (let number = 2; taken.has(free.toLowerCase()); number++) free = `${stem}-${number}`;
  taken.add(free.toLowerCase());
  return free;
}

function stemOf(file: string): string {
  return basename(file).replace(/\.[^.]+$/, "");
}

/** The targets without the workbooks of surveys that could not be read. */
export function targetsFor(targets: Targets, surveys: readonly string[]): Targets {
  const read = new Set(surveys);
  return { ...targets, workbooks: targets.workbooks.filter(({ survey }) => survey === null || read.has(survey)) };
}

/** The paths of the files that are to be written. */
export function targetPaths({ workbooks, csv, findings, result, report }: Targets): readonly string[] {
  return [...workbooks.map(({ path }) => path), csv, findings, result, report].filter((path) => path !== null);
}
