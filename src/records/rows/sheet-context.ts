import type { SiteStatements } from "../../facts/index.js";
import type { RawSheet } from "../../workbook/index.js";
import type { ImportProblem, ProblemCode } from "../cells/problems.js";
import type { Vocabulary } from "../words/vocabulary.js";
import type { ProblemLog } from "./problem-log.js";

/** What reading a sheet needs to know beside the sheet. */
export interface SheetContext {
  readonly file: string;
  readonly dateSystem: 1900 | 1904;
  readonly vocabulary: Vocabulary;
  readonly site: SiteStatements | null;
  readonly log: ProblemLog;
  /** Some table of the file has a column that names points or machines; then a table without one holds no points. */
  readonly pointsNamed: boolean;
}

/** Says a remark once per kind and column. */
export function note(
  context: SheetContext,
  raw: RawSheet,
  code: ProblemCode,
  cell: string | null,
  text: string,
  heading: string | null = null,
  fact: string | null = null,
): void {
  context.log.tally({ ...problemAt(context, raw, code, cell, text), heading, fact });
}

/** A problem at a cell of the sheet, with neither heading nor fact. */
export function problemAt(
  context: SheetContext,
  raw: RawSheet,
  code: ProblemCode,
  cell: string | null,
  text: string,
): ImportProblem {
  return { code, file: context.file, sheet: raw.name, cell, heading: null, fact: null, found: null, text };
}
