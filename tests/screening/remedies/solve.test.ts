import { describe, expect, it } from "vitest";
import { type Outcome, STAGES, type Stage, single } from "../../../src/base/index.js";
import { type FactState, findFact } from "../../../src/facts/index.js";
import { STEPS } from "../../../src/quantities/index.js";
import { type Rule, tablesOn } from "../../../src/rulebook/index.js";
import { ModelShelf } from "../../../src/screening/models.js";
import { PointFacts } from "../../../src/screening/point-facts.js";
import { readyRules } from "../../../src/screening/ready-rules.js";
import { ChangeShelf } from "../../../src/screening/remedies/change.js";
import { alternativesFor, isSettled } from "../../../src/screening/remedies/solve.js";
import { surveyFactsUnder } from "../../../src/screening/survey-facts-under.js";
import { shippedRulebook } from "../../tools/shipped.js";
import { randomFrom, smallerSteps, someState } from "./remedy-points.js";

const AS_OF = "2026-11-25";
const POINTS_PER_RULE = 400;
const rulebook = await shippedRulebook();
/** The invented models of the rulebook as if they could be bought, so that there are some to choose from. */
const models = new Map([...rulebook.models].map(([id, model]) => [id, { ...model, forExamplesOnly: false }]));
const shelf = new ModelShelf({ ...rulebook, models }, AS_OF);
const withChanges = rulebook.rules.filter((rule) => rule.group === null && rule.remedy.change.length > 0);

const tables = tablesOn(rulebook, AS_OF);

type Row = ReadonlyMap<string, FactState>;

const compiled = new Map(
  STAGES.map((stage) => [stage, readyRules(rulebook, { set: "full", stage, asOf: AS_OF })] as const),
);

function judgeOf(rule: Rule, stage: Stage): ((row: Row) => Outcome) | null {
  const ready = compiled.get(stage)?.find((one) => one.rule === rule);
  return ready ? (row) => ready.compiled.judge(new PointFacts(row, shelf.modelOf(row, true), tables)).outcome : null;
}

function changed(row: Row, fact: string, to: number | string): Row {
  const value = typeof to === "number" ? single(to) : to;
  return new Map([...row, [fact, { known: true, value, origin: { kind: "none" } } satisfies FactState]]);
}

function* failingRows(rule: Rule, stage: Stage, count: number) {
  const judge = judgeOf(rule, stage);
  const ready = compiled.get(stage)?.find((one) => one.rule === rule);
  if (!judge || !ready) return;
  const random = randomFrom(rule.id.length * 1000 + (stage === "proposed" ? 1 : 2));
  const under = [...new Set([...ready.compiled.factsNamed.flatMap(surveyFactsUnder), "sensor_model"])];
  for (let i = 0; i < count; i++) {
    const row: Row = new Map(
      under.filter((id) => id !== "stage").map((id) => [id, someState(id, random, i % 4 === 0 ? 0.3 : 0.04)] as const),
    );
    const outcome = judge(row);
    if (outcome !== "fail" && outcome !== "warn") continue;
    const facts = new PointFacts(row, shelf.modelOf(row, true), tables);
    const found = alternativesFor({ ready, stage, facts, models: shelf, shelf: new ChangeShelf() });
    yield { row, judge, found };
  }
}

it("never proposes an invented model", () => {
  const shipped = new ModelShelf(rulebook, AS_OF);
  const named = (name: string): FactState => ({ known: true, value: name, origin: { kind: "none" } });
  for (const name of rulebook.models.keys()) {
    const others = shipped.othersThan(shipped.modelOf(new Map([["sensor_model", named(name)]]), true));
    expect(others.map(({ model }) => model.id)).toEqual(name === "baseline" ? [] : ["baseline"]);
  }
});

describe.each(withChanges.map((rule) => [rule.id, rule] as const))("the changes that %s finds", (_id, rule) => {
  it.each(STAGES)("make it pass at the stage %s, and a smaller step of any does not", (stage) => {
    for (const { row, judge, found } of failingRows(rule, stage, POINTS_PER_RULE)) {
      for (const { fact, changes } of found) {
        const steps = STEPS.get(fact);
        const now = row.get(fact);
        if (!steps) throw new Error(`${fact} has no steps`);
        for (const { to } of changes) {
          const then = judge(changed(row, fact, to));
          const told = `${fact} ${JSON.stringify(now)} -> ${to}: ${then}`;
          expect(isSettled(then), told).toBe(true);
          if (typeof to !== "number" || !now?.known || typeof now.value !== "object") continue;
          for (const smaller of smallerSteps(steps, now.value, to)) {
            const less = judge(changed(row, fact, smaller));
            expect(less === "pass" || less === "not-applicable", `${told}, but ${smaller} does, too`).toBe(false);
          }
        }
      }
    }
  });

  it("can be found: each fact that the rule names helps some point", () => {
    const helped = new Set<string>();
    for (const stage of STAGES) {
      for (const { found } of failingRows(rule, stage, 4 * POINTS_PER_RULE)) {
        for (const { fact } of found) helped.add(fact);
        if (rule.remedy.change.every((fact) => helped.has(fact))) return;
      }
    }
    expect([...helped].sort()).toEqual([...rule.remedy.change].sort());
  });

  it("are all there are: where none is found, none of some steps of the fact helps", () => {
    for (const stage of STAGES) {
      for (const { row, judge, found } of failingRows(rule, stage, 60)) {
        for (const fact of rule.remedy.change.filter((id) => !found.some((one) => one.fact === id))) {
          for (const to of someValues(fact, row, stage)) {
            const then = judge(changed(row, fact, to));
            const evades = fact === "sensor_model" && then === "not-applicable";
            const helps = isSettled(then) && !evades;
            expect(helps, `${fact} ${JSON.stringify(row.get(fact))} -> ${to}: ${then}`).toBe(false);
          }
        }
      }
    }
  });
});

/** Values of a fact that a change could have proposed, spread over all steps. */
function someValues(fact: string, row: Row, stage: Stage): readonly (number | string)[] {
  const steps = STEPS.get(fact);
  const now = row.get(fact);
  if (!steps || (stage === "installed" && steps.onceBuilt === "no")) return [];
  if (steps.by === "choice") return steps.words;
  if (steps.by === "model") return [...rulebook.models.keys()];
  if (!now?.known) return [];
  const more = stage === "installed" && steps.onceBuilt === "only-more";
  if (steps.by === "words-in-order") {
    const place = steps.sizeOf(String(now.value));
    const isMore = (word: string): boolean => (steps.sizeOf(word)?.size ?? 0) > (place?.size ?? 0);
    return place ? (steps.series[place.series] ?? []).filter((word) => !more || isMore(word)) : [];
  }
  if (typeof now.value !== "object") return [];
  const { lowest, highest } = now.value;
  const range = findFact(fact)?.plausible ?? { lowest: 0, highest: 0 };
  const all =
    steps.by === "sizes"
      ? (steps.series.find((sizes) => sizes.includes(lowest)) ?? steps.series[0] ?? [])
      : Array.from({ length: 150 }, (_, i) => {
          const at = range.lowest + ((range.highest - range.lowest) * i) / 149;
          return Number((Math.round(at / steps.step) * steps.step).toPrecision(12));
        });
  const inRange = all.filter((value) => value >= range.lowest && value <= range.highest);
  return inRange.filter((value) => value > highest || (!more && value < lowest && Number.isFinite(lowest)));
}
