import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { screen } from "../../src/screening/index.js";
import { projectPath, readTestSurvey, shippedRulebook } from "../tools/shipped.js";

interface Answer {
  readonly row: string;
  readonly expect: Readonly<Record<string, string>>;
}

const SURVEYS = [
  ["quillmoor.xlsx", "quillmoor.answers.json", 48],
  ["dunkelforst.xlsx", "dunkelforst.answers.json", 40],
  ["tallgrass.csv", "tallgrass.answers.json", 36],
] as const;

// The answers were worked out apart from the project; tests/data/surveys/README.md says from what.
describe.each(SURVEYS)("%s, set core", (file, answersFile, count) => {
  it(`gives every outcome and verdict of the ${count} answers`, async () => {
    const answers = JSON.parse(readFileSync(projectPath(`tests/data/surveys/${answersFile}`), "utf8")) as {
      answers: Record<string, Answer>;
    };
    const screening = screen({
      program: { name: "spotface", version: "test" },
      rulebook: await shippedRulebook(),
      surveys: [await readTestSurvey(`tests/data/surveys/${file}`)],
      skipped: [],
      site: null,
      options: { set: "core", stage: "proposed", asOf: "2026-11-25", siteName: null, allFindings: true },
    });
    const found: Record<string, unknown> = {};
    const expected: Record<string, unknown> = {};
    for (const point of screening.points()) {
      const place = point.sheet === null ? `${point.row}` : `${point.sheet}!${point.row}`;
      const outcomes = point.findings.map((f) => [f.rule, f.outcome === "not-applicable" ? "n/a" : f.outcome] as const);
      found[point.point ?? "?"] = { row: place, ...Object.fromEntries(outcomes), verdict: point.verdict };
    }
    for (const [point, answer] of Object.entries(answers.answers))
      expected[point] = { row: answer.row, ...answer.expect };
    expect(Object.keys(expected)).toHaveLength(count);
    expect(found).toEqual(expected);
  });
});
