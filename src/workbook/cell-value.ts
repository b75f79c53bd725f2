import { dayExists, showText } from "../base/index.js";
import type { CellValue, NumberFormat } from "./cells.js";
import { countOf, textValue, undoEscapes } from "./rich-text.js";
import type { SharedTexts } from "./shared-texts.js";
import { grouped, refuse } from "./unreadable.js";

const DECIMAL = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d{1,5})?$/;
const LONGEST_NUMBER = 1_100;
const DAY_AND_TIME = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}:\d{2}(?::\d{2}(?:\.\d{1,9})?)?)(?:Z|[+-]\d{2}:\d{2})?)?$/;
const TIME = /^\d{2}:\d{2}(?::\d{2}(?:\.\d{1,9})?)?Z?$/;

/** A cell as the sheet part writes it, before its meaning is looked up. */
export interface WrittenCell {
  /** Letter of its type; "n" where none is written. */
  readonly type: string;
  readonly style: string | undefined;
  readonly hasFormula: boolean;
  /** Content of its value element; null where there is none. */
  readonly content: string | null;
  /** Text written in the cell itself; null where there is none. */
  readonly inlineText: string | null;
}

/** What cells refer to by number. */
export interface CellTables {
  readonly sharedTexts: SharedTexts;
  /** Null where the workbook has no styles part; then every number is plain. */
  readonly formats: readonly NumberFormat[] | null;
  readonly mostCharacters: number;
}

const TRUE: CellValue = { kind: "boolean", boolean: true };
const FALSE: CellValue = { kind: "boolean", boolean: false };
const NO_RESULT: CellValue = { kind: "no-result" };

/**
 * The value of a cell; null for a cell that holds nothing or blanks only.
 *
 * @param place - the cell as messages name it
 * @throws Unreadable if the cell refers to a text or style that the workbook does not have
 */
export function cellValue(cell: WrittenCell, tables: CellTables, place: () => string): CellValue | null {
  const format = formatOf(cell.style, tables, place);
  const { content } = cell;
  if (cell.inlineText !== null && content === null) {
    return textValue(undoEscapes(cell.inlineText), tables.mostCharacters);
  }
  // An empty text is a result ("" of a formula); an empty number is none.
  if (content === null || (content === "" && cell.type !== "str")) return cell.hasFormula ? NO_RESULT : null;
  switch (cell.type) {
    case "n":
      return numberValue(content, format);
    case "s":
      return sharedText(content, tables, place);
    case "str":
    case "inlineStr":
      return textValue(undoEscapes(content), tables.mostCharacters);
    case "b":
      return booleanValue(content.trim().toLowerCase());
    case "e":
      return content.length > tables.mostCharacters ? textValue(content, 0) : { kind: "error", text: content.trim() };
    case "d":
      return dateValue(content.trim());
    default:
      return unusable(`is of a kind that is not known ("${showText(cell.type)}")`);
  }
}

function formatOf(style: string | undefined, tables: CellTables, place: () => string): NumberFormat {
  if (style === undefined || tables.formats === null) return "general";
  const format = tables.formats[wholeNumber(style)];
  if (format !== undefined || (tables.formats.length === 0 && style === "0")) return format ?? "general";
  return refuse(
    "style-out-of-range",
    `${place()} refers to cell style ${showText(style)}, but the workbook has ${grouped(tables.formats.length)}; open it in a spreadsheet program and save it again`,
  );
}

function sharedText(content: string, tables: CellTables, place: () => string): CellValue | null {
  const value = tables.sharedTexts.at(wholeNumber(content.trim()));
  if (value !== undefined) return value;
  return refuse(
    "text-out-of-range",
    `${place()} refers to shared text ${showText(content)}, but the workbook has ${grouped(tables.sharedTexts.length)}; open it in a spreadsheet program and save it again`,
  );
}

/** The index that the text spells, or -1. */
function wholeNumber(text: string): number {
  return /^\d{1,10}$/.test(text) ? Number(text) : -1;
}

function numberValue(content: string, format: NumberFormat): CellValue | null {
  const text = content.trim();
  if (text === "") return null;
  if (text.length > LONGEST_NUMBER) return unusable(`holds a number of ${countOf(text)} characters`);
  const number = DECIMAL.test(text) ? Number(text) : Number.NaN;
  if (Number.isFinite(number)) return { kind: "number", number, format };
  return unusable(`is marked as a number but holds "${showText(text)}"`);
}

function booleanValue(content: string): CellValue {
  if (content === "1" || content === "true") return TRUE;
  if (content === "0" || content === "false") return FALSE;
  return unusable(`is marked as true or false but holds "${showText(content)}"`);
}

function dateValue(content: string): CellValue {
  const parts = content.length < 50 ? DAY_AND_TIME.exec(content) : null;
  const isDay = parts !== null && dayExists(Number(parts[1]), Number(parts[2]), Number(parts[3]));
  if (isDay || (content.length < 50 && TIME.test(content))) return { kind: "date", iso: content };
  return unusable(`is marked as a date but holds "${showText(content)}"`);
}

function unusable(why: string): CellValue {
  return { kind: "unusable", why };
}
