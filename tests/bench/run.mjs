/**
 * `npm run bench`: how long reading, screening and writing take and how much memory, beside other readers and beside
 * merely unpacking the file. `-- --quick` leaves out the long surveys. Figures are for comparing on one machine;
 * nothing here fails because a machine is slow or busy.
 */
import { mkdtempSync, rmSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { commands } from "./commands.mjs";
import { fullSet } from "./full-set.mjs";
import { measure } from "./measure.mjs";
import { readings, sameCells } from "./reading.mjs";
import { sharesOfStages } from "./shares.mjs";
import { grouped } from "./tables.mjs";
import { besideWanted, figuresOf } from "./wanted.mjs";

const isQuick = process.argv.includes("--quick");
const SIZES = isQuick ? [1_000, 10_000] : [1_000, 10_000, 100_000];
const SHORT_ROWS = 1_000_000;
const STAGE_SIZES = [1_000, 10_000];
const ROUNDS = 3;
const SEED = 20261125;
const GENERATE = fileURLToPath(new URL("generate.mjs", import.meta.url));

const folder = mkdtempSync(join(tmpdir(), "spotface-bench-"));

/** Makes a survey in a process of its own. */
async function survey(rows, width) {
  const file = join(folder, `survey-${rows}.xlsx`);
  const { ended } = await measure([GENERATE, file, String(rows), String(SEED), width]);
  if (ended !== "ok") throw new Error(`the survey of ${rows} rows could not be made: ${ended}`);
  return file;
}

try {
  console.log(`node ${process.version}, ${cpus().length} processors, whole processes, middle of ${ROUNDS} runs`);
  console.log("floor: the sheet part unpacked by zlib and thrown away\n");
  const files = new Map();
  for (const rows of SIZES) files.set(rows, await survey(rows, "thirty columns"));
  await sameCells(files.get(SIZES[0]));
  let long;
  for (const [rows, file] of files) {
    const what = `${grouped(rows)} rows of 30 columns`;
    const read = await readings(what, file, ROUNDS);
    long = figuresOf(read, await commands(what, file, rows, folder, ROUNDS));
  }
  let short;
  if (!isQuick) {
    const file = await survey(SHORT_ROWS, "three columns");
    short = figuresOf(await readings(`${grouped(SHORT_ROWS)} rows of 3 columns`, file, ROUNDS));
  }
  await sharesOfStages(
    STAGE_SIZES.map((rows) => [rows, files.get(rows)]),
    ROUNDS,
  );
  const rows = SIZES.at(-1);
  const full = await fullSet(`${grouped(rows)} rows of 30 columns`, files.get(rows), folder, ROUNDS);
  besideWanted(rows, { long, short, full });
} finally {
  rmSync(folder, { recursive: true, force: true });
}
