import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { terminalReport } from "../../../src/outputs/index.js";
import { REPORT_COLUMNS } from "../../../src/outputs/terminal/layout.js";
import { displayWidth, wrapText } from "../../../src/outputs/wording/wrap.js";
import { HEAD } from "../fake-head.js";
import { SUMMARY } from "../fake-screening.js";

describe("terminalReport", () => {
  const report = terminalReport(HEAD, SUMMARY, [{ what: "screened workbook", file: "out/survey.xlsx", note: null }]);

  it("says what was read, and how", () => {
    expect(report).toContain('"Pumps": headings in row 3, 4 points, English');
    expect(report).toContain('"Legend" (hidden): not read as points, no row of headings');
    expect(report).toContain("old.xls: left out");
    expect(report).toMatch(/E +Thread +depth of full thread +mm/);
    expect(report).toContain(`not used: G "Inspector's mood"`);
  });

  it("counts problems by kind and shows their place", () => {
    expect(report).toContain('not a number: 1\n    - survey.xlsx > Pumps!E8 (Thread): found "deep enough";');
  });

  it("shows three places of a kind and counts the rest, the commonest kind first", () => {
    const [survey] = HEAD.surveys;
    const [problem] = survey?.problems ?? [];
    if (!survey || !problem) throw new Error("no problem to start from");
    const five = [11, 12, 13, 14, 15].map((row) => ({ ...problem, code: "unknown-unit" as const, cell: `F${row}` }));
    const text = terminalReport({ ...HEAD, surveys: [{ ...survey, problems: [problem, ...five] }] }, SUMMARY);
    expect(text).toMatch(
      /Remarks on reading: 6\n {2}unknown unit: 5\n(?: {4}- .*F1[123] .*\n(?: {6}.*\n)*){3} {4}- and 2 more\n/,
    );
    expect(text).not.toMatch(/F1[45]/);
    expect(text.indexOf("unknown unit: 5")).toBeLessThan(text.indexOf("not a number: 1"));
  });

  it("counts verdicts with shape and word, and says what to find out", () => {
    expect(report).toMatch(/■ fail +2\n +▲ warn +2\n +● pass +1/);
    expect(report).toContain("1. lowest speed: settles 1 point");
    expect(report).toContain("1 point with something missing fails whatever it is");
    expect(report).toContain("a bonded pad: comes closest on 1 point");
    expect(report).toMatch(/tightening-torque +The torque does not overload the unit +0 +0 +1/);
  });

  it("carries the cautions and where files were written", () => {
    expect(report).toContain("Cautions: Isolate and lock out the machine. A verdict is a screening, not a permission.");
    expect(report).toMatch(/Written: screened workbook: out\/survey\.xlsx\n$/);
  });

  it("stays within its columns and lets no control character through, whatever was typed", () => {
    const typed = fc.oneof(fc.string({ unit: "binary", maxLength: 200 }), fc.constant(`\u001b[2J${"漢".repeat(90)}`));
    fc.assert(
      fc.property(typed, typed, (a, b) => {
        const [survey] = HEAD.surveys;
        if (!survey) return;
        const columns = survey.columns.map((column) => ({ ...column, heading: a }));
        const sheets = survey.sheets.map((sheet) => ({ ...sheet, sheet: b, why: a }));
        const problems = survey.problems.map((problem) => ({ ...problem, found: b, heading: a }));
        const text = terminalReport({ ...HEAD, surveys: [{ ...survey, file: b, columns, sheets, problems }] }, SUMMARY);
        for (const line of text.split("\n")) {
          expect(displayWidth(line)).toBeLessThanOrEqual(REPORT_COLUMNS);
          expect(line).not.toMatch(/\p{Cc}/u);
        }
      }),
      { numRuns: 50 },
    );
  });

  it("loses no character in wrapping", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), fc.integer({ min: 2, max: 20 }), (text, width) => {
        expect(wrapText(text, width).join("").replace(/ /g, "")).toBe(text.replace(/ /g, ""));
      }),
    );
  });
});
