import type { TopLevelCondition } from "json-rules-engine";
import type { Outcome } from "../base/index.js";
import type { EngineRoot, EngineRules, EngineValue } from "../rulebook/index.js";

/** What the reference says of one rule on complete facts. */
export interface Reference {
  /** Rules by id, each with the outcome that json-rules-engine gives it. */
  judge(values: ReadonlyMap<string, EngineValue>): Promise<Outcome>;
}

const PARTS = ["applies", "fail", "warn"] as const;

/**
 * Makes json-rules-engine the judge of one rule. The engine is loaded on demand, and by this file alone. A path in a
 * condition, which it would hand to an expression evaluator, never gets here; should one, the run stops.
 */
export async function referenceOf(rule: EngineRules): Promise<Reference> {
  const { Engine } = await import("json-rules-engine");
  const engine = new Engine([], { pathResolver: refusePath });
  for (const part of PARTS) {
    const root = rule[part];
    if (root) engine.addRule({ conditions: conditionsOf(root), event: { type: part } });
  }
  return {
    judge: async (values) => {
      const facts: Record<string, EngineValue> = Object.fromEntries(values);
      for (const { id, needs, compute } of rule.computed)
        facts[id] = compute(needs.map((need) => valueFor(need, values)));
      const { events } = await engine.run(facts);
      const said = new Set(events.map((event) => event.type));
      if (rule.applies !== null && !said.has("applies")) return "not-applicable";
      if (!rule.limitInForce) return "no-limit-in-force";
      return said.has("fail") ? "fail" : said.has("warn") ? "warn" : "pass";
    },
  };
}

// The engine keeps what it is given; it gets a copy of its own, in the shape of its types.
function conditionsOf(root: EngineRoot): TopLevelCondition {
  return structuredClone(root) as unknown as TopLevelCondition;
}

function valueFor(id: string, values: ReadonlyMap<string, EngineValue>): EngineValue {
  const value = values.get(id);
  if (value === undefined) throw new RangeError(`the reference was asked without a value for "${id}"`);
  return value;
}

function refusePath(): never {
  throw new Error("a condition with a path reached the rule engine");
}
