import { dimensionsSpelled, otherQuantityOf } from "../../base/index.js";
import { type Grid, shownText } from "../cells/grid.js";
import type { Vocabulary } from "../words/vocabulary.js";
import { isListedHeading, isUnitText, isWholeHeading, matchHeading, readUnitBelow } from "./heading.js";
import { NAMING_FIELDS } from "./naming-fields.js";

/** What the row right under the headings says of one column. */
export interface UnderHeading {
  /** The heading that the two rows give together (Speed over min), or null. */
  readonly heading: string | null;
  readonly unit: string;
  /** Something stands where the unit is looked for, and it is none that the column can have. */
  readonly unsettled: boolean;
}

/** The row right under the headings, understood cell by cell. */
export interface UnderHeadings {
  /** The row belongs to the headings; else it is a row like the others, and only leaves units open. */
  readonly taken: boolean;
  /** It is a row of units; else of headings. */
  readonly units: boolean;
  readonly cells: ReadonlyMap<number, UnderHeading>;
}

/** Columns over which an unmerged heading is taken to reach. */
const REACH = 4;
/** Longest text of a second row of headings. */
const LONGEST_HALF = 40;
const UNIT_WORD = /^(?:units?|einheit(?:en)?|unidad(?:es)?|unités?|unites?)\s*:?$/i;

type Kind = "half" | "heading" | "unit" | "none" | "other";

interface Judged {
  readonly column: number;
  readonly text: string;
  readonly over: string;
  readonly kind: Kind;
  /** The heading asks for a quantity. */
  readonly quantity: boolean;
  /** The heading asks for the name of a point or a machine. */
  readonly naming: boolean;
}

/**
 * Understands the row right under the headings: units, second halves of headings, or a row of its own. A heading
 * reaches over the empty cells to its right. One cell that nobody knows leaves its own column open, not the others.
 *
 * @param rows - the one or two rows of headings above, from the top down
 */
export function underHeadings(
  grid: Grid,
  rows: readonly number[],
  below: number,
  vocabulary: Vocabulary,
): UnderHeadings {
  const cells = [...grid.filled(below)].map(([column, value]): Judged => {
    const text = shownText(value).trim();
    const over = headingOver(grid, rows, column);
    const fields = matchHeading(over, vocabulary).map((match) => match.field);
    const kind = value.kind === "text" ? kindOf(text, over, vocabulary) : "other";
    return {
      column,
      text,
      over,
      kind,
      quantity: fields.some((field) => field.dimension !== undefined),
      naming: fields.some((field) => NAMING_FIELDS.has(field.id)),
    };
  });
  const divided = dividedHeadings(cells);
  const mostlyUnits = isRowOfUnits(cells);
  const units = mostlyUnits && cells.some(({ kind }) => kind === "unit");
  if (mostlyUnits || isRowOfHeadings(cells, divided)) return { taken: true, units, cells: takenCells(cells, divided) };
  const open = cells.filter((cell) => cell.kind === "unit" && cell.quantity);
  return {
    taken: false,
    units: false,
    cells: new Map(open.map(({ column }) => [column, { heading: null, unit: "", unsettled: true }])),
  };
}

function kindOf(text: string, over: string, vocabulary: Vocabulary): Kind {
  if (isWholeHeading(`${over} ${text}`, vocabulary)) return "half";
  if (isUnitUnder(text, over, vocabulary)) return "unit";
  // "Unit" is a heading of plant areas too; in front of units it announces them.
  if (UNIT_WORD.test(text)) return "none";
  if (isListedHeading(text, vocabulary) && !isChoiceWord(text, vocabulary)) return "heading";
  return saysNoUnit(text, vocabulary) ? "none" : "other";
}

