import { describe, expect, it } from "vitest";
import { convert, STAGES, type Stage, single } from "../../../src/base/index.js";
import { type FactState, SURVEY_FACTS } from "../../../src/facts/index.js";
import type { Finding, PointResult } from "../../../src/screening/index.js";
import { known, screenRows, surveyOf } from "../../tools/make-record.js";
import { shippedRulebook } from "../../tools/shipped.js";
import { surveyOfCsv } from "../../tools/survey-of.js";
import { randomFrom, someState } from "./remedy-points.js";

const rulebook = await shippedRulebook();
type Row = Readonly<Record<string, FactState>>;

const JUDGED = SURVEY_FACTS.filter(({ group }) => group !== "identity").map(({ id }) => id);

/** Rows that say something of every fact that rules look at. */
function fullRows(seed: number, count: number): readonly Row[] {
  const random = randomFrom(seed);
  return Array.from({ length: count }, () => Object.fromEntries(JUDGED.map((id) => [id, someState(id, random)])));
}

function screened(rows: readonly Row[], stage: Stage): readonly PointResult[] {
  return screenRows(rulebook, [surveyOf(rows)], { set: "full", stage, allFindings: true }).points;
}

function weightIn(finding: Finding | undefined): number {
  if (finding?.outcome === "fail") return 2;
  if (finding?.outcome === "warn") return 1;
  if (finding?.outcome !== "undecided") return 0;
  return rulebook.rules.find(({ id }) => id === finding.rule)?.undecided === "fail" ? 2 : 1;
}

/** What is said of a point for other rows beside it: the row that is changed stands there twice. */
const OF_SEVERAL_ROWS = new Set([
  "point-twice",
  ...rulebook.rules.filter(({ group }) => group !== null).map(({ id }) => id),
]);

describe("changes of whole points", () => {
  it.each(STAGES)("settle their finding and break the rules that they name, no others: %s", (stage) => {
    const rows = fullRows(stage === "proposed" ? 11 : 12, 7);
    const points = screened(rows, stage);
    let found = 0;
    let breaking = 0;
    for (const [i, row] of rows.entries()) {
      const before = new Map(points[i]?.findings.map((finding) => [finding.rule, finding]));
      for (const finding of before.values()) {
        for (const { fact, to, breaks } of finding.changes) {
          found += 1;
          if (breaks.length > 0) breaking += 1;
          const value = typeof to === "number" ? single(to) : to;
          // All rows are screened again: which rules are not asked at all hangs on all of them.
          const changed = { ...row, [fact]: { known: true, value, origin: { kind: "none" } } satisfies FactState };
          const { screening, points: changedPoints } = screenRows(rulebook, [surveyOf([changed, ...rows])], {
            set: "full",
            stage,
            allFindings: true,
          });
          const then = new Map(changedPoints[0]?.findings.map((one) => [one.rule, one]));
          // What no row with another model can be asked, for want of a figure on its sheet, is said once and of no row.
          const notAsked = new Set(screening.head.surveys.flatMap((survey) => survey.notAsked.map(({ rule }) => rule)));
          expect(["pass", "not-applicable"], `${finding.rule}: ${fact} ${to}`).toContain(
            then.get(finding.rule)?.outcome,
          );
          const worse = [...before.values()].filter((one) => weightIn(then.get(one.rule)) > weightIn(one));
          expect(
            worse.map(({ rule }) => rule).filter((rule) => !OF_SEVERAL_ROWS.has(rule)),
            `${finding.rule}: ${fact} ${to}`,
          ).toEqual(breaks.filter((rule) => fact !== "sensor_model" || !notAsked.has(rule)));
        }
      }
    }
    expect(found).toBeGreaterThan(30);
    expect(breaking).toBeGreaterThan(5);
  });

  it("stand in order: those that break nothing first, then as the rule names the facts", () => {
    for (const { findings } of screened(fullRows(21, 40), "proposed")) {
      for (const { rule, changes, outcome } of findings) {
        if (outcome !== "fail" && outcome !== "warn") expect(changes).toEqual([]);
        const breaking = changes.map(({ breaks }) => breaks.length > 0);
        expect([...breaking].sort((a, b) => Number(a) - Number(b))).toEqual(breaking);
        const order = rulebook.rules.find(({ id }) => id === rule)?.remedy.change ?? [];
        for (const broken of [true, false]) {
          const places = changes
            .filter(({ breaks }) => breaks.length > 0 === broken)
            .map(({ fact }) => order.indexOf(fact));
          expect([...places].sort((a, b) => a - b)).toEqual(places);
        }
      }
    }
  });
});

