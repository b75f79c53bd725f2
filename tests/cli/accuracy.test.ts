import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { runCommand } from "../tools/run-command.js";

const folder = mkdtempSync(join(tmpdir(), "accuracy-"));

function written(name: string, text: string): string {
  const path = join(folder, name);
  writeFileSync(path, text);
  return path;
}

const SURVEY = written(
  "s.csv",
  [
    "Point ID;Machine type;Mounting method;Hole depth [mm] ±0.5;Thread depth (mm, caliper);Flat diameter [mm];Torque [Nm]",
    "P-1;pump;tapped hole;15.3;9.02;30.4;10 (torque wrench)",
    "P-2;fan;tapped hole;16;10;40;8",
    "",
  ].join("\n"),
);

interface Document {
  readonly digest: string;
  readonly points: readonly {
    readonly findings: readonly {
      readonly rule: string;
      readonly outcome: string;
      readonly facts: readonly { readonly accuracy: number | null; readonly assumed: string | null }[];
      readonly missing: readonly unknown[];
      readonly remedy: string | null;
    }[];
  }[];
}

async function screened(...args: readonly string[]): Promise<Document> {
  const run = await runCommand("screen", SURVEY, "--json", "--all-findings", "--as-of", "2026-11-25", ...args);
  if (run.code !== 0) throw new Error(run.err);
  return JSON.parse(run.out) as Document;
}

function finding(document: Document, point: number, rule: string) {
  return document.points[point]?.findings.find((one) => one.rule === rule);
}

describe("how accurate a survey is", () => {
  it("is told in findings, with how accurately to measure again; the audit agrees", async () => {
    const document = await screened("--audit");
    expect(finding(document, 0, "hole-depth")).toMatchObject({
      outcome: "undecided",
      facts: [{ accuracy: 0.5, assumed: "± 0.5 mm as stated for its column" }],
      missing: [{ fact: "hole_depth", reason: "too-close", measureTo: { accuracy: 0.3, unit: "mm" } }],
      remedy: "measure the hole depth again, to ± 0.3 mm or better",
    });
    expect(finding(document, 0, "thread-depth")).toMatchObject({
      outcome: "undecided",
      facts: [{ accuracy: 0.05, assumed: "± 0.05 mm of a caliper" }],
    });
    expect(finding(document, 0, "tightening-torque")).toMatchObject({ outcome: "undecided" });
    // A bare number stays exact.
    expect(finding(document, 0, "seat-diameter")).toMatchObject({ outcome: "pass", facts: [{ accuracy: null }, {}] });
    for (const rule of ["hole-depth", "thread-depth", "tightening-torque"]) {
      expect(finding(document, 1, rule)).toMatchObject({ outcome: "pass" });
    }
  });

  it("is settled by site file, column file and option, each of which changes the digest", async () => {
    const site = written("site.yaml", "machineTypes: { pump: { measuredBy: { flat_diameter: steel-rule } } }\n");
    const columns = written("c.yaml", 'columns: [{ heading: "Flat diameter", fact: flat_diameter, accuracy: 2 % }]\n');
    const runs = [
      await screened(),
      await screened("--site-file", site),
      await screened("--columns", columns),
      await screened("--column", "Flat diameter=flat_diameter mm ±0.1"),
    ];
    expect(runs.map((run) => finding(run, 0, "seat-diameter")?.outcome)).toEqual([
      "pass",
      "undecided",
      "undecided",
      "pass",
    ]);
    expect(finding(runs[1] as Document, 0, "seat-diameter")?.facts[0]?.assumed).toBe("± 0.5 mm of a steel rule");
    expect(new Set(runs.map(({ digest }) => digest)).size).toBe(4);
  });

  it("is refused at its place where a way cannot measure the fact", async () => {
    const site = written("wrong.yaml", "measuredBy: { target_torque: caliper }\n");
    const run = await runCommand("screen", SURVEY, "--json", "--site-file", site);
    expect(run.code).toBe(2);
    expect(run.err).toContain('wrong.yaml:1:30: a caliper does not measure "target_torque", a torque');
  });

  it("stands in the report on columns, in its JSON, and in the draft", async () => {
    const draft = join(folder, "draft.yaml");
    const shown = await runCommand("columns", SURVEY, "--write", draft);
    expect(shown.code).toBe(0);
    expect(shown.out).toContain('"Hole depth [mm] ±0.5": ± 0.5 mm as stated for its column (stated in the heading)');
    expect(readFileSync(draft, "utf8")).toContain('accuracy: "0.5 mm"');
    expect(readFileSync(draft, "utf8")).toContain("measuredBy: caliper");
    const { sheets } = JSON.parse((await runCommand("columns", SURVEY, "--json", "--columns", draft)).out);
    expect(sheets[0].tables[0].columns[4].accuracy).toMatchObject({
      plusMinus: 0.05,
      percent: 0,
      way: "caliper",
      words: "± 0.05 mm of a caliper",
      why: expect.stringContaining("column file"),
    });
  });
});
