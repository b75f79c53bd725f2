import { mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { runCommand } from "../tools/run-command.js";

const SAMPLE = ["samples/survey.xlsx", "--site-file", "samples/site.yaml", "--as-of", "2026-06-01"] as const;
const POINT = "P-1101, pump, non drive end, vertical";

describe("spotface why", () => {
  it("shows conditions, limits, facts with their cells as written, and sources", async () => {
    const run = await runCommand("why", ...SAMPLE, "--point", POINT, "--rule", "seat-diameter");
    expect(run).toMatchObject({ code: 0, err: "" });
    expect(run.out.split("\n")).toEqual([
      "Feed water pump 1, pump, non drive end, vertical (P-1101, pump, non drive end, vertical)",
      "samples/survey.xlsx > Halls 1 and 2, row 11",
      "■ fail",
      "",
      "■ fail  The flat, ground area is wide enough for the sensor (seat-diameter)",
      "  the flat is 28 mm across, the sensor needs 30 mm",
      expect.stringContaining("  to do: enough for this rule: diameter of the flat, ground area at least 30 mm"),
      expect.stringContaining("spot-face a wider flat"),
      "  applies always",
      "  limit in force from 2026-01-01, to be reviewed by 2028-01-01 (rules/seat/seat-diameter.yaml, line 8)",
      "    yes        fails if diameter of the flat, ground area is below 30 mm (seat diameter the model",
      "               needs)",
      "    distance to the nearest failing limit: -2 mm (-6.7 % of it)",
      "  facts",
      "    diameter of the flat, ground area: 28 mm",
      '      from M11 of "Halls 1 and 2": 28 under "Seat / Flat dia. (mm)", bare numbers read as mm',
      "    seat diameter the model needs: 30 mm",
      "      from rules/models/baseline.yaml, line 10",
      "  sources",
      "    the whole foot of the sensor rests on flat metal; a sensor that overhangs its seat rocks (common",
      "    practice)",
      "",
      "A verdict is a screening, not a permission. Local codes, the site's permit system and competent or",
      "licensed persons decide what is done.",
      "",
    ]);
  });

  it("shows the row of a table, what it was looked up by, and the sources of the table", async () => {
    const path = join(mkdtempSync(join(tmpdir(), "why-")), "pads.csv");
    writeFileSync(path, "Point ID;Mounting method;Highest frequency (Hz)\nP-1;adhesive pad;6000\n");
    const run = await runCommand("why", path, "--as-of", "2026-06-01", "--point", "P-1", "--set", "full");
    const lines = run.out.split("\n");
    const at = lines.indexOf("    highest frequency that the mounting carries: 5000 Hz");
    expect(lines.slice(at + 1, at + 4)).toEqual([
      "      from rules/tables/mounting-methods.yaml, line 15",
      "      mounting method: adhesive pad",
      '        from B2: "adhesive pad" under "Mounting method"',
    ]);
    expect(lines).toContain('    of the table "What mountings carry and ask for":');
  });

  it.each([["3a796607-c4d1-57b2-a63c-66bb14ee70c4"], ["Halls 1 and 2:11"], ["p-1101, PUMP, non drive end, vertical"]])(
    "finds the point by %s",
    async (point) => {
      const run = await runCommand("why", ...SAMPLE, "--point", point, "--rule", "seat-diameter");
      expect(run.code).toBe(0);
      expect(run.out).toContain("row 11\n");
    },
  );

  it("names rules that were not asked once, at the end", async () => {
    const run = await runCommand("why", ...SAMPLE, "--point", POINT, "--set", "full");
    const [told = "", silent = ""] = run.out.split("\nNot asked: ");
    expect(told).not.toContain("(bend-radius)");
    expect(silent.replace(/\s+/g, " ")).toContain("(bend-radius); it needs tightest bend radius of the cable");
    expect(told.indexOf("■ fail  ")).toBeLessThan(told.indexOf("● pass  "));
  });

  it("prints the same as JSON", async () => {
    const run = await runCommand("why", ...SAMPLE, "--point", POINT, "--rule", "seat-diameter", "--json");
    expect(JSON.parse(run.out)).toMatchObject({
      point: { verdict: "fail", row: 11 },
      rules: [{ rule: "seat-diameter", finding: { outcome: "fail" }, trace: { bands: [{ truth: true }] } }],
    });
  });

  it.each([
    [["--point", "P-1101, pump, non drive end, vertica"], /did you mean "P-1101, pump, non drive end, vertical"/],
    [["--point", POINT, "--rule", "seat-diametre"], /no rule "seat-diametre"; did you mean "seat-diameter"/],
    [["--point", " "], /--point: say which point/],
  ])("refuses what it cannot find, with what was meant: %j", async (args, expected) => {
    const run = await runCommand("why", ...SAMPLE, ...args);
    expect(run.code).toBe(2);
    expect(run.out).toBe("");
    expect(run.err).toMatch(expected);
  });
});