describe("a remedy in words", () => {
  const HOLE = { mounting_method: known("tapped-hole"), hole_depth: known(12), thread_depth: known(10) };
  const of = (row: Row, rule: string, set: "core" | "full" = "core"): Finding => {
    const [point] = screenRows(rulebook, [surveyOf([row])], { set }).points;
    const finding = point?.findings.find((one) => one.rule === rule);
    if (!finding) throw new Error(`no finding of ${rule}`);
    return finding;
  };

  it("says first what would be enough, then what the rule advises", () => {
    const finding = of({ ...HOLE, cure_time: known(30) }, "hole-depth");
    expect(finding.changes).toEqual([
      { fact: "hole_depth", from: 12, to: 15, unit: "mm", breaks: [] },
      { fact: "mounting_method", from: "tapped-hole", to: "adhesive-pad", unit: null, breaks: [] },
    ]);
    expect(finding.remedy).toBe(
      "enough for this rule: hole depth at least 15 mm (now 12 mm), or mounting method adhesive pad (now tapped hole); " +
        "drill deeper if the wall allows it, or choose a bonded pad",
    );
  });

  it("says what a change would leave open, and puts it last", () => {
    const finding = of({ ...HOLE, cure_time: { ...known(1), known: false, reason: "doubtful" } }, "hole-depth");
    expect(finding.changes.map(({ fact, breaks }) => [fact, breaks])).toEqual([
      ["hole_depth", []],
      ["mounting_method", ["adhesive-cure"]],
    ]);
    expect(finding.remedy).toContain("adhesive pad (now tapped hole; but then adhesive-cure cannot be judged yet)");
  });

  it("says that a deeper hole would leave too little wall", () => {
    const row = { ...HOLE, thread: known("M6"), wall_thickness: known(18), cure_time: known(30) };
    expect(of(row, "hole-depth", "full").remedy).toContain(
      "hole depth at least 15 mm (now 12 mm; but then wall-left fails)",
    );
  });

  it("gives the next conductor size, or the longest cable, of the series in which the survey writes", () => {
    const cable = {
      supply_voltage_min: known(21),
      sensor_current: known(60),
      conductor_class: known("stranded"),
      ambient_max: known(40),
      cable_length: known(400),
    };
    const inMetric = of({ ...cable, conductor_size: known(0.75) }, "voltage-at-point", "full");
    expect(inMetric.changes.slice(0, 2)).toMatchObject([
      // 0.6 V at 60 mA leave 10 Ω for 800 m at 40 °C: 11.6 Ω/km at 20 °C, which 1.5 mm² (12.1 to 12.2) is above.
      { fact: "conductor_size", to: 2.5 },
      { fact: "cable_length", to: 186 },
    ]);
    expect(inMetric.remedy).toMatch(
      /conductor size at least [\d.]+ mm² \(now 0.75 mm²\), or cable length at most \d+ m/,
    );
    const inGauge = of(
      { ...cable, conductor_size: known(convert(18, "AWG", "mm²", "area")) },
      "voltage-at-point",
      "full",
    );
    expect(inGauge.remedy).toMatch(/conductor size at least AWG 1\d \([\d.]+ mm²\) \(now AWG 18 \(0.823 mm²\)/);
  });

  it("only adds metal's loss once the point is built", () => {
    const row = {
      ...HOLE,
      hole_depth: known(30),
      thread_depth: known(29),
      thread: known("M6"),
      wall_thickness: known(24),
    };
    const survey = surveyOf([row]);
    const [point] = screenRows(rulebook, [survey], { set: "full", stage: "installed" }).points;
    const built = point?.findings.find(({ rule }) => rule === "wall-left");
    expect(built?.outcome).toBe("fail");
    expect(built?.changes.map(({ fact }) => fact)).not.toContain("hole_depth");
  });

  it("says of an open number what would be enough", () => {
    const missing: FactState = { known: false, reason: "missing", origin: { kind: "none" } };
    expect(of({ ...HOLE, hole_depth: missing }, "hole-depth").remedy).toBe(
      "find out: hole depth (at least 15 mm is enough)",
    );
    const supply = {
      supply_voltage: { ...known(1), known: false, reason: "unreadable" } as const,
      supply_kind: known("dc"),
    };
    expect(of(supply, "supply-voltage").remedy).toBe("write down clearly: supply voltage (20.4 to 28.8 V is enough)");
    expect(of({ ...HOLE, hole_depth: missing, mounting_method: missing }, "hole-depth").remedy).toBe(
      "find out: mounting method, hole depth",
    );
  });
});

describe("changes of points that say the same", () => {
  it("are the same as those of each point alone, cells apart", async () => {
    const rows = ["12;0.5", "12;0.5", "13;tbc", "12;tbc", "12;0.5", "13;30"];
    const lines = rows.map((row, i) => `P-${i};tapped hole;${row}`).join("\n");
    const survey = await surveyOfCsv(`Point ID;Mounting method;Hole depth (mm);Cure time (min)\n${lines}\n`);
    const together = screenRows(rulebook, [survey]).points.map(({ findings }) => findings);
    const alone = { ...survey, records: survey.records.map((one) => ({ ...one, facts: new Map(one.facts) })) };
    expect(together).toEqual(screenRows(rulebook, [alone]).points.map(({ findings }) => findings));
    const ofHole = together.map((findings) => findings.find(({ rule }) => rule === "hole-depth")?.changes);
    expect(ofHole.map((changes) => changes?.map(({ breaks }) => breaks.length))).toEqual([
      [0, 1],
      [0, 1],
      [0, 1],
      [0, 1],
      [0, 1],
      [0, 0],
    ]);
  });
});
