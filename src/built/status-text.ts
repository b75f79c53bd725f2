import type { RowAt } from "./result.js";

/** Rows named in a sentence; the rest are counted. */
const MOST_NAMED = 3;

function rowsInWords(rows: readonly RowAt[]): string {
  const named = rows.slice(0, MOST_NAMED).map(({ file, sheet, row }) => {
    return sheet === null ? `${file} line ${row}` : `${file} > ${sheet} row ${row}`;
  });
  const more = rows.length - named.length;
  return named.join(", ") + (more > 0 ? ` and ${more} more` : "");
}

/** Why a point whose id stands in several rows is not matched. */
export function twiceText(proposed: readonly RowAt[], built: readonly RowAt[]): string {
  const sides = [
    ...(proposed.length > 1 ? [`the proposal (${rowsInWords(proposed)})`] : []),
    ...(built.length > 1 ? [`the built survey (${rowsInWords(built)})`] : []),
  ];
  return `the same point stands in several rows of ${sides.join(" and of ")}; keep one of them, or correct the point ID of the others`;
}

export const NOT_PROPOSED_TEXT =
  "built, but not proposed under this id: nobody has judged this place; have it surveyed and screened as a proposal, or correct its id";

export const NO_ID_TEXT =
  "the row has no point ID, nor asset tag, component, bearing position and direction together, so it belongs to no point; complete it";

export const NOT_ISSUED_TEXT =
  "the result under which orders were issued has no verdict on this point; issue one before it counts as approved";

/** Why a row of the built survey does not make its point a built one. */
export function blankText(built: readonly RowAt[]): string {
  return `not built yet: ${rowsInWords(built)} says nothing of what was done`;
}
