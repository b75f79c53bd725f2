/** What the figures are to be, printed beside what they are. */
import { grouped, mebibytes, table, times } from "./tables.mjs";

/** Each: what is measured, the value, its bound, how both are shown, and which way is good. */
const WANTED = [
  ["reading, to the floor", ({ long }) => long.floorRatio, 3, times, "at most"],
  ["reading, faster than the fastest other", ({ long }) => long.fasterBy, 4, times, "at least"],
  ["reading, peak memory", ({ long }) => long.readingKib, 250 * 1024, mebibytes, "under"],
  ["reading 1,000,000 short rows, peak memory", ({ short }) => short?.readingKib, 500 * 1024, mebibytes, "under"],
  ["writing back, to reading", ({ long }) => long.writeBackRatio, 3, times, "at most"],
  ["writing back, peak memory", ({ long }) => long.writeBackKib, 250 * 1024, mebibytes, "under"],
  ["whole command to a JSON file, to reading", ({ long }) => long.commandRatio, 4, times, "under"],
  ["whole command to a JSON file, peak memory", ({ long }) => long.commandKib, 400 * 1024, mebibytes, "under"],
];

/**
 * Prints the figures of the largest survey and of the long list of short rows beside what they are to be.
 *
 * @param {number} rows - of the largest survey
 * @param {Record<string, object | undefined>} figures
 */
export function besideWanted(rows, figures) {
  const lines = WANTED.flatMap(([what, figure, bound, show, how]) => {
    const value = figure(figures);
    if (value === undefined) return [];
    const isMet = how === "at least" ? value >= bound : value <= bound;
    const verdict = Number.isFinite(value) ? (isMet ? "met" : "not met") : "not measured";
    return [[what, show(value), `${how} ${show(bound)}`, verdict]];
  });
  table([[`${grouped(rows)} rows of 30 columns`, "measured", "wanted", ""], ...lines]);
}

/** The figures of a survey from its runs. */
export function figuresOf({ floor, ours, fastestOther }, done) {
  return {
    floorRatio: ours.wall / floor.wall,
    fasterBy: fastestOther / ours.wall,
    readingKib: ours.peakKib,
    ...(done && {
      writeBackRatio: unlessBroken(done.workbook, done.writeBack.wall / done.reading.wall),
      writeBackKib: unlessBroken(done.workbook, done.workbook.peakKib),
      commandRatio: unlessBroken(done.json, done.json.wall / done.reading.wall),
      commandKib: unlessBroken(done.json, done.json.peakKib),
    }),
  };
}

function unlessBroken(run, value) {
  return run.ended === "ok" ? value : Number.NaN;
}