/** Mostly units, of the cells under headings that ask for a quantity; a name of a point beside them makes it a point. */
function isRowOfUnits(cells: readonly Judged[]): boolean {
  const units = cells.filter(({ kind }) => kind === "unit").length;
  const halves = cells.filter(({ kind }) => kind === "half").length;
  const others = cells.filter(({ kind, quantity }) => kind === "other" && quantity).length;
  const names = cells.filter(({ kind, naming }) => kind === "other" && naming);
  if (names.some(({ text }) => /\d/.test(text)) || (names.length > 0 && units < 2)) return false;
  return (units >= 1 || halves >= 2) && units + halves > others;
}

/** Words without digits alone: headings of their own, or two and more that divide one heading (full load, turndown). */
function isRowOfHeadings(cells: readonly Judged[], divided: ReadonlySet<string>): boolean {
  if (cells.some(({ text }) => /\d/.test(text) || text.length > LONGEST_HALF)) return false;
  if (cells.some(({ kind, naming }) => naming && (kind === "other" || kind === "unit"))) return false;
  const headings = cells.filter(({ kind }) => kind === "half" || kind === "heading").length;
  const others = cells.filter(({ kind, over }) => kind === "other" && !divided.has(over)).length;
  return (headings >= 2 || divided.size > 0) && headings + divided.size > others;
}

/** Headings for a quantity under which two and more cells stand. */
function dividedHeadings(cells: readonly Judged[]): ReadonlySet<string> {
  const under = cells.filter(({ quantity, kind }) => quantity && (kind === "half" || kind === "other"));
  const overs = under.map(({ over }) => over);
  return new Set(overs.filter((over, i) => overs.indexOf(over) !== i));
}

function takenCells(cells: readonly Judged[], divided: ReadonlySet<string>): ReadonlyMap<number, UnderHeading> {
  const found = new Map<number, UnderHeading>();
  for (const { column, text, over, kind, quantity } of cells) {
    const divides = kind === "other" && divided.has(over) && !isUnitLike(text);
    if (kind === "half" || divides) found.set(column, { heading: `${over} ${text}`, unit: "", unsettled: false });
    else if (kind === "heading") found.set(column, { heading: text, unit: "", unsettled: false });
    else if (kind === "unit") found.set(column, { heading: null, unit: text, unsettled: false });
    else if (kind === "other")
      found.set(column, { heading: null, unit: isUnitLike(text) ? text : "", unsettled: quantity });
  }
  return found;
}

/** A unit of the quantity that the heading names; under headings that nobody knows any unit of some length. */
function isUnitUnder(text: string, heading: string, vocabulary: Vocabulary): boolean {
  const fields = matchHeading(heading, vocabulary).map((match) => match.field);
  if (fields.length === 0) return text.length > 1 && isUnitText(text, undefined);
  return fields.some(({ dimension }) => dimension !== undefined && readUnitBelow(text, dimension) !== null);
}

/** Words that stand in headings and in cells alike (Palier, Variateur) prove neither. */
export function isChoiceWord(text: string, vocabulary: Vocabulary): boolean {
  return [...vocabulary.choices.values()].some((choices) => choices.whole(text) !== undefined);
}

function isUnitLike(text: string): boolean {
  return dimensionsSpelled(text).length > 0 || otherQuantityOf(text) !== null;
}

/** What a row of units holds where there is none: a dash, a remark in brackets, the choices (Y/N, H/V/A). */
function saysNoUnit(text: string, vocabulary: Vocabulary): boolean {
  if (vocabulary.isMissing(text)) return true;
  return /^(?:[([].{0,20}[)\]]|\p{L}{1,4}(?:\/\p{L}{1,4}){1,3}|text)$/iu.test(text);
}

function headingOver(grid: Grid, rows: readonly number[], column: number): string {
  const [top = 0, ...lower] = rows;
  const parts = lower.map((row) => shownText(grid.own(row, column)).trim());
  return [textOver(grid, top, column), ...parts].filter((part) => part !== "").join(" ");
}

function textOver(grid: Grid, row: number, column: number): string {
  for (let left = column; left > 0 && left > column - REACH; left--) {
    const text = shownText(grid.across(row, left)).trim();
    if (text !== "") return text;
  }
  return "";
}
