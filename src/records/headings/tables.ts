import type { CellValue, RawCell } from "../../workbook/index.js";
import { type Grid, shownText } from "../cells/grid.js";
import { rememberedTexts } from "../words/remembered.js";
import type { Vocabulary } from "../words/vocabulary.js";
import { givenKey } from "./guide.js";
import { isListedHeading, matchHeading, namesIn } from "./heading.js";
import { isChoiceWord, type UnderHeadings, underHeadings } from "./under-headings.js";

/** A table of a sheet: its heading rows and the rows that follow until the next table. */
export interface Table {
  /** The row of headings itself. */
  readonly row: number;
  /** From the top down: group headings, headings, units or second halves of headings. */
  readonly headingRows: readonly number[];
  readonly headings: ReadonlyMap<number, TableHeading>;
  /** Rows below the headings, as the program numbers them. */
  readonly rows: readonly number[];
}

/** A column's heading: what stands in the lowest row, and what stands above it. */
export interface TableHeading {
  readonly own: string;
  readonly above: string;
  /** Text of the row of units under it, or empty. */
  readonly unitBelow: string;
  /** Something stands where the unit is looked for, so that bare numbers below mean nothing certain. */
  readonly unitOpen: boolean;
  /** The heading is divided between two rows: it counts only as a whole (Speed over turndown is no speed). */
  readonly divided: boolean;
}

/** Rows from the top of a sheet in which the first headings are looked for. */
const ROWS_LOOKED_AT = 60;
const FEWEST_HEADINGS = 2;
/** A row further down opens a new table only if it is plainly a row of headings. */
const FEWEST_HEADINGS_BELOW = 3;

/** What a person says that helps to find the rows of headings. */
export interface HeadingHints {
  /** The rows themselves; empty where they are to be found. */
  readonly rows: readonly number[];
  /** Headings that are named, in the form in which headings are compared. */
  readonly named: ReadonlySet<string>;
}

/** All tables of a sheet from the top down; empty if no row of headings was found. */
export function findTables(grid: Grid, vocabulary: Vocabulary, hints: HeadingHints): readonly Table[] {
  const numbers = grid.rows.map((row) => row.row);
  const starts = startsGiven(numbers, hints) ?? startsFound(grid, numbers, vocabulary, hints);
  return starts.map((start, i) =>
    tableAt(grid, numbers, { start, end: starts[i + 1] ?? numbers.length, first: i === 0 }, vocabulary),
  );
}

/** The places of the rows that a person names; null where none of them holds anything. */
function startsGiven(numbers: readonly number[], { rows }: HeadingHints): readonly number[] | null {
  const starts = [...rows]
    .sort((a, b) => a - b)
    .flatMap((row) => (numbers.includes(row) ? [numbers.indexOf(row)] : []));
  return starts.length === 0 ? null : starts;
}

function startsFound(
  grid: Grid,
  numbers: readonly number[],
  vocabulary: Vocabulary,
  hints: HeadingHints,
): readonly number[] {
  const first = firstHeadingRow(grid, numbers, vocabulary, hints);
  if (first === null) return [];
  const starts = [first];
  const kindOf = rememberedTexts((text) => headingKind(text, vocabulary, hints));
  for (let i = first + 1; i < numbers.length; i++) {
    const above = numbers[i - 1] ?? 0;
    if (starts.at(-1) === i - 1 && underHeadings(grid, [above], numbers[i] ?? 0, vocabulary).taken) continue;
    if (isFurtherHeadingRow(grid.filledCells(numbers[i] ?? 0), kindOf)) starts.push(i);
  }
  return starts;
}

function firstHeadingRow(
  grid: Grid,
  numbers: readonly number[],
  vocabulary: Vocabulary,
  hints: HeadingHints,
): number | null {
  const scores = numbers.slice(0, ROWS_LOOKED_AT).map((row) => headingScore(grid.filled(row), vocabulary, hints));
  const best = Math.max(0, ...scores);
  if (best < FEWEST_HEADINGS) return loneHeading(grid, numbers, vocabulary);
  return scores.findIndex((score) => score >= Math.max(FEWEST_HEADINGS, best * 0.7));
}

/** A sheet of one column: its topmost text, alone in its row, is a heading if it is listed whole. */
function loneHeading(grid: Grid, numbers: readonly number[], vocabulary: Vocabulary): number | null {
  const [value, ...others] = grid.filled(numbers[0] ?? 0).values();
  return value?.kind === "text" && others.length === 0 && isListedHeading(value.text, vocabulary) ? 0 : null;
}

