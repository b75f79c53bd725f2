/**
 * `npm run bench`: how long a screening takes, where the time goes, and how it grows with the rows. Figures are for
 * comparing versions on one machine; nothing here fails because a machine is slow.
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { writeSurvey } from "./generate.mjs";

const SIZES = [1_000, 10_000];
const RUNS = 3;
const SEED = 20261125;
const here = (path) => fileURLToPath(new URL(path, import.meta.url));
const CLI = here("../../dist/cli/main.js");

const middleOf = (values) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;
const seconds = (ms) => `${(ms / 1000).toFixed(2)} s`;
const mebibytes = (kib) => `${Math.round(kib / 1024)} MiB`;

/** Runs Node and gives its output; a run that breaks off ends the bench. */
function node(args) {
  const start = performance.now();
  const run = spawnSync(process.execPath, args, { encoding: "utf8", maxBuffer: 1 << 30 });
  const wall = performance.now() - start;
  if (run.status !== 0) throw new Error(`node ${args.join(" ")} ended with ${run.status}\n${run.stderr}`);
  return { ...run, wall };
}

/** The whole command as a user runs it. */
function wholeRun(file) {
  const runs = Array.from({ length: RUNS }, () => {
    const run = node([
      "--import",
      here("peak.mjs"),
      CLI,
      "screen",
      file,
      "--json",
      "--set",
      "core",
      "--as-of",
      "2026-11-25",
    ]);
    return { wall: run.wall, peak: Number(/peak-kib:(\d+)/.exec(run.stderr)?.[1]), bytes: run.stdout.length };
  });
  return {
    wall: middleOf(runs.map(({ wall }) => wall)),
    peak: Math.max(...runs.map(({ peak }) => peak)),
    bytes: runs[0]?.bytes ?? 0,
  };
}

/** The stages in a process of their own; the middle of several runs for each. */
function stagesOf(file) {
  const runs = Array.from({ length: RUNS }, () => JSON.parse(node([here("stages.mjs"), file, "--workbook"]).stdout));
  const names = Object.keys(runs[0].taken);
  return {
    taken: names.map((name) => [name, middleOf(runs.map(({ taken }) => taken[name]))]),
    peak: Math.max(...runs.map(({ peakKiB }) => peakKiB)),
  };
}

function table(rows) {
  const widths = rows[0].map((_, i) => Math.max(...rows.map((row) => row[i].length)));
  for (const row of rows) {
    console.log(row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join("   "));
  }
  console.log("");
}

const folder = mkdtempSync(join(tmpdir(), "spotface-bench-"));
try {
  console.log(`node ${process.version}, ${cpus().length} processors, middle of ${RUNS} runs\n`);
  const measured = [];
  for (const rows of SIZES) {
    const file = join(folder, `survey-${rows}.xlsx`);
    await writeSurvey(file, rows, SEED);
    measured.push({ rows, whole: wholeRun(file), stages: stagesOf(file) });
  }
  table([
    ["screen FILE --json", ...measured.map(({ rows }) => `${rows} rows`)],
    ["whole command", ...measured.map(({ whole }) => seconds(whole.wall))],
    ["rows per second", ...measured.map(({ rows, whole }) => String(Math.round((rows * 1000) / whole.wall)))],
    ["peak memory", ...measured.map(({ whole }) => mebibytes(whole.peak))],
    ["peak with the screened workbook", ...measured.map(({ stages }) => mebibytes(stages.peak))],
    ["JSON", ...measured.map(({ whole }) => `${(whole.bytes / 1e6).toFixed(1)} MB`)],
  ]);
  const isWorkbook = (name) => name.includes("screened workbook");
  const shares = measured.map(({ stages }) => {
    const sum = stages.taken.reduce((all, [name, ms]) => (isWorkbook(name) ? all : all + ms), 0);
    return { sum, of: new Map(stages.taken) };
  });
  const names = measured[0].stages.taken.map(([name]) => name);
  table([
    ["stage, share of the run to JSON", ...measured.flatMap(({ rows }) => [`${rows} rows`, "share"]), "growth"],
    ...names.map((name) => [
      name,
      ...shares.flatMap(({ sum, of }) => [seconds(of.get(name)), `${((100 * of.get(name)) / sum).toFixed(0)} %`]),
      `${(shares[1].of.get(name) / shares[0].of.get(name)).toFixed(1)}x`,
    ]),
  ]);
  const growth = measured[1].whole.wall / measured[0].whole.wall;
  console.log(`ten times the rows take ${growth.toFixed(1)} times as long as a whole command`);
} finally {
  rmSync(folder, { recursive: true, force: true });
}
