import { cpSync, existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { SaxesParser } from "saxes";
import { describe, expect, it } from "vitest";
import { runCommand, steersTerminal } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const folder = mkdtempSync(join(tmpdir(), "move-limit-"));
const here = (name: string): string => join(folder, name);
const CURE = ["samples/survey.xlsx", "--rule", "adhesive-cure"];

interface Step {
  readonly value: number;
  readonly inForce: boolean;
  readonly outcomes: Readonly<Record<string, number>>;
  readonly verdicts: Readonly<Record<string, number>>;
}

interface Document {
  readonly limit: Readonly<Record<string, unknown>>;
  readonly points: number;
  readonly steps: readonly Step[];
  readonly stretches: readonly { readonly from: number; readonly to: number }[];
}

async function moved(...args: readonly string[]): Promise<Document> {
  const run = await runCommand("move-limit", ...args, "--json");
  if (run.code !== 0) throw new Error(run.err);
  return JSON.parse(run.out) as Document;
}

/** Every text of an SVG, by the element it stands in; throws where it is not well-formed XML. */
function textsOf(svg: string): ReadonlyMap<string, readonly string[]> {
  const texts = new Map<string, string[]>();
  const open: string[] = [];
  const parser = new SaxesParser({ xmlns: true });
  parser.on("opentag", ({ name }) => open.push(name));
  parser.on("closetag", () => open.pop());
  parser.on("text", (text) => {
    const name = open.at(-1) ?? "";
    texts.set(name, [...(texts.get(name) ?? []), text]);
  });
  parser.on("error", (error) => {
    throw error;
  });
  parser.write(svg).close();
  return texts;
}

describe("spotface move-limit", () => {
  it("prints a line per value, marks the one in force and those at which counts move", async () => {
    const run = await runCommand("move-limit", ...CURE, "--from", "10", "--to", "1 h", "--step", "5 min");
    expect(run).toMatchObject({ code: 0, err: "" });
    const lines = run.out.split("\n");
    expect(lines.filter((line) => /^ +\d/.test(line))).toHaveLength(11);
    expect(lines.filter((line) => line.includes("in force  "))).toHaveLength(1);
    expect(lines.find((line) => line.includes("in force  "))).toMatch(/^ +15 /);
    expect(run.out).toContain('the number in "fail below"');
    expect(lines.every((line) => [...line].length <= 110)).toBe(true);
    expect(steersTerminal(run.out.replaceAll("\n", ""))).toBe(false);
  });

  it("lists every value at which a count moves", async () => {
    const { out } = await runCommand("move-limit", ...CURE, "--from", "10", "--to", "60", "--at-changes");
    const { stretches } = await moved(...CURE, "--from", "10", "--to", "60");
    expect(stretches.length).toBeGreaterThan(3);
    for (const { from, to } of stretches.slice(1)) expect(out).toContain(`above ${from} to ${to} `);
  });

  it("counts every point once, in both ways", async () => {
    const { steps, points, limit } = await moved(...CURE);
    expect(limit).toMatchObject({ name: "fail below", moves: "number", unit: "min", inForce: 15 });
    const sum = (counts: Readonly<Record<string, number>>): number => Object.values(counts).reduce((a, b) => a + b);
    for (const { outcomes, verdicts } of steps) expect([sum(outcomes), sum(verdicts)]).toEqual([points, points]);
  });

  it("writes the same as a table", async () => {
    const csv = here("cure.csv");
    const { steps } = await moved(...CURE, "--csv", csv);
    const rows = parse(readFileSync(csv), { columns: true }) as Readonly<Record<string, string>>[];
    expect(rows.map((row) => [row.value, row["in force"], row.fail, row.undecided, row["points pass"]])).toEqual(
      steps.map(({ value, inForce, outcomes, verdicts }) => [
        String(value),
        inForce ? "yes" : "no",
        String(outcomes.fail),
        String(outcomes.undecided),
        String(verdicts.pass),
      ]),
    );
  });

  it("draws a chart that says everything in words, too, and fetches nothing", async () => {
    const file = here("cure.svg");
    await runCommand("move-limit", ...CURE, "--chart", file);
    const svg = readFileSync(file, "utf8");
    const texts = textsOf(svg);
    expect(texts.get("title")).toEqual(["adhesive-cure: what comes out as its limit moves"]);
    expect(texts.get("desc")?.join()).toContain("At the limit in force, 15 min: the rule fails 2");
    for (const words of ["■ fail: 2", "◇ undecided: 2", "● pass: 5", "in force: 15 min"]) {
      expect(texts.get("text")).toContain(words);
    }
    expect(texts.get("text")).toContain("limit of time between bonding and tightening, min");
    expect(svg).toContain("prefers-color-scheme:dark");
    expect(svg.replace('xmlns="http://www.w3.org/2000/svg"', "")).not.toMatch(/https?:|<script|<image|href|@import/);
    const patterns = [...svg.matchAll(/<pattern id="of-(\w+)"[^>]*>(.*?)<\/pattern>/g)];
    const drawings = patterns.map(([, kind = "", drawing = ""]) => drawing.replaceAll(kind, ""));
    expect(new Set(drawings).size).toBe(4);
    await runCommand("move-limit", ...CURE, "--chart", file, "--overwrite");
    expect(readFileSync(file, "utf8")).toBe(svg);
  });

  it("draws the step of a count where it is, at the height that it has", async () => {
    const file = here("steps.svg");
    await runCommand("move-limit", ...CURE, "--from", "10", "--to", "60", "--chart", file);
    const { stretches } = await moved(...CURE, "--from", "10", "--to", "60");
    const [, failing = ""] = /<path d="(M[^"]*)" fill="url\(#of-fail\)"/.exec(readFileSync(file, "utf8")) ?? [];
    const places = [...failing.matchAll(/(-?[\d.]+),(-?[\d.]+)/g)].map(([, x]) => Number(x));
    for (const { from } of stretches) {
      const x = 64 + ((from - 10) / 50) * 656;
      expect(places.some((place) => Math.abs(place - x) < 0.01)).toBe(true);
    }
  });

  it("keeps texts of a rulebook from becoming markup", async () => {
    const book = here("book");
    cpSync(projectPath("rules"), book, { recursive: true });
    const path = join(book, "bond/adhesive-cure.yaml");
    writeFileSync(path, readFileSync(path, "utf8").replace(/^title: .*$/m, 'title: "a </text><script>x & y"'));
    const file = here("hostile.svg");
    const run = await runCommand("move-limit", ...CURE, "--rules", book, "--chart", file);
    expect(run.code).toBe(0);
    expect(textsOf(readFileSync(file, "utf8")).get("text")).toContain("a </text><script>x & y");
  });

  it("writes over nothing unasked", async () => {
    const file = here("kept.svg");
    writeFileSync(file, "mine");
    const run = await runCommand("move-limit", ...CURE, "--chart", file, "--csv", here("beside.csv"));
    expect(run).toMatchObject({ code: 2, out: "", err: expect.stringContaining("kept.svg") });
    expect(readFileSync(file, "utf8")).toBe("mine");
    expect(existsSync(here("beside.csv"))).toBe(false);
    const survey = await runCommand("move-limit", ...CURE, "--csv", "samples/survey.xlsx", "--overwrite");
    expect(survey.code).toBe(2);
  });

  it.each([
    [["--rule", "adhesive-cur"], 'did you mean "adhesive-cure"'],
    [["--rule", "flat-margin"], "--set full"],
    [["--rule", "supply-voltage"], '"fail outside low"'],
    [["--rule", "seat-material"], "compares nothing with a number"],
    [["--rule", "seat-diameter"], "--model: the surveys name"],
    [["--rule", "adhesive-cure", "--bound", "warn below"], 'it has "fail below" (15 min)'],
    [["--rule", "adhesive-cure", "--model", "baseline"], "leave --model out"],
    [["--rule", "adhesive-cure", "--from", "10 mm"], "--from:"],
    [["--rule", "adhesive-cure", "--step", "x"], "--step:"],
    [["--rule", "adhesive-cure", "--as-of", "2020-01-01"], "no limit in force"],
    [["--rule", "adhesive-cure", "--set", "none"], 'no set "none"'],
  ])("says what to do about %j", async (args, says) => {
    const run = await runCommand("move-limit", "samples/survey.xlsx", ...args);
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toContain(says);
    expect(run.err.trimEnd().split("\n")).toHaveLength(1);
  });
});
