import { Engine, type TopLevelCondition } from "json-rules-engine";
import type { Outcome, PlainDay, Stage } from "../../src/base/index.js";
import { type EngineRoot, type EngineValue, engineRules, type Rule, type Rulebook } from "../../src/rulebook/index.js";

/** What json-rules-engine says of a rule on complete facts; null where the rule is not for the stage. */
export function referenceEngine(
  rule: Rule,
  rulebook: Pick<Rulebook, "conditions">,
  options: { readonly stage: Stage; readonly asOf: PlainDay },
): ((facts: Readonly<Record<string, EngineValue>>) => Promise<Outcome>) | null {
  const rules = engineRules(rule, rulebook, options);
  if (!rules) return null;
  const engine = new Engine([], {
    pathResolver: () => {
      throw new Error("nothing may be looked up inside a fact");
    },
  });
  for (const { id, needs, compute } of rules.computed) {
    engine.addFact(id, async (_params, almanac) =>
      compute(await Promise.all(needs.map((need) => almanac.factValue<EngineValue>(need)))),
    );
  }
  const add = (type: string, root: EngineRoot | null): void => {
    // The engine's own types are mutable; a copy is what it gets.
    if (root) engine.addRule({ conditions: structuredClone(root) as unknown as TopLevelCondition, event: { type } });
  };
  add("applies", rules.applies);
  add("fail", rules.fail);
  add("warn", rules.warn);
  return async (facts) => {
    const { events } = await engine.run({ ...facts });
    const said = new Set(events.map(({ type }) => type));
    if (rules.applies && !said.has("applies")) return "not-applicable";
    if (!rules.limitInForce) return "no-limit-in-force";
    if (said.has("fail")) return "fail";
    return said.has("warn") ? "warn" : "pass";
  };
}
