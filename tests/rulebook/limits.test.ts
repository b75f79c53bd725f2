import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayBefore, type Interval, type Outcome, round12, type Stage, single } from "../../src/base/index.js";
import { type FactState, factOf, isNumeric, type KnownFact } from "../../src/facts/index.js";
import {
  type Band,
  type Bound,
  compileRule,
  type Judgement,
  modelFactsOn,
  type Rule,
  runCase,
} from "../../src/rulebook/index.js";
import { nextAbove, nextBelow } from "./doubles.js";
import { shippedRulebook } from "./shipped.js";

const book = shippedRulebook();

/** One bound of one failing or warning band, made from the rule file itself. */
interface Edge {
  readonly name: string;
  readonly rule: Rule;
  readonly stage: Stage;
  readonly day: string;
  readonly judged: string;
  /** Which side of the bound is good, and whether the bound itself is. */
  readonly good: "above" | "below";
  readonly atIsGood: boolean;
  readonly bound: number;
  readonly outcome: Outcome;
  /** All other facts, so that nothing else fails. */
  readonly facts: ReadonlyMap<string, FactState>;
}

function known(value: KnownFact["value"]): FactState {
  return { known: true, value, origin: { kind: "none" } };
}

/** Facts of a case that passes at the stage, with the values of another model. */
function goodFacts(rule: Rule, stage: Stage, model: string, day: string): ReadonlyMap<string, FactState> {
  const written = rule.cases.find(
    ({ given, expect: outcome }) => outcome === "pass" && (given.stage === undefined || given.stage === stage),
  );
  const facts = new Map<string, FactState>();
  for (const [id, value] of Object.entries({ ...rule.casesGive, ...written?.given })) {
    if (["model", "asOf", "stage"].includes(id) || isNumeric(factOf(id))) continue;
    facts.set(id, known(value === true || value === false ? value : String(value)));
  }
  const found = book.models.get(model);
  if (!found) throw new Error(`no model ${model}`);
  return new Map([...facts, ...modelFactsOn(found, day)]);
}

function numberOf(bound: Bound, facts: ReadonlyMap<string, FactState>): number {
  if (bound.kind === "number") return bound.value;
  const state = facts.get(bound.fact);
  if (!state?.known || typeof state.value !== "object") throw new Error(`${bound.fact} is not known`);
  return round12(state.value.lowest * bound.times + bound.plus);
}

function boundsOf(band: Band): readonly { bound: Bound; good: Edge["good"]; atIsGood: boolean }[] {
  switch (band.is) {
    case "below":
    case "atOrBelow":
      return [{ bound: band.bound, good: "above", atIsGood: band.is === "below" }];
    case "above":
    case "atOrAbove":
      return [{ bound: band.bound, good: "below", atIsGood: band.is === "above" }];
    case "outside":
      return [
        { bound: band.bounds[0], good: "above", atIsGood: true },
        { bound: band.bounds[1], good: "below", atIsGood: true },
      ];
    default:
      return [];
  }
}

const edges: readonly Edge[] = book.rules.flatMap((rule) =>
  rule.limits.flatMap((limit) =>
    rule.stages.flatMap((stage) =>
      [...book.models.keys()].flatMap((model) => {
        const judged = rule.judges[stage];
        const facts = goodFacts(rule, stage, model, limit.from);
        const bands = [
          ...limit.fail.map((band) => ["fail", band] as const),
          ...limit.warn.map((band) => ["warn", band] as const),
        ];
        return bands.flatMap(([outcome, band]) =>
          boundsOf(band).flatMap(({ bound, good, atIsGood }): readonly Edge[] => {
            if (judged === null) return [];
            const value = numberOf(bound, facts);
            const name = `${rule.id}, ${stage}, ${model}: ${good} ${value}`;
            return [{ name, rule, stage, day: limit.from, judged, good, atIsGood, bound: value, outcome, facts }];
          }),
        );
      }),
    ),
  ),
);

function judgeAt(edge: Edge, value: Interval | null, day = edge.day): Judgement {
  const compiled = compileRule(edge.rule, book, { stage: edge.stage, asOf: day });
  const facts = new Map(edge.facts);
  if (value) facts.set(edge.judged, known(value));
  const judgement = compiled?.judge(facts);
  if (!judgement) throw new Error("the rule is for the stage");
  return judgement;
}

