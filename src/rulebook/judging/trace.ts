import type { Interval, Truth } from "../../base/index.js";
import { type FactState, type Facts, MISSING } from "../../facts/index.js";
import type { Look } from "../book/check.js";
import type { Band, Condition, LimitEntry, Rule } from "../book/rule.js";
import type { Rulebook } from "../book/rulebook.js";
import { inForce } from "../reading/dated.js";
import { readyBand } from "./band-check.js";
import type { CompileOptions } from "./compile-rule.js";
import { conditionCheck, type NamedConditions, namedCondition } from "./condition-check.js";

/** A condition and all its parts, each with what it came to; null is undecided. */
export interface ConditionTrace {
  readonly condition: Condition;
  readonly truth: Truth;
  /** Of `all`, `any` and `not`, and what a named condition stands for. */
  readonly parts: readonly ConditionTrace[];
}

/** One way in which a limit is broken, and whether it is. */
export interface BandTrace {
  readonly outcome: "fail" | "warn";
  readonly band: Band;
  readonly truth: Truth;
  /** The bounds as computed, in the unit of the judged fact; null where one is unknown. */
  readonly bounds: readonly (Interval | null)[];
  /** Of a free condition. */
  readonly condition: ConditionTrace | null;
}

/** How a rule came to its outcome, step by step. */
export interface RuleTrace {
  /** Null where the rule always applies. */
  readonly applies: ConditionTrace | null;
  /** The dated entry in force on the day; null where none is. */
  readonly entry: LimitEntry | null;
  readonly bands: readonly BandTrace[];
}

/**
 * Follows one rule through the facts of one point, without judging: the outcome itself comes from the compiled rule.
 *
 * @returns null when the rule is not for the stage
 */
export function traceRule(
  rule: Rule,
  rulebook: Pick<Rulebook, "conditions">,
  { stage, asOf }: CompileOptions,
  facts: Facts,
): RuleTrace | null {
  if (!rule.stages.includes(stage)) return null;
  const own: FactState = { known: true, value: stage, origin: { kind: "none" } };
  const look: Look = (id) => (id === "stage" ? own : (facts.get(id) ?? MISSING));
  const named = rulebook.conditions;
  const entry = rule.limits.find((limit) => inForce(limit, asOf)) ?? null;
  const bandsOf = (outcome: "fail" | "warn"): readonly BandTrace[] =>
    (entry?.[outcome] ?? []).map((band) => traceBand(outcome, band, rule.judges[stage], named, look));
  return {
    applies: rule.appliesWhen === null ? null : traceCondition(rule.appliesWhen, named, look),
    entry,
    bands: [...bandsOf("fail"), ...bandsOf("warn")],
  };
}

function traceBand(
  outcome: "fail" | "warn",
  band: Band,
  judged: string | null,
  named: NamedConditions,
  look: Look,
): BandTrace {
  const ready = readyBand(band, judged, named);
  return {
    outcome,
    band,
    truth: ready.check.truth(look),
    bounds: ready.sides.map((side) => side.read(look)),
    condition: band.is === "when" ? traceCondition(band.condition, named, look) : null,
  };
}

function traceCondition(condition: Condition, named: NamedConditions, look: Look): ConditionTrace {
  return {
    condition,
    truth: conditionCheck(condition, named).truth(look),
    parts: partsOf(condition, named).map((part) => traceCondition(part, named, look)),
  };
}

function partsOf(condition: Condition, named: NamedConditions): readonly Condition[] {
  switch (condition.kind) {
    case "all":
    case "any":
      return condition.parts;
    case "not":
      return [condition.part];
    case "named":
      return [namedCondition(condition.name, named)];
    case "comparison":
      return [];
  }
}
