/** Where the time of a run goes, stage by stage, and how each stage grows with the rows. */
import { fileURLToPath } from "node:url";
import { measure } from "./measure.mjs";
import { grouped, seconds, table, times } from "./tables.mjs";

const STAGES = fileURLToPath(new URL("stages.mjs", import.meta.url));
const WORKBOOK = "write the screened workbook";

const middleOf = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

/**
 * Runs the stages of two files in processes of their own and prints what each took.
 *
 * @param {readonly (readonly [rows: number, file: string])[]} files - the shorter first
 * @param {number} rounds
 */
export async function sharesOfStages(files, rounds) {
  const measured = [];
  for (const [rows, file] of files) {
    const runs = [];
    for (let round = 0; round < rounds; round++) runs.push(JSON.parse((await measure([STAGES, file])).out));
    const taken = new Map(
      runs[0].taken.map(([name]) => [name, middleOf(runs.map((run) => new Map(run.taken).get(name)))]),
    );
    const sum = [...taken].reduce((all, [name, ms]) => (name === WORKBOOK ? all : all + ms), 0);
    measured.push({ rows, taken, sum });
  }
  const [first, last] = measured;
  table([
    [
      "stage, share of the run to JSON",
      ...measured.flatMap(({ rows }) => [`${grouped(rows)} rows`, "share"]),
      "growth",
    ],
    ...[...first.taken.keys()].map((name) => [
      name,
      ...measured.flatMap(({ taken, sum }) => [
        seconds(taken.get(name)),
        `${((100 * taken.get(name)) / sum).toFixed(0)} %`,
      ]),
      times(last.taken.get(name) / first.taken.get(name)),
    ]),
  ]);
}