describe.each(edges.map((edge) => [edge.name, edge] as const))("%s", (_name, edge) => {
  const { bound, good, atIsGood, outcome } = edge;
  const better = good === "above" ? nextAbove(bound) : nextBelow(bound);
  const worse = good === "above" ? nextBelow(bound) : nextAbove(bound);

  it("is decided at the limit and at the next number on either side", () => {
    const found = [worse, bound, better].map((value) => judgeAt(edge, single(value)).outcome);
    expect(found).toEqual([outcome, atIsGood ? "pass" : outcome, "pass"]);
  });

  it("has a margin that is positive on the good side, negative on the bad one and 0 at the limit", () => {
    const margins = [worse, bound, better].map((value) =>
      Math.sign(judgeAt(edge, single(value)).margin?.value ?? Number.NaN),
    );
    expect(margins).toEqual([-1, 0, 1]);
  });

  it("names the limit and where it is written", () => {
    const { limit } = judgeAt(edge, single(worse));
    const values = Array.isArray(limit?.value) ? limit.value : [limit?.value];
    expect(values).toContain(bound);
    expect(limit?.unit).toBe(factOf(edge.judged).unit);
    expect(limit?.origin.file).toMatch(limit?.fact?.startsWith("model.") ? /^rules\/models\// : /^rules\/[a-z]+\//);
  });

  it("is undecided when the value is missing, or lies on both sides of the limit", () => {
    expect(judgeAt(edge, null)).toMatchObject({
      outcome: "undecided",
      atBest: "pass",
      open: [{ fact: edge.judged, reason: "missing" }],
    });
    const across = { lowest: Math.min(better, worse), highest: Math.max(better, worse) };
    expect(judgeAt(edge, across)).toMatchObject({
      outcome: "undecided",
      open: [{ fact: edge.judged, reason: "too-close" }],
    });
    const bounded =
      good === "above"
        ? { lowest: worse, highest: Number.POSITIVE_INFINITY }
        : { lowest: Number.NEGATIVE_INFINITY, highest: worse };
    expect(judgeAt(edge, bounded)).toMatchObject({
      outcome: "undecided",
      open: [{ fact: edge.judged, reason: "missing" }],
    });
  });

  it("has no limit in force on the day before", () => {
    expect(judgeAt(edge, single(better), dayBefore(edge.day)).outcome).toBe("no-limit-in-force");
  });

  it("never gets worse when the value moves to the good side, or toward the middle", () => {
    const rank = (value: number): number =>
      ["fail", "undecided", "warn", "pass"].indexOf(judgeAt(edge, single(value)).outcome);
    const others = edges.filter(
      ({ rule, stage, facts }) => rule === edge.rule && stage === edge.stage && facts === edge.facts,
    );
    const middle = others.reduce((sum, other) => sum + other.bound, 0) / others.length;
    const far = others.length > 1 ? middle : good === "above" ? bound * 10 : bound / 10;
    const end = good === "above" ? bound / 10 : bound * 10;
    const value = fc.double({ min: Math.min(far, end), max: Math.max(far, end), noNaN: true });
    fc.assert(
      fc.property(value, value, (a, b) => {
        const [near, off] = Math.abs(a - far) <= Math.abs(b - far) ? [a, b] : [b, a];
        expect(rank(near)).toBeGreaterThanOrEqual(rank(off));
      }),
    );
  });
});

describe("the shipped rules", () => {
  it("have limits to look at for every rule that judges a number", () => {
    const judged = book.rules.filter((rule) =>
      Object.values(rule.judges).some((id) => id !== null && isNumeric(factOf(id))),
    );
    expect(new Set(edges.map(({ rule }) => rule.id))).toEqual(new Set(judged.map(({ id }) => id)));
    expect(edges.length).toBeGreaterThanOrEqual(3 * 2 * judged.length);
  });

  it("reach every outcome in their cases, and every fact that they name is missing once", () => {
    for (const rule of book.rules) {
      const runs = rule.cases.flatMap((ruleCase) => runCase(rule, ruleCase, book));
      const reached = new Set(runs.map(({ judgement }) => judgement.outcome));
      const wanted = [
        "pass",
        "undecided",
        "no-limit-in-force",
        rule.limits.some(({ fail }) => fail.length > 0) ? "fail" : "warn",
      ];
      expect([...reached], rule.id).toEqual(
        expect.arrayContaining(rule.appliesWhen ? [...wanted, "not-applicable"] : wanted),
      );
      const open = new Set(runs.flatMap(({ judgement }) => judgement.open.map(({ fact }) => fact)));
      for (const stage of rule.stages) {
        const named = compileRule(rule, book, { stage, asOf: "2026-06-01" })?.factsNamed ?? [];
        for (const fact of named.filter((id) => id !== "stage"))
          expect(open, `${rule.id}: ${fact} is never missing`).toContain(fact);
      }
    }
  });
});
