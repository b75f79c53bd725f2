import type { DataValidation } from "exceljs";
import type { Language } from "../../facts/index.js";
import { type BlankColumn, placesOf } from "./columns.js";
import { type BlankTexts, filled } from "./texts/blank-texts.js";

/** Most characters that the spreadsheet programs show. */
const LONGEST_TITLE = 32;
const LONGEST_MESSAGE = 255;
/** Serial numbers of 2000-01-01 and 2099-12-31. */
const FIRST_DAY = 36_526;
const LAST_DAY = 73_050;
const LONGEST_TEXT = 500;

/** What the advice on a field says; of numbers also what to do where it is not known. */
export function adviceOn({ field }: BlankColumn, texts: BlankTexts): string {
  return texts.advice[field.id] ?? texts.noAdvice;
}

/**
 * The check and the message of the cells of a column. It warns and never forbids: the importer also reads "16 ± 0.5",
 * "> 20 mm" and words that no drop-down list has.
 *
 * @param first - address of the first cell, to which the formula refers
 * @param list - range that holds the words of the column, or null
 */
export function inputCheck(
  column: BlankColumn,
  first: string,
  list: string | null,
  language: Language,
  texts: BlankTexts,
): DataValidation {
  const places = placesOf(column, language);
  const { checks } = texts;
  const number = column.field.kind === "quantity" || column.field.kind === "count";
  const advice = adviceOn(column, texts);
  const shown = {
    allowBlank: true,
    showInputMessage: true,
    promptTitle: cut(column.heading, LONGEST_TITLE),
    prompt: cut(number ? `${advice} ${texts.notKnown}` : advice, LONGEST_MESSAGE),
  };
  const warns = (error: string) => ({
    ...shown,
    showErrorMessage: true,
    errorStyle: "warning",
    errorTitle: cut(checks.title, LONGEST_TITLE),
    error: cut(filled(error, places), LONGEST_MESSAGE),
  });
  if (list !== null) return { type: "list", formulae: [list], ...warns(checks.words) };
  const { kind, plausible } = column.field;
  if (kind === "date") {
    return { type: "custom", formulae: [between(first, FIRST_DAY, LAST_DAY, false)], ...warns(checks.date) };
  }
  if (number && plausible) {
    const formula = between(first, plausible.lowest, plausible.highest, kind === "count");
    return { type: "custom", formulae: [formula], ...warns(checks.number) };
  }
  return { type: "textLength", operator: "lessThanOrEqual", formulae: [LONGEST_TEXT], ...shown };
}

function between(cell: string, lowest: number, highest: number, whole: boolean): string {
  const isWhole = whole ? `,INT(${cell})=${cell}` : "";
  return `OR(AND(ISNUMBER(${cell}),${cell}>=${lowest},${cell}<=${highest}${isWhole}),${cell}="-",${cell}="tbc")`;
}

function cut(text: string, most: number): string {
  return text.length <= most ? text : `${text.slice(0, most - 1)}…`;
}
