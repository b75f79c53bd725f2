import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, expect, it } from "vitest";
import { isOneSentence, runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

let folder = "";
const here = (name: string): string => join(folder, name);
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), "spotface-folders-"));
  writeFileSync(here("file.csv"), "not to be touched");
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const SAMPLE = projectPath("samples/survey-full.xlsx");
const COMMANDS: readonly (readonly [name: string, ...args: string[]])[] = [
  ["screen", SAMPLE],
  ["export", SAMPLE, "--site", "North", "--mapping", projectPath("samples/mappings/plain.yaml")],
  ["work-packs", SAMPLE, "--set", "full"],
];

it.each(COMMANDS.flatMap((command) => ["file.csv", "file.csv/deeper"].map((out) => ({ command, out }))))(
  "$command.0 says that it cannot write into $out, which is no folder",
  async ({ command: [name, ...args], out }) => {
    const run = await runCommand(name, ...args, "--out", here(out));
    expect(run).toMatchObject({ code: 2, out: "" });
    for (const line of run.err.split("\n").filter((one) => one !== "")) {
      expect(isOneSentence(line), line).toBe(true);
      expect(line).toMatch(/it is a file, or part of its path is; name a folder|its folder is a file/);
    }
    expect(readFileSync(here("file.csv"), "utf8")).toBe("not to be touched");
  },
);
