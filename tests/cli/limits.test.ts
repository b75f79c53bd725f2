import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type CommandRun, runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

describe("reading limits on the command line", () => {
  const survey = projectPath("samples/survey.xlsx");
  const text = projectPath("samples/survey.csv");

  it.each([
    ["file-bytes", survey, "100"],
    ["sheet-part-bytes", survey, "100"],
    ["other-part-bytes", survey, "100"],
    ["rows", text, "3"],
    ["cells", survey, "20"],
    ["columns", text, "3"],
    ["merges", survey, "1"],
  ])("holds %s, and the refusal names the option", async (name, file, value) => {
    const run: CommandRun = await runCommand("screen", file, "--limit", `${name}=${value}`);
    expect(run.code).toBe(2);
    expect(run.err).toContain(`or allow more with --limit ${name}=NUMBER`);
    const opened = await runCommand("screen", file, "--limit", `${name}=${name === "columns" ? 65_535 : 50_000_000}`);
    expect(opened.code).toBe(0);
  });

  it("holds cell-characters, and the cell that is too long says so", async () => {
    const survey = join(mkdtempSync(join(tmpdir(), "limits-")), "s.csv");
    writeFileSync(survey, "Point;Machine\nP1;Pump\nP2;Circulating pump\n");
    const run = await runCommand("screen", survey, "--json", "--limit", "cell-characters=8");
    expect(run.code).toBe(0);
    expect(run.out).toContain("or allow more with --limit cell-characters=NUMBER");
  });
});
