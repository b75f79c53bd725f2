/** The whole command with the full set of rules, beside the plain pipeline of exceljs and json-rules-engine. */
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { CLI, DAY } from "./commands.mjs";
import { interleaved } from "./measure.mjs";
import { besides, table } from "./tables.mjs";

const PLAIN = fileURLToPath(new URL("plain.mjs", import.meta.url));
const OURS = "spotface, full set";

/**
 * Measures both, file to JSON file, and prints the table.
 *
 * @param {string} what - the file, as the table names it
 * @param {string} file
 * @param {string} folder - for the outputs
 * @param {number} rounds
 * @returns the figures of ours
 */
export async function fullSet(what, file, folder, rounds) {
  const set = ["--set", "full", "--as-of", DAY];
  const programs = [
    [OURS, () => [CLI, "screen", file, ...set, "--result", join(folder, "full.json"), "--overwrite"]],
    ["plain pipeline", () => [PLAIN, file, join(folder, "plain.json"), "full", DAY]],
  ];
  const runs = await interleaved(programs, rounds);
  const ours = runs.get(OURS);
  table([
    [`${what} to JSON`, "time", "processor", "peak memory", "to ours"],
    ...programs.map(([name]) => besides(name, runs.get(name), [ours])),
  ]);
  return { full: ours.wall, fullKib: ours.peakKib };
}
