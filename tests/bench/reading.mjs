/** Reading alone: ours, three others, and unpacking the sheet part without reading it. */
import { fileURLToPath } from "node:url";
import { interleaved, measure } from "./measure.mjs";
import { besides, grouped, table } from "./tables.mjs";

const READERS = ["floor", "spotface", "read-excel-file", "SheetJS", "exceljs, streaming", "exceljs"];
const PROGRAM = fileURLToPath(new URL("readers.mjs", import.meta.url));

/**
 * Whether all readers find the same cells; without that their times say nothing.
 *
 * @param {string} file
 */
export async function sameCells(file) {
  const counts = [];
  for (const reader of READERS.slice(1)) {
    const { out } = await measure([PROGRAM, reader, file, "--count"]);
    counts.push([reader, Number(out)]);
  }
  const [[, ours]] = counts;
  const others = counts.filter(([, count]) => count !== ours);
  if (others.length === 0) console.log(`all readers find the same ${grouped(ours)} cells\n`);
  else console.log(`${grouped(ours)} cells, but ${others.map((other) => other.join(" finds ")).join(", ")}\n`);
}

/**
 * Measures all readers on one file and prints the table.
 *
 * @param {string} what - the file, as the table names it
 * @param {string} file
 * @param {number} rounds
 */
export async function readings(what, file, rounds) {
  const programs = READERS.map((reader) => [reader, () => [PROGRAM, reader, file]]);
  const runs = await interleaved(programs, rounds);
  const [floor, ours] = [runs.get("floor"), runs.get("spotface")];
  table([
    [`reading ${what}`, "time", "processor", "peak memory", "to the floor", "to ours"],
    ...READERS.map((name) => besides(name, runs.get(name), [floor, ours])),
  ]);
  const others = READERS.slice(2).map((name) => runs.get(name));
  const able = others.filter(({ ended }) => ended === "ok");
  const fastest = (key) => Math.min(...able.map((run) => run[key]));
  return { floor, ours, fastestOther: { wall: fastest("wall"), processor: fastest("processor") } };
}