/** How many different fields the texts of a row name; listed headings count whole, words within them half. */
function headingScore(cells: ReadonlyMap<number, CellValue>, vocabulary: Vocabulary, { named }: HeadingHints): number {
  const fields = new Map<string, number>();
  let texts = 0;
  for (const value of cells.values()) {
    if (value.kind !== "text") continue;
    texts += 1;
    if (isNamed(value.text, named, vocabulary)) {
      fields.set(`named ${givenKey(value.text)}`, 1);
      continue;
    }
    const [match] = matchHeading(value.text, vocabulary);
    if (!match) continue;
    const worth = match.how === "listed" ? 1 : 0.5;
    fields.set(match.field.id, Math.max(worth, fields.get(match.field.id) ?? 0));
  }
  const score = [...fields.values()].reduce((sum, worth) => sum + worth, 0);
  // Sentences and data rows name a field here and there; headings name one in most of their cells.
  return score >= texts * 0.3 ? score : 0;
}

function isNamed(text: string, named: ReadonlySet<string>, vocabulary: Vocabulary): boolean {
  return named.size > 0 && namesIn(text, vocabulary).some((name) => named.has(givenKey(name)));
}

/** What a text says of the row it stands in: a heading, a word of a choice that may be either, or anything else. */
function headingKind(text: string, vocabulary: Vocabulary, { named }: HeadingHints): "heading" | "choice" | "other" {
  if (isNamed(text, named, vocabulary)) return "heading";
  if (isChoiceWord(text, vocabulary)) return "choice";
  return isListedHeading(text, vocabulary) ? "heading" : "other";
}

function isFurtherHeadingRow(
  cells: readonly RawCell[],
  kindOf: (text: string) => ReturnType<typeof headingKind>,
): boolean {
  let listed = 0;
  let others = 0;
  // From the right: names, of which every row has new ones, stand on the left.
  for (let i = cells.length - 1; i >= 0; i--) {
    const value = (cells[i] as RawCell).value;
    const kind = value.kind === "text" ? kindOf(value.text) : "other";
    if (kind === "choice") continue;
    if (kind === "heading") listed += 1;
    else others += 1;
    if (others > listed + 1) return false;
  }
  return listed >= FEWEST_HEADINGS_BELOW && listed > others;
}

function tableAt(
  grid: Grid,
  numbers: readonly number[],
  { start, end, first }: { readonly start: number; readonly end: number; readonly first: boolean },
  vocabulary: Vocabulary,
): Table {
  const row = numbers[start] ?? 0;
  const above = numbers[start - 1];
  const upper = above !== undefined && first && isGroupRow(grid, above, row, vocabulary) ? above : null;
  const under = rowsUnder(grid, numbers.slice(start, Math.min(end, start + 3)), vocabulary);
  const columns = new Set([...grid.filled(row).keys(), ...under.cells.keys()]);
  if (upper !== null) for (const column of grid.filled(upper).keys()) columns.add(column);
  const headings = new Map<number, TableHeading>();
  for (const column of [...columns].sort((a, b) => a - b)) {
    const plain = shownText(grid.own(row, column)).trim();
    const over = upper === null ? "" : shownText(grid.across(upper, column)).trim();
    const below = under.cells.get(column);
    const own = below?.heading ?? plain;
    if (own === "" && over === "") continue;
    const divided = typeof below?.heading === "string";
    headings.set(column, {
      own,
      above: over,
      unitBelow: below?.unit ?? "",
      unitOpen: below?.unsettled ?? false,
      divided,
    });
  }
  const headingRows = [...(upper === null ? [] : [upper]), row, ...under.rows];
  return { row, headingRows, headings, rows: numbers.slice(start + 1 + under.rows.length, end) };
}

/** The rows under the row of headings that belong to it: second halves of headings, units, or both. */
function rowsUnder(
  grid: Grid,
  [row = 0, below, next]: readonly number[],
  vocabulary: Vocabulary,
): { readonly rows: readonly number[]; readonly cells: UnderHeadings["cells"] } {
  if (below === undefined) return { rows: [], cells: new Map() };
  const first = underHeadings(grid, [row], below, vocabulary);
  if (!first.taken) return { rows: [], cells: first.cells };
  if (first.units || next === undefined) return { rows: [below], cells: first.cells };
  const second = underHeadings(grid, [row, below], next, vocabulary);
  if (second.taken && !second.units) return { rows: [below], cells: first.cells };
  const cells = new Map(first.cells);
  for (const [column, cell] of second.cells) {
    cells.set(column, { ...cell, heading: first.cells.get(column)?.heading ?? null });
  }
  return { rows: second.units ? [below, next] : [below], cells };
}

/** A row of group headings: right above, short texts only, merged across, completing a heading, or the only one of a column. */
function isGroupRow(grid: Grid, above: number, row: number, vocabulary: Vocabulary): boolean {
  if (row - above > 1) return false;
  const texts = [...grid.filled(above)].map(([column, value]) => ({ column, value, text: shownText(value) }));
  if (texts.length < 2 || texts.some(({ value, text }) => value.kind !== "text" || text.length > 60)) return false;
  return texts.some(({ column, text }) => {
    const range = grid.coveredBy(above, column);
    if (range && range.right > range.left) return true;
    if (grid.own(row, column) === undefined && !/\d/.test(text) && isListedHeading(text, vocabulary)) return true;
    return isListedHeading(`${text} ${shownText(grid.own(row, column))}`, vocabulary);
  });
}
