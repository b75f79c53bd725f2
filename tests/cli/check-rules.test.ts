import { mkdirSync, mkdtempSync, renameSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { bookOf, GOOD_CASES, ONE_OF_EACH, wallRule } from "../proving/small-rule.js";
import { smallFiles } from "../rulebook/small-book.js";
import { runCommand } from "../tools/run-command.js";

/** A folder with the small book and one rule about a wall. */
function bookWith(cases: readonly string[], more: Readonly<Record<string, string>> = {}): string {
  const folder = mkdtempSync(join(tmpdir(), "check-rules-"));
  const own = {
    "hole/thread-depth.yaml": null,
    "speed/slow.yaml": null,
    "conditions/outdoors.yaml": null,
    "seat/thin-wall.yaml": wallRule(cases, more),
  };
  for (const { path, text } of smallFiles(own)) {
    mkdirSync(dirname(join(folder, path)), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  return folder;
}

interface Sarif {
  readonly version: string;
  readonly runs: readonly {
    readonly tool: { readonly driver: { readonly name: string; readonly rules: readonly { readonly id: string }[] } };
    readonly results: readonly {
      readonly ruleId: string;
      readonly level: string;
      readonly message: { readonly text: string };
      readonly locations: readonly {
        readonly physicalLocation: {
          readonly artifactLocation: { readonly uri: string };
          readonly region: { readonly startLine: number; readonly startColumn: number };
        };
      }[];
    }[];
  }[];
}

describe("spotface check-rules", () => {
  it("runs the cases and says so, with the digest of the book", async () => {
    const run = await runCommand("check-rules", bookWith(GOOD_CASES));
    expect(run).toMatchObject({ code: 0, err: "" });
    expect(run.out).toContain("small book 1.0.0: 1 rule, 1 sensor model, 2 tables, 11 case runs, 0 not as expected\n");
    expect(run.out).toContain(`digest ${bookOf(wallRule(GOOD_CASES)).digest}\n`);
  });

  it("names a case that comes out differently by its place, with exit code 1", async () => {
    const wrong = GOOD_CASES.map((line) => line.replace("wall_thickness: 3 mm", "wall_thickness: 2.9 mm"));
    const folder = bookWith(wrong);
    const run = await runCommand("check-rules", folder);
    expect(run.code).toBe(1);
    expect(run.err).toBe(
      `${folder}/seat/thin-wall.yaml:13:5: case "thick enough" (proposed): expected pass, found fail [case]\n`,
    );
  });

  it("names a mistake by its place and shows the line, with exit code 2", async () => {
    const folder = bookWith(GOOD_CASES, { judges: "wall_thicknes" });
    const run = await runCommand("check-rules", folder);
    expect(run.code).toBe(2);
    expect(run.out).toBe("");
    expect(run.err.split("\n").slice(0, 2)).toEqual([
      expect.stringMatching(/thin-wall\.yaml:6:9: .*did you mean "wall_thickness"\? \[unknown-fact\]$/),
      "    judges: wall_thicknes",
    ]);
    expect(run.err).toContain("1 mistake; nothing was run");
  });

  it("does not leave out a rule in silence that was saved under a name with .txt behind it", async () => {
    const folder = bookWith(GOOD_CASES);
    renameSync(join(folder, "seat/thin-wall.yaml"), join(folder, "seat/thin-wall.yaml.txt"));
    writeFileSync(join(folder, "seat/other.yaml"), wallRule(GOOD_CASES).replace("id: thin-wall", "id: other"));
    const run = await runCommand("check-rules", folder);
    expect(run).toMatchObject({ code: 2, err: expect.stringContaining("thin-wall.yaml.txt:1:1: a name that ends so") });
  });

  it("says what no case shows and what none would notice, only where asked, and fails for it with --complete", async () => {
    const folder = bookWith(ONE_OF_EACH);
    expect((await runCommand("check-rules", folder)).out).not.toContain("Not shown");
    const shown = await runCommand("check-rules", folder, "--coverage");
    expect(shown.code).toBe(0);
    expect(shown.out).toContain(`${folder}/seat/thin-wall.yaml:7:51: thin-wall: at the limit of below 3 mm\n`);
    expect(shown.out).not.toContain("Noticed by no case");
    const altered = await runCommand("check-rules", folder, "--altered");
    expect(altered.code).toBe(0);
    expect(altered.out).toContain("thin-wall: fail: below becomes atOrBelow\n");
    expect((await runCommand("check-rules", folder, "--complete")).code).toBe(1);
    expect((await runCommand("check-rules", bookWith(GOOD_CASES), "--complete")).code).toBe(0);
  });

  it("prints the same as JSON", async () => {
    const run = await runCommand("check-rules", bookWith(ONE_OF_EACH), "--coverage", "--altered", "--json");
    const check = JSON.parse(run.out) as {
      coverage: { counts: { kind: string; asked: number; shown: number }[] };
      alterations: { unnoticed: { suggestion: { yaml: string } | null }[] };
      cases: { runs: number; wrong: unknown[] };
    };
    expect(check.cases).toEqual({ runs: 4, wrong: [] });
    expect(check.coverage.counts).toContainEqual({ kind: "limit", asked: 2, shown: 0 });
    expect(check.alterations.unnoticed.length).toBeGreaterThan(5);
    const broken = await runCommand("check-rules", bookWith(GOOD_CASES, { judges: "wall_thicknes" }), "--json");
    expect(JSON.parse(broken.out)).toMatchObject({
      rulebook: null,
      mistakes: [{ line: 6, lineText: "judges: wall_thicknes" }],
    });
  });

  it("prints the same as SARIF 2.1.0: version, tool, and results with place and level", async () => {
    const folder = bookWith(ONE_OF_EACH);
    const run = await runCommand("check-rules", folder, "--complete", "--sarif");
    const sarif = JSON.parse(run.out) as Sarif;
    expect(sarif.version).toBe("2.1.0");
    const [first] = sarif.runs;
    expect(first?.tool.driver.name).toBe("spotface");
    const ids = new Set(first?.tool.driver.rules.map(({ id }) => id));
    expect([...ids]).toEqual(["not-noticed", "not-shown"]);
    for (const { ruleId, level, message, locations } of first?.results ?? []) {
      expect(ids.has(ruleId)).toBe(true);
      expect(level).toBe("warning");
      expect(message.text).toMatch(/; add - \{ name: /);
      expect(locations[0]?.physicalLocation.artifactLocation.uri).toMatch(/\/seat\/thin-wall\.yaml$/);
      expect(locations[0]?.physicalLocation.region.startLine).toBeGreaterThan(0);
    }
    const broken = await runCommand("check-rules", bookWith(GOOD_CASES, { judges: "wall_thicknes" }), "--sarif");
    const [result] = (JSON.parse(broken.out) as Sarif).runs[0]?.results ?? [];
    expect(result).toMatchObject({ ruleId: "unknown-fact", level: "error" });
  });

  it("lists limits whose day of review has passed, and no others", async () => {
    const limits = "[{ from: 2026-01-01, until: null, reviewBy: 2027-01-01, fail: { below: 3 mm }, cites: [rings] }]";
    const folder = bookWith(GOOD_CASES, { limits });
    expect((await runCommand("check-rules", folder, "--as-of", "2027-01-01")).out).not.toContain("reviewed");
    const late = await runCommand("check-rules", folder, "--as-of", "2027-01-02");
    expect(late.code).toBe(0);
    expect(late.out).toContain("thin-wall: to be reviewed by 2027-01-01\n");
    const json = await runCommand("check-rules", folder, "--as-of", "2027-01-02", "--json");
    expect(JSON.parse(json.out)).toMatchObject({ reviewsDue: [{ rule: "thin-wall", reviewBy: "2027-01-01" }] });
  });

  it("refuses two forms of output at once", async () => {
    expect(await runCommand("check-rules", "--json", "--sarif")).toMatchObject({ code: 2, out: "" });
  });
});
