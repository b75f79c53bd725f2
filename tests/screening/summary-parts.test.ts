import { describe, expect, it } from "vitest";
import type { FactState, Facts } from "../../src/facts/index.js";
import { MarginCounts, SpeedCounts } from "../../src/screening/distributions.js";
import { FreeingCounts } from "../../src/screening/freeing.js";
import { screen } from "../../src/screening/index.js";
import { finding } from "../outputs/fake-findings.js";
import { readTestSurvey, shippedRulebook } from "../tools/shipped.js";

const fail = (rule: string) => finding(rule, "fail");
const warn = (rule: string) => finding(rule, "warn");
const open = (rule: string) => finding(rule, "undecided");

describe("what mending rules would free", () => {
  it("counts a point for the one rule that stands in its way, and what else is said of it", () => {
    const counts = new FreeingCounts(new Set());
    counts.add({ verdict: "fail", findings: [fail("a")] });
    counts.add({ verdict: "fail", findings: [fail("a"), warn("b")] });
    counts.add({ verdict: "fail", findings: [open("c"), fail("a")] });
    counts.add({ verdict: "fail", findings: [fail("a"), fail("b")] });
    counts.add({ verdict: "warn", findings: [warn("b")] });
    counts.add({ verdict: "warn", findings: [warn("b"), warn("c")] });
    counts.add({ verdict: "warn", findings: [warn("b"), open("c")] });
    counts.add({ verdict: "warn", findings: [open("c")] });
    counts.add({ verdict: "pass", findings: [finding("a", "pass")] });
    expect(counts.freeing(["a", "b", "c"]).alone).toEqual([
      { rule: "a", failToPass: 1, failToWarn: 2, warnToPass: 0 },
      { rule: "b", failToPass: 0, failToWarn: 0, warnToPass: 1 },
    ]);
  });

  it("goes on by what frees the most points per rule, and says how many of them would pass", () => {
    const counts = new FreeingCounts(new Set());
    const add = (times: number, ...findings: Parameters<typeof fail>[0][]) => {
      for (let i = 0; i < times; i++) counts.add({ verdict: "fail", findings: findings.map(fail) });
    };
    add(2, "a");
    add(3, "b", "c");
    add(5, "a", "d");
    counts.add({ verdict: "fail", findings: [fail("a"), fail("d"), warn("e")] });
    expect(counts.freeing([]).inTurn).toEqual([
      { rules: ["a", "d"], points: 8, wouldPass: 7, pointsSoFar: 8 },
      { rules: ["b", "c"], points: 3, wouldPass: 3, pointsSoFar: 11 },
    ]);
  });

  it("frees nothing that fails because something is not known", () => {
    const counts = new FreeingCounts(new Set(["a"]));
    counts.add({ verdict: "fail", findings: [open("a")] });
    counts.add({ verdict: "fail", findings: [open("a"), fail("b")] });
    expect(counts.freeing(["a", "b"])).toEqual({ alone: [], inTurn: [] });
  });
});

describe("how margins are spread", () => {
  it("puts each into the bin of its fraction; what fails on the limit lies beyond it", () => {
    const counts = new MarginCounts();
    const at = (outcome: "pass" | "warn" | "fail", fraction: number) =>
      counts.add(outcome, { value: fraction * 9, fraction });
    at("pass", 0);
    at("fail", 0);
    at("pass", 0.3);
    at("pass", 0.299999999999);
    at("warn", 0.05);
    at("fail", -0.1);
    at("pass", 7);
    counts.add("undecided", null);
    counts.add("not-applicable", null);
    const spread = counts.spread("hole-depth", "hole_depth");
    expect(spread).toMatchObject({ rule: "hole-depth", unit: null, known: 7, notKnown: 1 });
    expect(spread?.bins.filter(({ points }) => points > 0)).toEqual([
      { from: -0.1, to: 0, points: 2 },
      { from: 0, to: 0.1, points: 2 },
      { from: 0.2, to: 0.3, points: 1 },
      { from: 0.3, to: 0.4, points: 1 },
      { from: 1, to: null, points: 1 },
    ]);
  });

  it("takes kelvin where a fraction has no meaning", () => {
    const counts = new MarginCounts();
    counts.add("pass", { value: 12.5, fraction: null });
    counts.add("fail", { value: -80, fraction: null });
    const spread = counts.spread("sensor-heat", "surface_temperature");
    expect(spread).toMatchObject({ unit: "K", known: 2 });
    expect(spread?.bins[0]).toEqual({ from: null, to: -50, points: 1 });
    expect(spread?.bins.at(-1)).toEqual({ from: 10, to: 15, points: 1 });
  });

  it("says nothing of a rule that decided nothing", () => {
    const counts = new MarginCounts();
    counts.add("undecided", null);
    expect(counts.spread("hole-depth", "hole_depth")).toBeNull();
  });
});

