import type { Alignment, Border, Borders, Style } from "exceljs";
import type { Outcome } from "../../base/index.js";

/** How a cell looks; the same wish always gives the same object, which keeps writing fast and styles few. */
export interface Look {
  readonly part: "title" | "heading" | "survey" | "ours" | "our-heading" | "verdict";
  readonly wrap: boolean;
  /** A number: to the right, clear of the text in the next column. */
  readonly isNumber?: boolean;
  /** Number format; "@" marks a text that must stay text. */
  readonly format?: string;
  /** Outcome of the finding that the cell gave cause for. */
  readonly mark?: Outcome;
}

/** Colour says nothing here: outcomes differ by the kind of line, and words stand beside them. */
const DARK = { argb: "FF202020" };
const GREY = { argb: "FF8C8C8C" };
const NEUTRAL_FILL = { type: "pattern", pattern: "solid", fgColor: { argb: "FFF0F0EE" } } as const;

const FAIL_LINE: Partial<Border> = { style: "thick", color: DARK };
const WARN_LINE: Partial<Border> = { style: "mediumDashed", color: DARK };
const OPEN_LINE: Partial<Border> = { style: "dotted", color: DARK };

function allRound(line: Partial<Border>): Partial<Borders> {
  return { top: line, left: line, bottom: line, right: line };
}

function borderOf(look: Look): Partial<Borders> | undefined {
  if (look.mark === "fail") return allRound(FAIL_LINE);
  if (look.mark === "warn") return allRound(WARN_LINE);
  if (look.mark !== undefined) return allRound(OPEN_LINE);
  if (look.part === "title" || !look.wrap) return undefined;
  const heading = look.part === "heading" || look.part === "our-heading";
  return { bottom: { style: heading ? "thin" : "hair", color: GREY } };
}

const SIZES: Readonly<Record<Look["part"], number>> = {
  title: 14,
  heading: 10,
  survey: 10,
  ours: 10,
  "our-heading": 10,
  verdict: 10,
};

function sideOf(look: Look): Partial<Alignment> {
  if (look.part === "ours") return { horizontal: "left" };
  return look.isNumber === true ? { horizontal: "right", indent: 1 } : {};
}

function makeStyle(look: Look): Partial<Style> {
  const bold = look.part !== "survey" && look.part !== "ours";
  const border = borderOf(look);
  return {
    font: { name: "Calibri", family: 2, size: SIZES[look.part], bold },
    alignment: { vertical: "top", wrapText: look.wrap && look.isNumber !== true, ...sideOf(look) },
    ...(look.format === undefined ? {} : { numFmt: look.format }),
    ...(border === undefined ? {} : { border }),
    ...(look.part === "our-heading" || look.part === "verdict" ? { fill: NEUTRAL_FILL } : {}),
  };
}

/** Styles of one workbook, made once each; a style that was handed out must not be changed. */
export function styleBook(): (look: Look) => Partial<Style> {
  const made = new Map<string, Partial<Style>>();
  return (look) => {
    const key = `${look.part}|${look.wrap}|${look.format ?? ""}|${look.mark ?? ""}|${look.isNumber ?? false}`;
    const known = made.get(key);
    if (known) return known;
    const style = makeStyle(look);
    made.set(key, style);
    return style;
  };
}
