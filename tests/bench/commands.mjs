/** The whole command, file to file, beside reading alone. */
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { interleaved } from "./measure.mjs";
import { besides, table } from "./tables.mjs";

export const CLI = fileURLToPath(new URL("../../dist/cli/main.js", import.meta.url));
const READERS = fileURLToPath(new URL("readers.mjs", import.meta.url));
const EDIT = fileURLToPath(new URL("edit.mjs", import.meta.url));
export const DAY = "2026-11-25";

/**
 * Measures the command with each of its outputs and prints the table.
 *
 * @param {string} what - the file, as the table names it
 * @param {string} file
 * @param {number} points - in the file
 * @param {string} folder - for the outputs
 * @param {number} rounds
 */
export async function commands(what, file, points, folder, rounds) {
  const screen = (...outputs) => [CLI, "screen", file, "--set", "core", "--as-of", DAY, "--overwrite", ...outputs];
  const programs = [
    ["reading alone", () => [READERS, "spotface", file]],
    ["written back, one column more", () => [EDIT, file, join(folder, "edited.xlsx"), String(points)]],
    ["to the terminal", () => screen()],
    ["to a JSON file", () => screen("--result", join(folder, "out.json"))],
    ["to a screened workbook", () => screen("--workbook", join(folder, "out.xlsx"))],
  ];
  const runs = await interleaved(programs, rounds);
  const reading = runs.get("reading alone");
  table([
    [`screen ${what}`, "time", "processor", "peak memory", "to reading alone"],
    ...programs.map(([name]) => besides(name, runs.get(name), [reading])),
  ]);
  return { reading, json: runs.get("to a JSON file"), writeBack: runs.get("written back, one column more") };
}
