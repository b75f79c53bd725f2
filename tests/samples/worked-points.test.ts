import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import type { Stage } from "../../src/base/index.js";
import { type FactShown, type PointResult, screen } from "../../src/screening/index.js";
import { projectPath, readTestSurvey, shippedRulebook } from "../tools/shipped.js";

const TEXT = readFileSync(projectPath("samples/worked-points.md"), "utf8");
const HEADING = /^## (W-[A-C]), (proposed|installed):/;

interface WorkedNumber {
  readonly point: string;
  readonly stage: Stage;
  readonly fact: string;
  /** As printed: one number, or both ends. */
  readonly printed: readonly string[];
  readonly unit: string;
}

interface WorkedOutcome {
  readonly point: string;
  readonly stage: Stage;
  readonly rule: string;
  readonly outcome: string;
}

/** The cells of a line of a table, or null for any other line. */
function cellsOf(line: string): readonly string[] | null {
  return line.startsWith("| ")
    ? line
        .slice(1, -1)
        .split("|")
        .map((cell) => cell.trim())
    : null;
}

function stageOf(text: string | undefined): Stage {
  if (text !== "proposed" && text !== "installed") throw new Error(`"${text}" is no stage`);
  return text;
}

/** The rows of the tables "fact, by hand, unit", with the point in whose section they stand. */
function workedNumbers(): readonly WorkedNumber[] {
  const numbers: WorkedNumber[] = [];
  let section: RegExpExecArray | null = null;
  for (const line of TEXT.split("\n")) {
    if (line.startsWith("## ")) section = HEADING.exec(line);
    const [fact = "", byHand = "", unit = ""] = cellsOf(line) ?? [];
    if (section?.[1] === undefined || !fact.startsWith("`")) continue;
    const printed = byHand.split(" to ");
    numbers.push({ point: section[1], stage: stageOf(section[2]), fact: fact.replaceAll("`", ""), printed, unit });
  }
  return numbers;
}

/** The table of findings: a column per point and stage. */
function workedOutcomes(): readonly WorkedOutcome[] {
  const rows = TEXT.slice(TEXT.indexOf("## The findings"))
    .split("\n")
    .flatMap((line) => cellsOf(line) ?? []);
  const [rule, ...columns] = rows.slice(0, 4);
  if (rule !== "rule") throw new Error("no table of findings");
  const byRow = Array.from({ length: rows.length / 4 }, (_, i) => rows.slice(4 * i, 4 * i + 4)).slice(2);
  return byRow.flatMap(([id = "", ...outcomes]) =>
    outcomes.flatMap((outcome, i) => {
      const [point = "", stage] = (columns[i] ?? "").split(", ");
      const said = outcome === "-" ? "not-applicable" : outcome;
      return said === "" ? [] : [{ point, stage: stageOf(stage), rule: id.replaceAll("`", ""), outcome: said }];
    }),
  );
}

async function pointAt(point: string, stage: Stage): Promise<PointResult> {
  const screening = screen({
    program: { name: "spotface", version: "test" },
    rulebook: await shippedRulebook(),
    surveys: [await readTestSurvey("samples/worked-points.csv")],
    skipped: [],
    site: null,
    options: { set: "full", stage, asOf: "2026-11-25", siteName: null, allFindings: true },
  });
  const found = [...screening.points()].find((one) => one.point === point);
  if (!found) throw new Error(`no point ${point}`);
  return found;
}

/** A number to as many digits after the point as a printed one has. */
function asPrinted(value: number | null, printed: string | undefined): string {
  return value === null ? "none" : value.toFixed(printed?.split(".")[1]?.length ?? 0);
}

describe("the worked points", () => {
  const numbers = workedNumbers();
  const outcomes = workedOutcomes();

  it("have numbers and findings for each of the three", () => {
    for (const point of ["W-A", "W-B", "W-C"]) {
      expect(numbers.filter((one) => one.point === point).length).toBeGreaterThanOrEqual(7);
      expect(outcomes.filter((one) => one.point === point).length).toBeGreaterThanOrEqual(20);
    }
  });

  it.each(numbers)(
    "$point, $stage: $fact is what was worked out by hand",
    async ({ point, stage, fact, ...worked }) => {
      const { findings } = await pointAt(point, stage);
      const shown: FactShown | undefined = findings.flatMap(({ facts }) => facts).find((one) => one.fact === fact);
      expect(shown?.unit).toBe(worked.unit);
      const [lowest, highest = lowest] = worked.printed;
      expect(shown && [asPrinted(shown.lowest, lowest), asPrinted(shown.highest, highest)]).toEqual([lowest, highest]);
      // One number by hand is one number in the result, not the middle of two.
      if (worked.printed.length === 1) expect(shown?.value).not.toBeNull();
    },
  );

  it.each([
    ["W-A", "proposed"],
    ["W-B", "proposed"],
    ["W-C", "installed"],
  ] as const)("%s, %s: gives the findings of the table, and no other that does not pass", async (point, stage) => {
    const { findings, verdict } = await pointAt(point, stage);
    const worked = new Map(
      outcomes.filter((one) => one.point === point && one.stage === stage).map(({ rule, outcome }) => [rule, outcome]),
    );
    const found = new Map(findings.map(({ rule, outcome }) => [rule, outcome]));
    expect(Object.fromEntries([...worked.keys()].map((rule) => [rule, found.get(rule)]))).toEqual(
      Object.fromEntries(worked),
    );
    const notPassed = findings.filter(({ outcome }) => outcome !== "pass" && outcome !== "not-applicable");
    expect(notPassed.map(({ rule }) => rule).filter((rule) => !worked.has(rule))).toEqual([]);
    expect(TEXT).toContain(`${point} ${verdict}`);
  });
});
