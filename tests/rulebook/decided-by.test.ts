import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isOpen } from "../../src/base/index.js";
import { type FactState, factOf } from "../../src/facts/index.js";
import { compileRule } from "../../src/rulebook/index.js";
import { anyState, completionOf, DAY, ruleAndInner, stateOf as stateOfValue } from "./generated.js";
import { bookWith, type Given, limit, stateOf } from "./made-rule.js";

/** The facts that decide a made-up rule, of those that leave it open. */
function decidedBy(lines: string, given: Given): readonly string[] {
  const { rule, book } = bookWith(lines);
  const compiled = compileRule(rule, book, { stage: "proposed", asOf: "2026-06-01" });
  const facts = new Map(Object.entries(given).map(([id, value]) => [id, stateOf(value)] as const));
  const open = compiled?.judge(facts).open.map(({ fact }) => fact) ?? [];
  return compiled?.decidedBy(facts, open) ?? [];
}

const WHEN = (condition: string) => limit(`fail: { when: ${condition} }`);
const STEADY = (value: boolean) => `{ fact: load_steady, operator: equal, value: ${value} }`;

describe("the facts that decide a rule", () => {
  it("are all that leave it open, where each is needed", () => {
    const lines = `appliesWhen: ${STEADY(true)}\njudges: hole_depth\n${limit("fail: { below: 15 mm }")}`;
    expect(decidedBy(lines, {})).toEqual(["load_steady", "hole_depth"]);
    expect(decidedBy(lines, { hole_depth: 20 })).toEqual(["load_steady"]);
    expect(decidedBy(lines, { load_steady: true })).toEqual(["hole_depth"]);
  });

  it("are fewer where each value of one decides", () => {
    const either = `{ any: [ ${STEADY(true)}, { all: [ ${STEADY(false)}, { fact: wetting, operator: in, value: [dry, jets] } ] }, { not: ${STEADY(true)} } ] }`;
    expect(decidedBy(WHEN(either), {})).toEqual(["load_steady"]);
    const number = `{ any: [ { fact: hole_depth, operator: lessThan, value: 10 mm }, { all: [ { fact: hole_depth, operator: lessThan, value: 20 mm }, ${STEADY(true)} ] }, { fact: hole_depth, operator: greaterThanInclusive, value: 10 mm } ] }`;
    expect(decidedBy(WHEN(number), {})).toEqual(["hole_depth"]);
  });

  it("are not fewer for the sake of most values", () => {
    const number = `{ any: [ { fact: hole_depth, operator: lessThan, value: 10 mm }, { all: [ { fact: hole_depth, operator: lessThan, value: 20 mm }, ${STEADY(true)} ] } ] }`;
    expect(decidedBy(WHEN(number), {})).toEqual(["hole_depth", "load_steady"]);
    expect(decidedBy(WHEN(number), { hole_depth: { lowest: 5, highest: 30 } })).toEqual(["hole_depth", "load_steady"]);
  });

  it("decide generated rules whatever they turn out to be", () => {
    let fewer = 0;
    const sample = ruleAndInner.chain((made) => {
      const named = compileRule(made.rule, made, { stage: "proposed", asOf: DAY })?.factsNamed ?? [];
      const ids = named.filter((id) => id !== "stage");
      return fc.tuple(...ids.map((id) => anyState(factOf(id)))).chain((states) =>
        fc.record({
          made: fc.constant(made),
          facts: fc.constant(new Map<string, FactState>(ids.map((id, i) => [id, states[i] as FactState]))),
          values: fc.tuple(...ids.map((id, i) => completionOf(factOf(id), states[i] as FactState))),
          ids: fc.constant(ids),
        }),
      );
    });
    fc.assert(
      fc.property(sample, ({ made, facts, values, ids }) => {
        const compiled = compileRule(made.rule, made, { stage: "proposed", asOf: DAY });
        const open = compiled?.judge(facts).open.map(({ fact }) => fact) ?? [];
        const deciding = compiled?.decidedBy(facts, open) ?? [];
        expect(open).toEqual(expect.arrayContaining([...deciding]));
        if (deciding.length < open.length) fewer += 1;
        const known = new Map(facts);
        for (const [i, id] of ids.entries()) if (deciding.includes(id)) known.set(id, stateOfValue(values[i] ?? ""));
        const after = compiled?.judge(known);
        // A number that is known, and too coarse beside one that was not, shows only then.
        const coarse = after?.open.every(({ fact, reason }) => reason === "too-close" && !open.includes(fact));
        expect(after && isOpen(after.outcome) && !coarse).toBe(false);
      }),
      { numRuns: 4000 },
    );
    expect(fewer).toBeGreaterThan(20);
  });
});
