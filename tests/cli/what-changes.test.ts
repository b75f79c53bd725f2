import { execFileSync } from "node:child_process";
import { cpSync, existsSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { screenFiles } from "../../src/index.js";
import { runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const SURVEYS = [
  "samples/survey.xlsx",
  "tests/data/surveys/dunkelforst.xlsx",
  "tests/data/surveys/quillmoor.xlsx",
  "tests/data/surveys/tallgrass.csv",
].filter((path) => existsSync(path));

/** A copy of the shipped rulebook with some texts in its files replaced. */
function bookWith(edits: readonly (readonly [file: string, from: string, to: string])[]): string {
  const folder = join(mkdtempSync(join(tmpdir(), "what-changes-")), "book");
  cpSync(projectPath("rules"), folder, { recursive: true });
  for (const [file, from, to] of edits) edit(join(folder, file), from, to);
  return folder;
}

function edit(path: string, from: string, to: string): void {
  const text = readFileSync(path, "utf8");
  if (!text.includes(from)) throw new Error(`${path} holds no "${from}"`);
  writeFileSync(path, text.replace(from, to));
}

interface Changes {
  readonly things: readonly {
    readonly kind: string;
    readonly id: string;
    readonly leaves: readonly { path: string[] }[];
  }[];
  readonly turned: {
    readonly points: number;
    readonly turned: readonly { readonly file: string; readonly sheet: string | null; readonly row: number }[];
    readonly byRule: readonly { readonly rule: string }[];
  };
}

async function changes(...args: readonly string[]): Promise<Changes> {
  const run = await runCommand("what-changes", ...args, "--json", "--as-of", "2026-06-01", "--site", "X");
  if (run.code !== 0) throw new Error(run.err);
  return JSON.parse(run.out) as Changes;
}

/** Every point with its verdict and its listed findings, as one text per point. */
async function pointTexts(rules: string | undefined): Promise<ReadonlyMap<string, string>> {
  const options = { siteName: "X", asOf: "2026-06-01", set: "full", ...(rules === undefined ? {} : { rules }) };
  const run = await screenFiles(SURVEYS, options);
  if (!run.ok) throw new Error(JSON.stringify(run));
  const texts = new Map<string, string>();
  for (const { file, sheet, row, verdict, findings } of run.screening.points()) {
    const said = findings.map(({ rule, outcome }) => `${rule} ${outcome}`).sort();
    texts.set(JSON.stringify([file, sheet, row]), JSON.stringify([verdict, said]));
  }
  return texts;
}

describe("spotface what-changes", () => {
  it.each([
    ["bond/adhesive-cure.yaml", "below: 15 min", "below: 20 min"],
    ["models/baseline.yaml", "value: 9 mm", "value: 10 mm"],
    ["seat/seat-roughness.yaml", "above: 1.6 µm", "above: 0.8 µm"],
  ])("names the points that screening twice finds to be others: %s, %s to %s", async (file, from, to) => {
    const after = bookWith([[file, from, to]]);
    const { turned } = await changes(...SURVEYS, "--after", after, "--set", "full");
    const [one, other] = [await pointTexts(undefined), await pointTexts(after)];
    const others = [...one].filter(([place, text]) => other.get(place) !== text).map(([place]) => place);
    expect(turned.points).toBe(one.size);
    expect(turned.turned.map((p) => JSON.stringify([p.file, p.sheet, p.row])).sort()).toEqual(others.sort());
  });

  it("says what is different in the books, and which changed rule turns nothing", async () => {
    const after = bookWith([
      ["bond/adhesive-cure.yaml", "below: 15 min", "below: 20 min"],
      ["fitting/voltage-as-computed.yaml", "plus: 1 V", "plus: 2 V"],
    ]);
    const { things } = await changes("samples/survey.xlsx", "--after", after, "--set", "full");
    expect(things.map(({ kind, id, leaves }) => [kind, id, leaves.map(({ path }) => path.join(" "))])).toEqual([
      ["rule", "adhesive-cure", ["limits 0 fail 0 bound value"]],
      ["rule", "voltage-as-computed", ["limits 0 warn 0 bounds 1 plus"]],
    ]);
    const run = await runCommand("what-changes", "samples/survey.xlsx", "--after", after, "--set", "full");
    expect(run.out).toContain("Changed, and turns nothing: voltage-as-computed\n");
    expect(run.out).toContain("limits > 0 > fail > 0 > bound > value: 15 becomes 20\n");
  });

  it("says the value of a model once, with its unit, and what stands for a rule that has no finding", async () => {
    const after = bookWith([["models/baseline.yaml", "value: 9 mm", "value: 10 mm"]]);
    const run = await runCommand("what-changes", "samples/survey.xlsx", "--after", after);
    expect(run.out).toContain("\n    facts > model.thread_depth_min > 0: 9 mm becomes 10 mm\n\n");
    expect(run.out).toContain("no finding: the rule passes, does not apply or is not asked\n");
  });

  it("lists the points whose verdict turns first where not all can be listed", async () => {
    const rows = Array.from({ length: 120 }, (_, row) => {
      // Every other point fails by its hole already, so that its verdict stays.
      return `P-${row},pump,drive end,horizontal,9.5,${row % 2 === 0 ? 10 : 20},tapped hole`;
    });
    const survey = join(mkdtempSync(join(tmpdir(), "what-changes-")), "many.csv");
    const headings = "Asset tag,Component,Bearing position,Direction,Thread depth [mm],Hole depth [mm],Mounting method";
    writeFileSync(survey, `${[headings, ...rows].join("\n")}\n`);
    const after = bookWith([["models/baseline.yaml", "value: 9 mm", "value: 10 mm"]]);
    const run = await runCommand("what-changes", survey, "--after", after);
    expect(run.out).toContain("120 points of 120 would turn");
    const [, points = ""] = run.out.split("\nPoints, those whose verdict turns first\n");
    expect(points.match(/becomes ■ fail\n {4}thread-depth/g)).toHaveLength(50);
    expect(points).not.toContain("■ fail stays");
    expect(points).toContain("and 70 more; --json lists all");
  });

  it("names the row of a table that is another, by the choices that it is for", async () => {
    const after = bookWith([
      [
        "tables/mounting-methods.yaml",
        "adhesive-pad, table.usable_frequency: 5 kHz",
        "adhesive-pad, table.usable_frequency: 7 kHz",
      ],
    ]);
    const run = await runCommand("what-changes", "samples/survey.xlsx", "--after", after, "--set", "full");
    expect(run.out.replace(/\s+/g, " ")).toContain(
      "table mounting-methods: changed entries > 0 > rows > adhesive-pad > table.usable_frequency: 5000 becomes 7000 ",
    );
  });

  it("compares a folder with itself at a commit", async () => {
    const after = bookWith([]);
    const git = (...args: readonly string[]): void => {
      execFileSync("git", ["-C", after, "-c", "user.name=A", "-c", "user.email=a@example.org", ...args], {
        stdio: "ignore",
      });
    };
    git("init");
    git("add", ".");
    git("commit", "-m", "as it was");
    edit(join(after, "bond/adhesive-cure.yaml"), "below: 15 min", "below: 20 min");
    const args = ["samples/survey.xlsx", "--before", `${after}@HEAD`, "--after", after];
    const { things, turned } = await changes(...args);
    expect(things.map(({ id }) => id)).toEqual(["adhesive-cure"]);
    expect(new Set(turned.byRule.map(({ rule }) => rule))).toEqual(new Set(["adhesive-cure"]));
    expect((await runCommand("what-changes", ...args, "--fail-on-change")).code).toBe(1);
    const none = await runCommand("what-changes", "samples/survey.xlsx", "--before", `${after}@v9`, "--after", after);
    expect(none).toMatchObject({ code: 2, out: "", err: expect.stringContaining('there is no commit "v9"') });
  });

  it("refuses one rulebook on both sides, and a set that one of them lacks", async () => {
    expect((await runCommand("what-changes", "samples/survey.xlsx")).err).toContain("one rulebook");
    const after = bookWith([]);
    const run = await runCommand("what-changes", "samples/survey.xlsx", "--after", after, "--set", "fulll");
    expect(run).toMatchObject({ code: 2, err: expect.stringContaining('has no set "fulll"') });
  });
});
