/** Runs programs in processes of their own and says how long they took and how much memory. */
import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

const PEAK = fileURLToPath(new URL("peak.mjs", import.meta.url));
const LIMIT_SECONDS = 120;
/** A run that takes longer is not worth repeating. */
const SLOW_MS = 20_000;

/**
 * @typedef {object} Measured
 * @property {"ok" | "out of memory" | "over the time limit" | "failed"} ended
 * @property {number} wall - milliseconds from start to end of the process
 * @property {number} processor - milliseconds of work of all its threads
 * @property {number} peakKib - peak memory of the process
 * @property {string} out - what it printed
 */

/**
 * One run of Node with these arguments.
 *
 * @param {readonly string[]} args
 * @returns {Promise<Measured>}
 */
export async function measure(args) {
  const start = performance.now();
  const child = spawn(process.execPath, ["--import", PEAK, ...args], { stdio: ["ignore", "pipe", "pipe"] });
  let out = "";
  let err = "";
  let isOver = false;
  child.stdout.on("data", (piece) => {
    out = (out + piece).slice(-10_000);
  });
  child.stderr.on("data", (piece) => {
    err = (err + piece).slice(-10_000);
  });
  const timer = setTimeout(() => {
    isOver = true;
    child.kill("SIGKILL");
  }, LIMIT_SECONDS * 1000);
  const code = await new Promise((resolve) => child.on("close", resolve));
  clearTimeout(timer);
  const wall = performance.now() - start;
  const told = (name) => Number(new RegExp(`${name}:(\\d+)`).exec(err)?.[1] ?? Number.NaN);
  const taken = { wall, processor: told("processor-us") / 1000, peakKib: told("peak-kib"), out };
  if (isOver) return { ended: "over the time limit", ...taken };
  if (/heap out of memory|Array buffer allocation failed/.test(err)) return { ended: "out of memory", ...taken };
  // What went wrong is worth seeing; a reader that cannot do it does not end the bench.
  const why = /^\w*Error: .*$/m.exec(err)?.[0] ?? err.slice(-300);
  if (code !== 0) console.error(`node ${args.join(" ")} ended with ${code}: ${why}`);
  return { ended: code === 0 ? "ok" : "failed", ...taken };
}

/**
 * Several programs in turn, round by round, so that a busy spell of the machine meets them all.
 *
 * @param {readonly (readonly [name: string, args: () => readonly string[]])[]} programs
 * @param {number} rounds
 * @returns {Promise<Map<string, Measured>>} the middle of the runs of each
 */
export async function interleaved(programs, rounds) {
  const runs = new Map(programs.map(([name]) => [name, []]));
  for (let round = 0; round < rounds; round++) {
    for (const [name, args] of programs) {
      const before = runs.get(name);
      if (before.some(({ ended, wall }) => ended !== "ok" || wall > SLOW_MS)) continue;
      before.push(await measure(args()));
    }
  }
  return new Map([...runs].map(([name, all]) => [name, middle(all)]));
}

function middle(runs) {
  const failed = runs.find(({ ended }) => ended !== "ok");
  if (failed) return failed;
  const of = (key) => runs.map((run) => run[key]).sort((a, b) => a - b)[Math.floor(runs.length / 2)];
  return { ...runs[0], wall: of("wall"), processor: of("processor"), peakKib: of("peakKib") };
}
