import { extname } from "node:path";
import { nodeInflating, type OutputBatch } from "../disk/index.js";
import { type ScreenedSurvey, screenedSurvey, screenedWorkbook, type WrittenFile } from "../outputs/index.js";
import type { Screening } from "../screening/index.js";
import type { OpenedSurvey } from "./open-surveys.js";
import type { WorkbookTarget } from "./targets.js";

type KeptSurvey = ScreenedSurvey & { readonly bytes: Uint8Array };

/**
 * Writes the screened workbooks of a run: each survey edited in place where that can be done, else a new workbook,
 * with the reason.
 *
 * @returns what was written; complete only if the batch says so in the end
 */
export async function writeWorkbooks(
  batch: OutputBatch,
  targets: readonly WorkbookTarget[],
  screening: Screening,
  surveys: readonly OpenedSurvey[],
): Promise<readonly WrittenFile[]> {
  const kept = surveys.flatMap(({ survey, workbook, bytes }): readonly KeptSurvey[] =>
    workbook && bytes ? [{ file: survey.file, survey, workbook, bytes }] : [],
  );
  const written: WrittenFile[] = [];
  for (const target of targets) {
    const own = kept.filter(({ file }) => target.survey === null || file === target.survey);
    const note = await writeWorkbook(batch, target, screening, own);
    written.push({ what: "screened workbook", file: target.path, note });
  }
  return written;
}

/** Writes one; gives what is to be said of it. */
async function writeWorkbook(
  batch: OutputBatch,
  { path, survey: only }: WorkbookTarget,
  screening: Screening,
  surveys: readonly KeptSurvey[],
): Promise<string | null> {
  const { head } = screening;
  const ending = extname(path).toLowerCase() === ".xlsm" ? ".xlsm" : ".xlsx";
  const [survey] = surveys;
  let reason = "it holds several surveys; give them one by one, or a folder with --out, to get each survey itself";
  if (only !== null && survey) {
    const { bytes } = survey;
    const editing = await screenedSurvey({ screening, survey, bytes }, nodeInflating);
    if (editing.ok && editing.ending === ending) {
      for await (const piece of editing.pieces) if (!(await batch.write(path, piece))) return null;
      return null;
    }
    reason = editing.ok
      ? `the survey needs a file name that ends in ${editing.ending}, and this one does not`
      : `the survey itself could not be edited: ${editing.reason.text}`;
  }
  const note = `a new workbook, without what is not cells: ${reason}`;
  const files = new Set(surveys.map(({ file }) => file));
  const points = [...screening.points()].filter(({ file }) => files.has(file));
  const summary = screening.summary();
  const bytes = await screenedWorkbook({ head, points, summary, surveys, remarks: [note], ending });
  await batch.write(path, bytes);
  return note;
}
