import type { DataValidation, Style, Worksheet } from "exceljs";
import { isNumeric } from "../../facts/index.js";
import type { BlankColumn } from "./columns.js";

const NARROWEST = 8;
const WIDEST = 32;
const TEXT_WIDTHS: Readonly<Record<string, number>> = { text: 16, identifier: 14, designation: 12, date: 12 };
/** Room for the arrow of a drop-down list. */
const ARROW = 3;

type ReadyLook = "text" | "date" | "number" | "word";
const FORMATS: Readonly<Record<ReadyLook, string | undefined>> = {
  text: "@",
  date: "yyyy-mm-dd",
  number: undefined,
  word: undefined,
};
const LINE = { style: "thin", color: { argb: "FFB4B4B0" } } as const;
const GROUP_LINE = { style: "medium", color: { argb: "FF6E6E6A" } } as const;

/** The library has checks of whole ranges, but does not say so in its types. */
export function checksOf(sheet: Worksheet): { add(range: string, check: DataValidation): void } {
  return (sheet as Worksheet & { readonly dataValidations: { add(range: string, check: DataValidation): void } })
    .dataValidations;
}

/** Texts are kept as typed ("1-2" is no day, "0017" no number); words and numbers are not forced into anything. */
export function lookOf({ field, words }: BlankColumn): ReadyLook {
  if (field.kind === "date") return "date";
  if (isNumeric(field)) return "number";
  return words.size > 0 ? "word" : "text";
}

/** Styles of cells that are ready to be filled in, each made once. */
export function readyStyles(): (look: ReadyLook, opensGroup: boolean) => Partial<Style> {
  const made = new Map<string, Partial<Style>>();
  return (look, opensGroup) => {
    const key = `${look}|${opensGroup}`;
    const known = made.get(key);
    if (known) return known;
    const numFmt = FORMATS[look];
    const style: Partial<Style> = {
      font: { name: "Calibri", family: 2, size: 10 },
      alignment: {
        vertical: "top",
        ...(look === "number" || look === "date" ? { horizontal: "right", indent: 1 } : { wrapText: true }),
      },
      border: { top: LINE, bottom: LINE, right: LINE, left: opensGroup ? GROUP_LINE : LINE },
      ...(numFmt === undefined ? {} : { numFmt }),
    };
    made.set(key, style);
    return style;
  };
}

/** Width of a column, characters: its words and what is to be written fit. */
export function widthOf({ field, heading, words }: BlankColumn): number {
  const longestWord = Math.max(...heading.split(/[\s/]+/).map((word) => word.length)) + 3;
  const longestChoice = Math.max(0, ...[...words.values()].map((word) => word.length + ARROW));
  const wanted = Math.max(NARROWEST, longestWord, longestChoice, TEXT_WIDTHS[field.kind] ?? 0);
  return Math.min(WIDEST, wanted);
}
