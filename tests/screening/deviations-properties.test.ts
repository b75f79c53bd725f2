import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { jsonDocument } from "../../src/outputs/index.js";
import type { Survey } from "../../src/records/index.js";
import type { PointResult } from "../../src/screening/index.js";
import { shippedRulebook } from "../tools/shipped.js";
import { surveyOfCsv } from "../tools/survey-of.js";
import { screenWith, type Written } from "../tools/with-deviations.js";

const rulebook = await shippedRulebook();
const AS_OF = "2026-11-25";
const POINTS = 40;

/** Rows of which many say the same, so that findings are remembered and repeated. */
function madeSurvey(): Promise<Survey> {
  const pick = (from: readonly string[], i: number): string => from[i % from.length] ?? "";
  const rows = Array.from({ length: POINTS }, (_, i) =>
    [
      `P-${i}`,
      pick(["1485", "590", "tbc"], i >> 2),
      pick(["cast iron, bare", "cast iron, painted", "cooling fin"], i >> 1),
      pick(["35", "28", "?"], i),
      pick(["16", "14.9", ""], i >> 3),
      pick(["8", "12"], i >> 1),
    ].join(";"),
  );
  return surveyOfCsv(
    `Point ID;Speed (rpm);Mounted on;Flat diameter (mm);Hole depth (mm);Tightening torque (Nm)\n${rows.join("\n")}\n`,
  );
}

const survey = await madeSurvey();
const plain = screenWith(rulebook, [survey], null);
const RULES = ["min-speed", "seat-material", "seat-diameter", "hole-depth", "thread-depth", "tightening-torque"];

const days = fc.constantFrom("2026-01-01", "2026-06-01", "2026-11-24", AS_OF, "2026-11-26", "2027-06-01");
const entry = fc
  .record({
    point: fc.integer({ min: 0, max: POINTS + 2 }).map((i) => `P-${i}`),
    rule: fc.constantFrom(...RULES),
    outcome: fc.constantFrom("fail", "warn", "undecided"),
    from: days,
    until: days,
  })
  .filter(({ from, until }) => from < until);
/** One per point and rule, since two may not overlap. */
const entries = fc.uniqueArray(entry, { maxLength: 60, selector: ({ point, rule }) => `${point} ${rule}` });

function unmarked(points: readonly PointResult[]): unknown {
  return points.map(({ findings, accepted: _, ...point }) => ({
    ...point,
    findings: findings.map(({ accepted: __, ...finding }) => ({ ...finding })),
  }));
}

describe("deviations", () => {
  it("have findings of every outcome to speak of", () => {
    const outcomes = plain.points.flatMap(({ findings }) => findings.map(({ outcome }) => outcome));
    expect(new Set(outcomes)).toEqual(new Set(["fail", "warn", "undecided"]));
    expect(outcomes.length).toBeGreaterThan(POINTS);
  });

  it("change no outcome, no verdict, and nothing else but what they mark", () => {
    fc.assert(
      fc.property(entries, (written) => {
        const { points, screening } = screenWith(rulebook, [survey], written);
        expect(unmarked(points)).toEqual(unmarked(plain.points));
        const { accepted, ...counts } = screening.summary();
        const { accepted: none, ...plainCounts } = plain.screening.summary();
        expect([counts, none]).toEqual([plainCounts, 0]);
        expect(accepted).toBe(points.filter((point) => point.accepted).length);
      }),
      { numRuns: 60 },
    );
  });

  it("mark a finding if and only if one in force on the day is from its rule at its point and not from less", () => {
    const badness = ["warn", "undecided", "fail"];
    fc.assert(
      fc.property(entries, (written) => {
        const { points, list } = screenWith(rulebook, [survey], written);
        for (const point of points) {
          for (const finding of point.findings) {
            const covering = written.filter(
              (one) =>
                one.point === point.point &&
                one.rule === finding.rule &&
                one.from <= AS_OF &&
                AS_OF < one.until &&
                badness.indexOf(one.outcome) >= badness.indexOf(finding.outcome),
            );
            expect(finding.accepted !== null).toBe(covering.length > 0);
          }
          expect(point.accepted).toBe(point.verdict !== "pass" && point.findings.every((f) => f.accepted !== null));
        }
        const marks = points.flatMap(({ findings }) => findings).filter(({ accepted }) => accepted !== null);
        expect(list.filter(({ status }) => status === "in-use")).toHaveLength(marks.length);
      }),
      { numRuns: 60 },
    );
  });

  it("that have ended give the points that none at all give, byte for byte", () => {
    const pointsOf = (written: readonly Written[] | null) =>
      [...jsonDocument(screenWith(rulebook, [survey], written).screening)].join("").replace(/^[\s\S]*?"points":/, "");
    const without = pointsOf(null);
    fc.assert(
      fc.property(entries, (written) => {
        expect(pointsOf(written.map((one) => ({ ...one, from: "2026-01-01", until: AS_OF })))).toBe(without);
      }),
      { numRuns: 20 },
    );
  });
});
