import type { Workbook } from "exceljs";
import type { Stage } from "../../base/index.js";
import { type FactDefinition, factName, type Language } from "../../facts/index.js";
import type { Rulebook } from "../../rulebook/index.js";
import { fixedPackage } from "../workbook/fixed-package.js";
import { styleBook } from "../workbook/styles.js";
import { blankColumns } from "./columns.js";
import { writeLegend } from "./legend-sheet.js";
import { writeLists } from "./lists-sheet.js";
import { writeSurvey } from "./survey-sheet.js";
import { BLANK_TEXTS } from "./texts/by-language.js";

/** What a blank survey is made for. */
export interface BlankSurveyInput {
  /** Its rules say which columns there are, its word lists what stands in them. */
  readonly rulebook: Pick<Rulebook, "rules" | "conditions" | "models" | "groups" | "baselineModel" | "words">;
  readonly language: Language;
  readonly stage: Stage;
  readonly program: { readonly name: string; readonly version: string };
}

/** A workbook to be filled in on site. */
export interface BlankSurvey {
  /** An .xlsx file. */
  readonly bytes: Uint8Array;
  readonly columns: readonly { readonly fact: string; readonly heading: string; readonly words: readonly string[] }[];
  /** Names of needed fields for which the word lists have no heading that is read back as just that field. */
  readonly leftOut: readonly string[];
}

/** The same for everyone, so that the same input gives the same bytes. */
const FIXED_TIME = new Date("2000-01-01T00:00:00Z");

/**
 * A blank survey: a sheet to fill in, with drop-down lists, checks and advice on every cell, a legend with an
 * example and the cautions, and a hidden sheet with the words of the lists. Headings and words come from the word
 * lists of the rulebook and were read back by the importer.
 */
export async function blankSurvey(input: BlankSurveyInput): Promise<BlankSurvey> {
  const { rulebook, language, stage } = input;
  const texts = BLANK_TEXTS[language];
  const { columns, leftOut } = blankColumns(rulebook, language, stage, texts);
  // Loaded on demand: the library is large.
  const { default: library } = await import("exceljs");
  const workbook: Workbook = new library.Workbook();
  const program = `${input.program.name} ${input.program.version}`;
  Object.assign(workbook, { creator: program, lastModifiedBy: program, created: FIXED_TIME, modified: FIXED_TIME });
  const styles = styleBook();
  const survey = workbook.addWorksheet(texts.sheets.survey);
  const legend = workbook.addWorksheet(texts.sheets.legend);
  const lists = workbook.addWorksheet(texts.sheets.lists, { state: "hidden" });
  const ranges = writeLists(lists, columns, texts.listsTitle);
  writeSurvey(survey, { columns, lists: ranges, language, stage, texts }, styles);
  writeLegend(legend, columns, language, texts, styles);
  for (const sheet of [survey, legend]) {
    sheet.headerFooter.oddFooter = `&L&8${texts.footer}&C&8&A&R&8&P / &N`;
  }
  const written = await workbook.xlsx.writeBuffer({ zip: { compression: "STORE" } });
  return {
    bytes: fixedPackage(new Uint8Array(written), program),
    columns: columns.map(({ field, heading, words }) => ({ fact: field.id, heading, words: [...words.values()] })),
    leftOut: leftOut.map(({ id }: FactDefinition) => factName(id)),
  };
}
