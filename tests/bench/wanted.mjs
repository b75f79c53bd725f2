/** What the figures are to be, printed beside what they are. */
import { grouped, mebibytes, seconds, table, times } from "./tables.mjs";

/**
 * Each: what is measured, of which survey, its figure, which way is good, the bound, and how both are shown. Ratios of
 * times also have a figure by the work of the processor, which a busy machine changes less than the clock.
 */
const WANTED = [
  ["reading, to the floor", "long", "floor", "at most", 3, times],
  ["reading, faster than the fastest other", "long", "fasterBy", "at least", 4, times],
  ["reading, peak memory", "long", "readingKib", "under", 250 * 1024, mebibytes],
  ["reading 1,000,000 short rows, peak memory", "short", "readingKib", "under", 500 * 1024, mebibytes],
  ["writing back, to reading", "long", "writeBack", "at most", 3, times],
  ["writing back, peak memory", "long", "writeBackKib", "under", 250 * 1024, mebibytes],
  ["whole command to a JSON file, to reading", "long", "command", "under", 4, times],
  ["whole command to a JSON file, peak memory", "long", "commandKib", "under", 400 * 1024, mebibytes],
  ["full set to a JSON file", "full", "full", "at most", 8000, seconds],
  ["full set to a JSON file, peak memory", "full", "fullKib", "under", 400 * 1024, mebibytes],
];

/**
 * Prints the figures of the largest survey and of the long list of short rows beside what they are to be.
 *
 * @param {number} rows - of the largest survey
 * @param {Record<string, object | undefined>} figures
 */
export function besideWanted(rows, figures) {
  const lines = WANTED.filter(([, survey]) => figures[survey]).map(([what, survey, name, how, bound, show]) => {
    const figure = figures[survey][name];
    const [value, work] = Array.isArray(figure) ? figure : [figure];
    const isMet = how === "at least" ? value >= bound : value <= bound;
    const verdict = Number.isFinite(value) ? (isMet ? "met" : "not met") : "not measured";
    return [what, show(value), work === undefined ? "" : show(work), `${how} ${show(bound)}`, verdict];
  });
  table([[`${grouped(rows)} rows of 30 columns`, "measured", "by processor", "wanted", ""], ...lines]);
}

/** The figures of a survey from its runs. */
export function figuresOf({ floor, ours, fastestOther }, done) {
  const figures = { floor: ratio(ours, floor), fasterBy: ratio(fastestOther, ours), readingKib: ours.peakKib };
  if (!done) return figures;
  const { reading, json, writeBack } = done;
  return {
    ...figures,
    writeBack: writeBack.ended === "ok" ? ratio(writeBack, reading) : Number.NaN,
    writeBackKib: writeBack.ended === "ok" ? writeBack.peakKib : Number.NaN,
    command: json.ended === "ok" ? ratio(json, reading) : Number.NaN,
    commandKib: json.ended === "ok" ? json.peakKib : Number.NaN,
  };
}

/** By the clock, and by the work of the processor. */
function ratio(one, other) {
  return [one.wall / other.wall, one.processor / other.processor];
}
