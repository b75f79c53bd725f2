import type { Workbook } from "exceljs";
import { indexRules } from "../findings/rule-index.js";
import { fixedPackage } from "./fixed-package.js";
import { GROUPS, GROUPS_WIDTHS, groupRows, hasGroupRows } from "./group-rows.js";
import { freezeRows, layOutPages, repeatRows } from "./pages.js";
import { resultColumns } from "./result-columns.js";
import { nameOfFile, sheetNamer } from "./sheet-names.js";
import { gatherResults, ownVerdicts, type ScreenedInput, sheetKey } from "./sheet-results.js";
import { styleBook } from "./styles.js";
import { REMARKS_WIDTHS, RULES_WIDTHS, remarksRows, rulesRows, SUMMARY_WIDTHS, summaryRows } from "./summary-rows.js";
import { type SheetSource, writeSurveySheet } from "./survey-sheet.js";
import { type TextRow, writeTextSheet } from "./text-sheet.js";

/** More comments than this make a workbook slow to open. */
const MOST_COMMENTS = 5_000;

/**
 * The surveys with the results beside them, as a new workbook: every sheet at its own addresses, our columns to the
 * right, offending cells framed and explained, then the sheets "Summary", "Rules applied", "Groups" and "Remarks". No formula
 * is ever written, outcomes are told by shape and word, and the same input gives the same bytes.
 *
 * This is what a survey gets that cannot be edited in place, a table of text for instance; see `screenedSurvey`.
 *
 * @param input.remarks - what the sheet "Remarks" says of this workbook
 * @returns the bytes of an .xlsx file, or of an .xlsm file without macros if that is asked for
 */
export async function screenedWorkbook(input: ScreenedInput): Promise<Uint8Array> {
  const { head } = input;
  // Loaded on demand: the library is large, and most runs write no workbook.
  const { default: library } = await import("exceljs");
  const workbook = new library.Workbook();
  const program = `${head.program.name} ${head.program.version}`;
  const day = new Date(`${head.asOf}T00:00:00Z`);
  Object.assign(workbook, { creator: program, lastModifiedBy: program, created: day, modified: day });
  const dateSystem = input.surveys.every((one) => one.workbook.dateSystem === 1904) ? 1904 : 1900;
  workbook.properties.date1904 = input.surveys.length > 0 && dateSystem === 1904;
  fillWorkbook(workbook, input, workbook.properties.date1904 ? 1904 : 1900);
  // Stored, not deflated: the parts are packed anew at once.
  const written = await workbook.xlsx.writeBuffer({ zip: { compression: "STORE" } });
  return fixedPackage(new Uint8Array(written), program, input.ending ?? ".xlsx");
}

function fillWorkbook(workbook: Workbook, input: ScreenedInput, dateSystem: 1900 | 1904): void {
  const { head } = input;
  const rules = indexRules(head);
  const columns = resultColumns(head);
  const styles = styleBook();
  const nameSheet = sheetNamer();
  const results = gatherResults(input, rules);
  const remarks: string[] = [...(input.remarks ?? [])];
  let comments = 0;
  for (const { file, workbook: raw, survey } of input.surveys) {
    for (const sheet of raw.sheets) {
      const reading = survey.sheets.find((one) => one.sheet === sheet.name);
      const found = results.get(sheetKey(file, sheet.name));
      const source: SheetSource = {
        raw: sheet,
        columns,
        dateSystem: raw.dateSystem,
        writtenDateSystem: dateSystem,
        headingRows: reading?.used ? reading.headingRows : [],
        results: found?.rows ?? new Map(),
        marks: found?.marks ?? new Map(),
      };
      const written = workbook.addWorksheet(nameSheet(sheet.name ?? nameOfFile(file)));
      remarks.push(...writeSurveySheet(written, source, rules, styles, () => ++comments <= MOST_COMMENTS));
    }
  }
  if (comments > MOST_COMMENTS) {
    remarks.push(`${comments - MOST_COMMENTS} framed cells have no comment, so that the file opens quickly`);
  }
  const shown = head.surveys.filter((survey) => input.surveys.some(({ file }) => file === survey.file));
  const own = (name: string, widths: readonly number[], rows: readonly TextRow[], headed: boolean) => {
    const sheet = workbook.addWorksheet(nameSheet(name));
    writeTextSheet(sheet, widths, rows, styles);
    layOutPages(sheet);
    if (!headed) return;
    freezeRows(sheet, 1);
    repeatRows(sheet, 1, 1);
  };
  own("Summary", SUMMARY_WIDTHS, summaryRows(head, input.summary, ownVerdicts(head, input.surveys, results)), false);
  own("Rules applied", RULES_WIDTHS, rulesRows(head), true);
  const files = new Set(input.surveys.map(({ file }) => file));
  if (hasGroupRows(head, files, rules)) own(GROUPS, GROUPS_WIDTHS, [...groupRows(head, files, rules)], true);
  own("Remarks", REMARKS_WIDTHS, remarksRows({ surveys: shown }, remarks), false);
}
