import type { Grid } from "../cells/grid.js";

const ROWS_LOOKED_AT = 60;
const FEWEST_TEXTS = 2;
const LONGEST_HEADING = 60;
/** A row that tells as little as this much less than the best one, but stands above it, is taken: headings come first. */
const NEARLY_BEST = 0.7;

/**
 * The row that looks most like headings, by its form alone: many short texts without digits. For a person to look at,
 * where no heading is known; nothing is read by it.
 */
export function likelyHeadingRow(grid: Grid): number | null {
  const rows = grid.rows.slice(0, ROWS_LOOKED_AT).map(({ row }) => row);
  const scores = rows.map((row) => {
    const texts = [...grid.filled(row).values()].map((value) => (value.kind === "text" ? value.text.trim() : ""));
    return texts.filter((text) => text !== "" && text.length <= LONGEST_HEADING && !/^[\d\W]*\d/.test(text)).length;
  });
  const best = Math.max(0, ...scores);
  if (best < FEWEST_TEXTS) return null;
  const first = scores.findIndex((score) => score >= Math.max(FEWEST_TEXTS, best * NEARLY_BEST));
  return rows[first] ?? null;
}
