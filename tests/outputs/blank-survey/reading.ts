import ExcelJS from "exceljs";
import type { Stage } from "../../../src/base/index.js";
import { nodeInflating } from "../../../src/disk/index.js";
import { LANGUAGES, type Language } from "../../../src/facts/index.js";
import { type BlankSurvey, blankSurvey } from "../../../src/outputs/index.js";
import { type Survey, surveyReader } from "../../../src/records/index.js";
import { type RawCell, type RawRow, readWorkbook } from "../../../src/workbook/index.js";
import { shippedRulebook } from "../../tools/shipped.js";

/** Every kind of blank survey that there is. */
export const KINDS: readonly (readonly [Language, Stage])[] = LANGUAGES.flatMap((language) => [
  [language, "proposed"] as const,
  [language, "installed"] as const,
]);

const made = new Map<string, Promise<BlankSurvey>>();

/** A blank survey of the shipped rulebook; made once per test file. */
export function blank(language: Language, stage: Stage): Promise<BlankSurvey> {
  const key = `${language} ${stage}`;
  const known = made.get(key) ?? build(language, stage);
  made.set(key, known);
  return known;
}

/** A blank survey of the shipped rulebook, made anew. */
export async function build(language: Language, stage: Stage): Promise<BlankSurvey> {
  const program = { name: "spotface", version: "0.0.0" };
  return blankSurvey({ rulebook: await shippedRulebook(), language, stage, program });
}

/** Reads a workbook with our own reader and importer, with rows of texts put in below those of its first sheet. */
export async function readBack(bytes: Uint8Array, added: readonly (readonly string[])[] = []): Promise<Survey> {
  const { words } = await shippedRulebook();
  const reading = await readWorkbook(bytes, nodeInflating);
  if (!reading.ok) throw new Error(reading.error.text);
  const { workbook } = reading;
  const [first, ...others] = workbook.sheets;
  if (!first) throw new Error("no sheet");
  const last = first.rows.at(-1)?.row ?? 0;
  const rows = added.map((texts, i): RawRow => {
    const cells = cellsOf(last + 1 + i, texts);
    const at = (column: number) => cells.find((cell) => cell.column === column)?.value;
    const textAt = (column: number) => texts[column - 1] || undefined;
    return { row: last + 1 + i, hidden: false, cells, at, textAt };
  });
  const sheets = [{ ...first, rows: [...first.rows, ...rows] }, ...others];
  const survey = surveyReader(words, null).read({ ...workbook, sheets }, "survey.xlsx", "0");
  if (!survey.ok) throw new Error(survey.text);
  return survey.survey;
}

function cellsOf(row: number, texts: readonly string[]): readonly RawCell[] {
  const cells = texts.map((text, i): RawCell => ({ row, column: i + 1, value: { kind: "text", text } }));
  return cells.filter((_, i) => texts[i] !== "");
}

/** Fills rows with texts, without the way through a saved file. */
export function filledWithTexts(survey: BlankSurvey, rows: readonly ReadonlyMap<string, string>[]): Promise<Survey> {
  return readBack(
    survey.bytes,
    rows.map((row) => survey.columns.map(({ fact }) => row.get(fact) ?? "")),
  );
}

/** Opens a blank survey as a spreadsheet program would. */
export async function opened(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(bytes.slice().buffer);
  return workbook;
}

/** The sheet to fill in. */
export function surveySheet(workbook: ExcelJS.Workbook): ExcelJS.Worksheet {
  const [sheet] = workbook.worksheets;
  if (!sheet) throw new Error("no sheet");
  return sheet;
}

/** The row that holds the headings. */
export function headingRowOf(sheet: ExcelJS.Worksheet): number {
  const [view] = sheet.views;
  if (view?.state !== "frozen") throw new Error("no row is frozen");
  return view.ySplit ?? 0;
}

/** Fills rows below the headings: a value per fact and row, saves, and reads what was saved. */
export async function filledIn(
  survey: BlankSurvey,
  rows: readonly ReadonlyMap<string, string | number | Date>[],
): Promise<Survey> {
  const workbook = await opened(survey.bytes);
  const sheet = surveySheet(workbook);
  const first = headingRowOf(sheet) + 1;
  rows.forEach((row, i) => {
    survey.columns.forEach(({ fact }, column) => {
      const value = row.get(fact);
      if (value !== undefined) sheet.getCell(first + i, column + 1).value = value;
    });
  });
  return readBack(new Uint8Array(await workbook.xlsx.writeBuffer()));
}
