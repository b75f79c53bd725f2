import { foldText, unitOf } from "../../base/index.js";
import type { Locale } from "../../facts/index.js";
import type { CellValue } from "../../workbook/index.js";
import { noChoice, readPhrase, readYesNo } from "./cell-choice.js";
import { readDateText, readDayNumber } from "./cell-date.js";
import { readNumberText } from "./cell-number.js";
import { type CellReading, trouble } from "./cell-reading.js";
import { readText, THREAD_FIELDS } from "./cell-text.js";
import { isConvertedNumber, isConvertedText, looksConverted, lostZeros } from "./converted.js";
import { halfLastPlace, type NumberContext } from "./number-parts.js";
import { numberRead } from "./number-result.js";

/** What surrounds a cell: its field, its heading's unit, the way numbers are written, the words. */
export interface CellContext extends NumberContext {
  readonly locale: Locale | null;
  readonly dateSystem: 1900 | 1904;
  /** Digits of the column's codes, where they are written with leading zeros. */
  readonly codeWidth?: number | undefined;
}

/** Kinds of field in which no date is ever meant. */
const CODES_AND_NUMBERS: ReadonlySet<string> = new Set(["identifier", "designation", "quantity", "count"]);

const SPREADSHEET_ERROR = /^#(?:N\/A|NV|N\/D|#+|[\p{L}¡¿/0-9]{2,12}[!?])$/iu;

/** Whether a cell holds nothing, or only blanks. */
export function isEmptyCell(value: CellValue | undefined): boolean {
  return value === undefined || (value.kind === "text" && !/\S/.test(value.text));
}

/**
 * Reads one cell as its field.
 *
 * @returns the value in the unit of the field, or what is wrong; never a guess
 */
export function readCell(value: CellValue | undefined, context: CellContext): CellReading {
  const whole = readWholeCell(value, context);
  if (whole) return whole;
  const text = value?.kind === "text" ? value.text : "";
  const { field, vocabulary } = context;
  switch (field.kind) {
    case "quantity":
    case "count":
      return readNumberText(text, context);
    case "choice":
      return readPhrase(text, [field], vocabulary).byFact.get(field.id) ?? noChoice(text, field, vocabulary);
    case "yes-no":
      return readYesNo(text, field, vocabulary);
    case "date":
      // In a text file a day number is digits like any other.
      return /^\s*\d{5}\s*$/.test(text)
        ? readDayNumber(Number(text), context.dateSystem, false)
        : readDateText(text, context.locale);
    default:
      return readText(text, field);
  }
}

/**
 * Reads what needs no look at the words of a text: empty cells, words for missing, spreadsheet errors, and
 * every cell that holds a number, a date or yes and no.
 *
 * @returns the reading, or null if the text is still to be read
 */
export function readWholeCell(value: CellValue | undefined, context: CellContext): CellReading | null {
  if (value === undefined || isEmptyCell(value)) return missing();
  switch (value.kind) {
    case "text":
      return readPlainText(value.text, context);
    case "number":
      return readNumberCell(value, context);
    case "boolean":
      return readTruthCell(value.boolean, context);
    case "date":
      return context.field.kind === "date" ? readDateText(value.iso, context.locale) : looksConverted(value.iso);
    case "error":
      return trouble("spreadsheet-error", `the spreadsheet program reports ${value.text}; mend the formula`);
    case "no-result":
      return trouble(
        "spreadsheet-error",
        "a formula without a saved result; open the file, let it compute, and save it",
      );
    case "unusable":
      return trouble(value.why.includes("characters") ? "too-long" : "not-a-number", value.why);
  }
}

function readPlainText(text: string, context: CellContext): CellReading | null {
  const { field, vocabulary } = context;
  // A word on the list of choices is that choice, even where it also stands for missing (behind the wall: ?).
  if (field.kind === "choice" && vocabulary.choices.get(field.id)?.whole(text) !== undefined) return null;
  if (vocabulary.isMissing(foldText(text))) return missing();
  if (SPREADSHEET_ERROR.test(text.trim())) {
    return trouble("spreadsheet-error", `the spreadsheet program reports ${text.trim()}; mend the formula`);
  }
  if (CODES_AND_NUMBERS.has(field.kind) && isConvertedText(text)) return looksConverted();
  return field.kind === "identifier" ? lostZeros(text, context.codeWidth) : null;
}

function readNumberCell(value: Extract<CellValue, { kind: "number" }>, context: CellContext): CellReading {
  const { field } = context;
  const { number, format } = value;
  const dated = format === "date" || format === "time";
  if (field.kind === "date" || (dated && field.id === "notes")) {
    return readDayNumber(number, context.dateSystem, format === "date");
  }
  if (dated) {
    const day = readDayNumber(number, context.dateSystem, format === "date");
    return looksConverted(day.ok && day.kind === "word" ? String(day.value) : null);
  }
  if (field.kind === "quantity" || field.kind === "count") return readPlainNumber(number, format, context);
  const text = String(number);
  switch (field.kind) {
    case "choice":
      return (
        readPhrase(text, [field], context.vocabulary).byFact.get(field.id) ?? noChoice(text, field, context.vocabulary)
      );
    case "yes-no":
      return readYesNo(text, field, context.vocabulary);
    case "identifier":
      return isConvertedNumber(value)
        ? looksConverted()
        : (lostZeros(text, context.codeWidth) ?? readText(text, field));
    case "designation":
      return !THREAD_FIELDS.has(field.id) && isConvertedNumber(value) ? looksConverted() : readText(text, field);
    default:
      return readText(text, field);
  }
}

function readPlainNumber(number: number, format: string, context: CellContext): CellReading {
  if (!Number.isFinite(number)) return trouble("not-a-number", "expected a finite number");
  const percent = format === "percent";
  if (percent && context.field.dimension !== "ratio") {
    return trouble("wrong-dimension", "the cell is formatted as a percentage; correct the format or the value");
  }
  const unit = percent ? unitOf("%", "ratio") : null;
  const value = percent ? number * 100 : number;
  const found = {
    half: null,
    range: false,
    lastPlace: halfLastPlace(value, String(value)),
    supply: null,
    remarks: [],
    unit: { ok: true, unit, supply: null },
  } as const;
  return numberRead([value, value], found, context);
}

function readTruthCell(truth: boolean, context: CellContext): CellReading {
  const { field, vocabulary } = context;
  if (field.kind === "yes-no") return { ok: true, kind: "word", value: truth, remarks: [] };
  if (field.kind !== "choice") return trouble("not-a-number", "expected a value, found true or false");
  const choice = vocabulary.choices.get(field.id)?.whole(truth ? "true" : "false");
  return choice === undefined
    ? trouble("unknown-choice", "true and false say nothing here; write the answer in words")
    : { ok: true, kind: "word", value: choice, remarks: [] };
}

function missing(): CellReading {
  return trouble("missing", "nothing is stated");
}
