/** What the figures are to be, printed beside what they are. */
import { grouped, mebibytes, table, times } from "./tables.mjs";

/**
 * Each: what is measured, the value by the clock, its bound, how both are shown, which way is good, and for times the
 * value by the work of the processor, which a busy machine does not change.
 */
const WANTED = [
  ["reading, to the floor", ({ long }) => long.floorRatio, 3, times, "at most", ({ long }) => long.floorWork],
  [
    "reading, faster than the fastest other",
    ({ long }) => long.fasterBy,
    4,
    times,
    "at least",
    ({ long }) => long.fasterByWork,
  ],
  ["reading, peak memory", ({ long }) => long.readingKib, 250 * 1024, mebibytes, "under"],
  ["reading 1,000,000 short rows, peak memory", ({ short }) => short?.readingKib, 500 * 1024, mebibytes, "under"],
  [
    "writing back, to reading",
    ({ long }) => long.writeBackRatio,
    3,
    times,
    "at most",
    ({ long }) => long.writeBackWork,
  ],
  ["writing back, peak memory", ({ long }) => long.writeBackKib, 250 * 1024, mebibytes, "under"],
  [
    "whole command to a JSON file, to reading",
    ({ long }) => long.commandRatio,
    4,
    times,
    "under",
    ({ long }) => long.commandWork,
  ],
  ["whole command to a JSON file, peak memory", ({ long }) => long.commandKib, 400 * 1024, mebibytes, "under"],
];

/**
 * Prints the figures of the largest survey and of the long list of short rows beside what they are to be.
 *
 * @param {number} rows - of the largest survey
 * @param {Record<string, object | undefined>} figures
 */
export function besideWanted(rows, figures) {
  const lines = WANTED.flatMap(([what, figure, bound, show, how, work]) => {
    const value = figure(figures);
    if (value === undefined) return [];
    const isMet = how === "at least" ? value >= bound : value <= bound;
    const verdict = Number.isFinite(value) ? (isMet ? "met" : "not met") : "not measured";
    return [[what, show(value), work ? show(work(figures)) : "", `${how} ${show(bound)}`, verdict]];
  });
  table([[`${grouped(rows)} rows of 30 columns`, "measured", "by processor", "wanted", ""], ...lines]);
}

/** The figures of a survey from its runs. */
export function figuresOf({ floor, ours, fastestOther }, done) {
  return {
    floorRatio: ours.wall / floor.wall,
    floorWork: ours.processor / floor.processor,
    fasterBy: fastestOther.wall / ours.wall,
    fasterByWork: fastestOther.processor / ours.processor,
    readingKib: ours.peakKib,
    ...(done && {
      writeBackRatio: unlessBroken(done.workbook, done.writeBack.wall / done.reading.wall),
      writeBackWork: unlessBroken(done.workbook, done.writeBack.processor / done.reading.processor),
      writeBackKib: unlessBroken(done.workbook, done.workbook.peakKib),
      commandRatio: unlessBroken(done.json, done.json.wall / done.reading.wall),
      commandWork: unlessBroken(done.json, done.json.processor / done.reading.processor),
      commandKib: unlessBroken(done.json, done.json.peakKib),
    }),
  };
}

function unlessBroken(run, value) {
  return run.ended === "ok" ? value : Number.NaN;
}
