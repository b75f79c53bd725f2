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
  tablesOn,
  withTables,
} from "../../src/rulebook/index.js";
import { takeGiven } from "../../src/rulebook/reading/case-reading.js";
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
  const judged = new Set<string | null>(Object.values(rule.judges));
  const given = [...takeGiven(rule.casesGive, written?.given ?? {}).facts];
  const facts = new Map(given.filter(([id]) => !(judged.has(id) && isNumeric(factOf(id)))));
  const found = book.models.get(model);
  if (!found) throw new Error(`no model ${model}`);
  return withTables(new Map([...facts, ...modelFactsOn(found, day)]), tablesOn(book, day));
}

/** Null where the bound is a fact that the model does not state: there is no limit to be at. */
function numberOf(bound: Bound, facts: ReadonlyMap<string, FactState>): number | null {
  if (bound.kind === "number") return bound.value;
  const state = facts.get(bound.fact);
  if (!state && bound.fact.startsWith("model.")) return null;
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
            if (value === null) return [];
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

/** Where a limit is written: with the model, in a table where one row of it is meant, else in the rule. */
function homeOf(fact: string | null, rule: Rule): RegExp {
  if (fact?.startsWith("model.")) return /^rules\/models\//;
  return fact?.startsWith("table.") ? /^rules\/tables\// : new RegExp(`^rules/[a-z]+/${rule.id}`);
}

/** The edges of the same rule under the same facts, the edge itself included. */
function besides(edge: Edge): readonly Edge[] {
  return edges.filter(({ rule, stage, day, facts }) => {
    return rule === edge.rule && stage === edge.stage && day === edge.day && facts === edge.facts;
  });
}

/** What the edges make of a value. */
function expectedAt(among: readonly Edge[], value: number): Outcome {
  const broken = among.filter(({ bound, good, atIsGood }) =>
    value === bound ? !atIsGood : good === "above" ? value < bound : value > bound,
  );
  if (broken.some(({ outcome }) => outcome === "fail")) return "fail";
  return broken.length > 0 ? "warn" : "pass";
}

describe.each(edges.map((edge) => [edge.name, edge] as const))("%s", (_name, edge) => {
  const { bound, good, outcome } = edge;
  const others = besides(edge);
  const better = good === "above" ? nextAbove(bound) : nextBelow(bound);
  const worse = good === "above" ? nextBelow(bound) : nextAbove(bound);

  it("is decided at the limit and at the next number on either side", () => {
    const found = [worse, bound, better].map((value) => judgeAt(edge, single(value)).outcome);
    expect(found).toEqual([worse, bound, better].map((value) => expectedAt(others, value)));
    expect(found[0]).toBe(outcome);
    expect(found[2]).not.toBe(outcome);
  });

  it("has a margin to the failing limit: positive on its good side, negative on the bad one, 0 at it; none where none fails", () => {
    const margins = [worse, bound, better].map((value) => judgeAt(edge, single(value)).margin?.value ?? null);
    if (outcome === "fail") expect(margins.map((margin) => Math.sign(margin ?? Number.NaN))).toEqual([-1, 0, 1]);
    else if (others.some((other) => other.outcome === "fail")) {
      for (const margin of margins) expect(margin).toBeGreaterThan(0);
    } else expect(margins).toEqual([null, null, null]);
  });

  it("names the limit and where it is written", () => {
    const { limit } = judgeAt(edge, single(worse));
    const values = Array.isArray(limit?.value) ? limit.value : [limit?.value];
    expect(values).toContain(bound);
    expect(limit?.unit).toBe(factOf(edge.judged).unit);
    expect(limit?.origin.file).toMatch(homeOf(limit?.fact ?? null, edge.rule));
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
    const bounds = others.map((other) => other.bound);
    const middle = bounds.reduce((sum, other) => sum + other, 0) / bounds.length;
    const twoSided = others.some((other) => other.good !== good);
    const far = twoSided ? middle : good === "above" ? Math.max(...bounds) * 10 : Math.min(...bounds) / 10;
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
    const leastOf = (rule: Rule): number => book.models.size * rule.stages.length;
    expect(edges.length).toBeGreaterThanOrEqual(judged.reduce((sum, rule) => sum + leastOf(rule), 0));
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
