import { cpSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const folder = mkdtempSync(join(tmpdir(), "stored-results-"));
const here = (name: string): string => join(folder, name);
const SURVEY = "samples/survey.xlsx";
const BOOK = here("book");
const [OLD, NEW] = [here("old.json"), here("new.ndjson")];

/** Stores what screening prints. */
async function store(file: string, form: "--json" | "--ndjson", ...args: readonly string[]): Promise<void> {
  const run = await runCommand("screen", ...args, form);
  if (run.code !== 0) throw new Error(run.err);
  writeFileSync(file, run.out);
}

interface Side {
  readonly digest: string;
  readonly run: { readonly stored: unknown; readonly asOf: string; readonly set: string; readonly site: string | null };
}

interface Changes {
  readonly before: Side;
  readonly after: Side;
  readonly differences: Readonly<Record<string, unknown>>;
  readonly things: unknown;
  readonly turned: { readonly points: number; readonly onlyBefore: number; readonly onlyAfter: number };
}

async function changes(...args: readonly string[]): Promise<Changes> {
  const run = await runCommand("what-changes", ...args, "--json");
  if (run.code !== 0) throw new Error(run.err);
  return JSON.parse(run.out) as Changes;
}

beforeAll(async () => {
  cpSync(projectPath("rules"), BOOK, { recursive: true });
  const cure = join(BOOK, "bond/adhesive-cure.yaml");
  writeFileSync(cure, readFileSync(cure, "utf8").replace("below: 15 min", "below: 20 min"));
  const run = [SURVEY, "--set", "full", "--as-of", "2026-03-01", "--site", "X"];
  await store(OLD, "--json", ...run);
  await store(NEW, "--ndjson", ...run, "--rules", BOOK);
});

describe("spotface what-changes with stored results", () => {
  it("finds what comparing the two rulebooks finds, with either side or both stored", async () => {
    const settings = ["--set", "full", "--as-of", "2026-03-01", "--site", "X"];
    const { turned } = await changes(SURVEY, "--after", BOOK, ...settings);
    expect(turned.points).toBeGreaterThan(40);
    expect(JSON.stringify(turned)).toContain("adhesive-cure");
    for (const args of [
      ["--before", OLD, "--after", NEW],
      [SURVEY, "--before", OLD, "--after", BOOK],
      [SURVEY, "--after", NEW],
    ]) {
      const stored = await changes(...args);
      expect(stored.turned).toEqual(turned);
      expect(stored.things).toBeNull();
      expect(stored.differences).toEqual({
        rulebook: true,
        asOf: false,
        set: false,
        site: false,
        surveysOnlyBefore: [],
        surveysOnlyAfter: [],
      });
    }
  });

  it("screens in the way of the stored result, and in another one only if told so", async () => {
    const { before, after } = await changes(SURVEY, "--before", OLD);
    expect(after.run).toMatchObject({ stored: null, asOf: "2026-03-01", set: "full", site: "X" });
    expect(before.run.stored).toMatchObject({ file: OLD, digest: expect.stringMatching(/^[0-9a-f]{64}$/) });
    const other = await changes(SURVEY, "--before", OLD, "--set", "core", "--as-of", "2026-04-01");
    expect(other.differences).toMatchObject({ rulebook: false, asOf: true, set: true });
  });

  it("says both digests, where the reasons come from, and what the results rest on", async () => {
    const { code, out } = await runCommand("what-changes", "--before", OLD, "--after", NEW, "--fail-on-change");
    const { before, after } = await changes("--before", OLD, "--after", NEW);
    expect(code).toBe(1);
    for (const { digest } of [before, after]) expect(out).toContain(digest.slice(0, 12));
    const words = out.replace(/\s+/g, " ");
    expect(words).toContain("its reasons are the texts stored in it");
    expect(words).toContain("the rulebooks are not the same");
    expect(words).toMatch(/\d+ points? of 49 turned/);
    const again = await runCommand("what-changes", SURVEY, "--before", OLD, "--fail-on-change");
    expect(again).toMatchObject({ code: 0, out: expect.stringContaining("both rest on the same rulebook") });
  });

  it("takes rows without an id for the same only in the same file", async () => {
    const survey = here("nameless.csv");
    const rows = (depth: number): string => `Machine;Hole depth (mm);Mounting\nFan;${depth};tapped hole\n`;
    writeFileSync(survey, rows(12));
    await store(here("one.json"), "--json", survey);
    await store(here("same.json"), "--json", survey, "--as-of", "2026-05-01");
    writeFileSync(survey, rows(16));
    await store(here("other.json"), "--json", survey);
    const same = await changes("--before", here("one.json"), "--after", here("same.json"));
    expect(same.turned).toMatchObject({ points: 1, onlyBefore: 0, onlyAfter: 0 });
    const other = await changes("--before", here("one.json"), "--after", here("other.json"));
    expect(other.turned).toMatchObject({ points: 0, onlyBefore: 1, onlyAfter: 1 });
    expect(other.differences).toMatchObject({ surveysOnlyBefore: [survey], surveysOnlyAfter: [survey] });
  });

  it.each([
    ["no JSON", () => "{ not json", "it is not JSON"],
    ["another document", () => JSON.stringify({ points: [] }), '"digest" is missing'],
    ["a document that breaks off", () => readFileSync(OLD, "utf8").slice(0, -200), "breaks off"],
    ["lines that break off", () => `${readFileSync(NEW, "utf8").split("\n").slice(0, 9).join("\n")}\n`, "breaks off"],
    [
      "a verdict that is none",
      () => readFileSync(OLD, "utf8").replace('"verdict":"fail"', '"verdict":"fine"'),
      "expected pass, warn, fail",
    ],
    [
      "a row that is none",
      () => readFileSync(OLD, "utf8").replace(/"row":\d+,"verdict"/, '"row":"x","verdict"'),
      "/points/0/row",
    ],
  ])("refuses %s", async (_, text, says) => {
    const file = here("bad.json");
    writeFileSync(file, text());
    for (const args of [
      ["--before", file, "--after", NEW],
      ["--before", OLD, "--after", file],
    ]) {
      const run = await runCommand("what-changes", ...args);
      expect(run).toMatchObject({ code: 2, out: "", err: expect.stringContaining(says) });
      expect(run.err).toContain(file);
    }
  });

  it("refuses what cannot be meant", async () => {
    const err = async (...args: readonly string[]): Promise<string> => {
      const run = await runCommand("what-changes", ...args);
      expect(run).toMatchObject({ code: 2, out: "" });
      return run.err;
    };
    expect(await err("--before", OLD, "--after", NEW, SURVEY)).toContain("leave it out");
    expect(await err("--before", OLD, "--after", NEW, "--set", "core")).toContain("--set: both sides are stored");
    expect(await err("--before", OLD)).toContain("give the survey files");
    expect(await err("--before", OLD, "--after", OLD)).toContain("one result");
    expect(await err("--before", here("gone.json"), "--after", NEW)).toContain("gone.json");
    expect(await err(SURVEY, "--before", OLD, "--stage", "installed")).toContain("one stage only");
    const built = here("built.json");
    await store(built, "--json", "samples/built.csv", "--stage", "installed");
    expect(await err("--before", OLD, "--after", built)).toContain("one stage only");
  });
});
