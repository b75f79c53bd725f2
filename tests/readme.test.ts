import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { runCommandLine } from "../src/cli/program.js";
import { readMapping } from "../src/handover/index.js";
import { loadRulebook, type OverlayFiles, readColumnFile, readSiteFile, waysOn } from "../src/rulebook/index.js";
import { readDeviations } from "../src/screening/index.js";
import { fakeTerminal } from "./tools/fake-terminal.js";
import { projectPath, shippedFiles, shippedRulebook } from "./tools/shipped.js";

const readme = readFileSync(projectPath("README.md"), "utf8");

/** Fenced blocks of a language, in their order. */
function blocks(language: string): readonly string[] {
  return [...readme.matchAll(new RegExp(`\`\`\`${language}\n([^]*?)\`\`\``, "g"))].map((match) => match[1] ?? "");
}

/** The sample overlay with nothing but one change file. */
function overlayWith(change: string): OverlayFiles {
  const manifest = readFileSync(projectPath("samples/site-book/overlay.yaml"), "utf8");
  const files = [
    { path: "site/overlay.yaml", text: manifest },
    { path: "site/changes/one.yaml", text: change },
  ];
  return { root: "site", files };
}

async function screened(...args: readonly string[]): Promise<string> {
  const terminal = fakeTerminal();
  const folder = process.cwd();
  process.chdir(projectPath("."));
  try {
    await runCommandLine(["screen", "samples/survey.xlsx", "--site-file", "samples/site.yaml", ...args], terminal);
  } finally {
    process.chdir(folder);
  }
  return terminal.said.out;
}

/** Every command that it names. */
const COMMANDS = [...new Set([...readme.matchAll(/npx spotface ([a-z]+(?:-[a-z]+)*) /g)].map(([, name = ""]) => name))];

describe("the README", () => {
  it("shows the report that its first command prints", async () => {
    const report = await screened();
    const shown = (blocks("text")[0] ?? "").split("\n").filter((line) => line !== "" && !line.startsWith("Written: "));
    expect(shown.length).toBeGreaterThan(12);
    for (const line of shown) expect(report.split("\n")).toContain(line);
  });

  it("shows a point as the result has it", async () => {
    const shown = JSON.parse(blocks("json")[0] ?? "") as { id: string };
    const result = JSON.parse(await screened("--json")) as { points: { id: string }[] };
    expect(result.points.find((point) => point.id === shown.id)).toEqual(shown);
  });

  it("names only options that there are", async () => {
    const terminal = fakeTerminal();
    for (const command of COMMANDS) await runCommandLine([command, "--help"], terminal);
    const named = new Set(readme.match(/--[a-z][a-z-]+/g));
    expect(COMMANDS.length).toBeGreaterThan(12);
    for (const option of named) expect(terminal.said.out, option).toContain(option);
  });

  it("shows column, site, deviation and change files that can be read", async () => {
    const rulebook = await shippedRulebook();
    const rules = await shippedFiles();
    const ways = waysOn(rulebook.ways, "2026-11-26");
    const readings = blocks("yaml").map((text) => {
      const file = { path: "README.md", text };
      if (text.includes("changes:")) return loadRulebook(rules, { root: "rules", over: [overlayWith(text)] });
      if (text.includes("mapping:")) return readMapping(file, rulebook);
      if (text.includes("deviations:")) return readDeviations(file, rulebook);
      return text.includes("columns:") ? readColumnFile(file, ways) : readSiteFile(file, rulebook.models, ways);
    });
    expect(readings.length).toBeGreaterThan(1);
    for (const [index, { ok }] of readings.entries()) expect(ok, blocks("yaml")[index]).toBe(true);
  });

  it("runs as the CI does", () => {
    const commands = blocks("sh").map((block) => block.trim());
    expect(readFileSync(projectPath(".ci/run"), "utf8")).toContain(commands[1]);
  });
});