const speedOf = (lowest: number): FactState => ({
  known: true,
  value: { lowest, highest: lowest + 10 },
  origin: { kind: "none" },
});
const factsAt = (lowest: number): Facts => new Map([["lowest_running_speed", speedOf(lowest)]]);

describe("how speeds are spread", () => {
  it("counts by the lowest that they can be, between round numbers", () => {
    const counts = new SpeedCounts();
    for (const speed of [590, 740, 740, 990.7, 1480, 1480, Number.NEGATIVE_INFINITY]) counts.add(factsAt(speed));
    counts.add(new Map());
    const { bins, ...rest } = counts.spread();
    expect(rest).toEqual({ unit: "r/min", known: 6, notKnown: 2 });
    expect(bins.reduce((sum, { points }) => sum + points, 0)).toBe(6);
    expect(bins[0]).toEqual({ from: 550, to: 600, points: 1 });
    expect(bins.at(-1)).toEqual({ from: 1450, to: 1500, points: 2 });
    expect(bins.every(({ to }, i) => i === bins.length - 1 || to === bins[i + 1]?.from)).toBe(true);
  });

  it("leaves what lies far away to the open end, and tells two alike speeds apart from none", () => {
    const counts = new SpeedCounts();
    for (let i = 0; i < 400; i++) counts.add(factsAt(1000 + i));
    counts.add(factsAt(30_000));
    const last = counts.spread().bins.at(-1);
    expect(last?.to).toBeNull();
    expect(last?.points).toBeLessThanOrEqual(8);
    const alike = new SpeedCounts();
    alike.add(factsAt(1480));
    alike.add(factsAt(1480));
    expect(alike.spread().bins).toEqual([{ from: 1480, to: 1481, points: 2 }]);
    expect(new SpeedCounts().spread().bins).toEqual([]);
  });
});

describe("the summary of a run", () => {
  it("counts the margins of points that pass, and each point once", async () => {
    const screening = screen({
      program: { name: "spotface", version: "0" },
      rulebook: await shippedRulebook(),
      surveys: [await readTestSurvey("samples/survey.csv")],
      skipped: [],
      site: null,
      options: { set: "core", stage: "proposed", asOf: "2026-11-25", siteName: null, allFindings: true },
    });
    const fractions: number[] = [];
    let open = 0;
    let points = 0;
    for (const { findings } of screening.points()) {
      points += 1;
      const { margin, outcome } = findings.find(({ rule }) => rule === "hole-depth") ?? {};
      if (outcome === "undecided") open += 1;
      else if (margin?.fraction != null) fractions.push(margin.fraction);
    }
    const { distributions } = screening.summary();
    const depth = distributions.margins.find(({ rule }) => rule === "hole-depth");
    expect(depth).toMatchObject({ known: fractions.length, notKnown: open });
    expect(fractions.length).toBeGreaterThan(3);
    for (const { from, to, points: counted } of depth?.bins ?? []) {
      const inside = fractions.filter((one) => one >= (from ?? -Infinity) && one < (to ?? Infinity));
      expect(counted).toBe(inside.length);
    }
    expect(distributions.lowestSpeed.known + distributions.lowestSpeed.notKnown).toBe(points);
  });
});
