import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Facts, factOf } from "../../src/facts/index.js";
import { compileRule, type EngineValue, modelFactsOn, type Rule, type Rulebook } from "../../src/rulebook/index.js";
import { anyState, completionOf, DAY, ruleAndInner, stateOf, valueFor } from "./generated.js";
import { referenceEngine } from "./reference-engine.js";
import { shippedRulebook } from "./shipped.js";

type Book = Pick<Rulebook, "conditions">;

function factsNamed(rule: Rule, book: Book): readonly string[] {
  const named = rule.stages.flatMap((stage) => compileRule(rule, book, { stage, asOf: DAY })?.factsNamed ?? []);
  return [...new Set(named)].filter((fact) => fact !== "stage");
}

function completeFacts(ids: readonly string[], near?: readonly number[]): fc.Arbitrary<Record<string, EngineValue>> {
  return fc.record(Object.fromEntries(ids.map((id) => [id, valueFor(factOf(id), near)])));
}

function asFacts(values: Readonly<Record<string, EngineValue>>): Facts {
  return new Map(Object.entries(values).map(([id, value]) => [id, stateOf(value)]));
}

async function agree(rule: Rule, book: Book, values: Readonly<Record<string, EngineValue>>): Promise<void> {
  for (const stage of rule.stages) {
    const options = { stage, asOf: DAY };
    const judgement = compileRule(rule, book, options)?.judge(asFacts(values));
    const reference = referenceEngine(rule, book, options);
    expect(judgement?.outcome).toBe(await reference?.(values));
    expect(judgement?.open).toEqual([]);
    expect(judgement?.atBest).toBeNull();
  }
}

/** Incomplete facts, and one way in which they can be completed. */
function incomplete(
  ids: readonly string[],
  near?: readonly number[],
): fc.Arbitrary<{ facts: Facts; values: Record<string, EngineValue> }> {
  return fc.record(Object.fromEntries(ids.map((id) => [id, anyState(factOf(id), near)]))).chain((states) =>
    fc.record({
      facts: fc.constant<Facts>(new Map(Object.entries(states))),
      values: fc.record(
        Object.fromEntries(Object.entries(states).map(([id, state]) => [id, completionOf(factOf(id), state)])),
      ),
    }),
  );
}

const RANK: readonly string[] = ["pass", "not-applicable", "warn", "fail"];

/** A decided answer holds for the completion; of an open one, nothing better than its best comes out. */
function holds(rule: Rule, book: Book, facts: Facts, values: Readonly<Record<string, EngineValue>>): void {
  for (const stage of rule.stages) {
    const compiled = compileRule(rule, book, { stage, asOf: DAY });
    const judgement = compiled?.judge(facts);
    const completed = compiled?.judge(asFacts(values));
    if (!judgement || !completed) throw new Error("the rule is for every stage");
    if (judgement.outcome !== "undecided") {
      expect(completed.outcome).toBe(judgement.outcome);
      expect(judgement.open).toEqual([]);
    } else {
      expect(judgement.open.length).toBeGreaterThan(0);
      expect(RANK.indexOf(completed.outcome)).toBeGreaterThanOrEqual(RANK.indexOf(judgement.atBest ?? "fail"));
    }
  }
}

describe("generated rules", () => {
  it("come out as json-rules-engine says, on complete facts", async () => {
    const sample = ruleAndInner.chain((made) =>
      fc.record({ made: fc.constant(made), values: completeFacts(factsNamed(made.rule, made)) }),
    );
    await fc.assert(
      fc.asyncProperty(sample, ({ made, values }) => agree(made.rule, made, values)),
      { numRuns: 1500 },
    );
  });

  it("keep a decided answer whatever the missing values turn out to be", () => {
    const sample = ruleAndInner.chain((made) =>
      fc.record({ made: fc.constant(made), sample: incomplete(factsNamed(made.rule, made)) }),
    );
    fc.assert(
      fc.property(sample, ({ made, sample: { facts, values } }) => holds(made.rule, made, facts, values)),
      { numRuns: 4000 },
    );
  });
});

const book = shippedRulebook();

/** Limits of all models, and numbers around them. */
const near: readonly number[] = [...book.models.values()].flatMap((model) =>
  [...modelFactsOn(model, DAY).values(), stateOf(15)].flatMap((state) =>
    state.known && typeof state.value === "object"
      ? [state.value.lowest, state.value.lowest + 0.1, state.value.lowest - 0.1]
      : [],
  ),
);

describe.each(book.rules.map((rule) => [rule.id, rule] as const))("%s", (_id, rule) => {
  const ids = [...new Set([...factsNamed(rule, book), ...Object.values(rule.judges).filter((id) => id !== null)])];

  it("comes out as json-rules-engine says, on complete facts", async () => {
    await fc.assert(
      fc.asyncProperty(completeFacts(ids, near), (values) => agree(rule, book, values)),
      { numRuns: 200 },
    );
  });

  it("keeps a decided answer whatever the missing values turn out to be", () => {
    fc.assert(
      fc.property(incomplete(ids, near), ({ facts, values }) => holds(rule, book, facts, values)),
      { numRuns: 500 },
    );
  });
});
