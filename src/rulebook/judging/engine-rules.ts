import type { PlainDay, Stage } from "../../base/index.js";
import { factOf, isNumeric } from "../../facts/index.js";
import { boundSide, type NumberSide, otherSide } from "../book/number-sides.js";
import type { Band, Bound, Condition, ConditionValue, Operator, Rule } from "../book/rule.js";
import type { Rulebook } from "../book/rulebook.js";
import { inForce } from "../reading/dated.js";
import { isFactValue, type NamedConditions, namedCondition } from "./condition-check.js";

/** A comparison exactly as json-rules-engine takes it; no other keys. */
export interface EngineComparison {
  readonly fact: string;
  readonly operator: Operator;
  readonly value: ConditionValue | readonly ConditionValue[] | { readonly fact: string };
}

/** A condition as json-rules-engine takes it, named conditions written out. */
export type EngineCondition =
  | EngineComparison
  | { readonly all: readonly EngineCondition[] }
  | { readonly any: readonly EngineCondition[] }
  | { readonly not: EngineCondition };

/** A condition as it stands at the root of an engine rule. */
export interface EngineRoot {
  readonly all: readonly EngineCondition[];
}

/** A value of a fact as the engine sees it: a number in the unit of the fact, a word, or yes and no. */
export type EngineValue = number | string | boolean;

/** A fact that the engine needs besides those of the point: a scaled bound, or the stage. */
export interface ComputedFact {
  readonly id: string;
  /** The facts it is computed from; none for a constant. */
  readonly needs: readonly string[];
  /** @param values - one for each of `needs`, in that order, each a single known value */
  compute(values: readonly EngineValue[]): EngineValue;
}

/** A rule as plain data for json-rules-engine, at one stage and day. */
export interface EngineRules {
  readonly ruleId: string;
  /** Null where the rule always applies. */
  readonly applies: EngineRoot | null;
  /** Null where no band can fail, or warn, on that day. */
  readonly fail: EngineRoot | null;
  readonly warn: EngineRoot | null;
  /** Whether a limit is in force on that day. */
  readonly limitInForce: boolean;
  /** Add each as a fact of the engine before it runs. */
  readonly computed: readonly ComputedFact[];
}

/**
 * The same rule as compileRule makes ready, as data for json-rules-engine, which is the reference on complete facts.
 *
 * @returns null when the rule is not for the stage
 */
export function engineRules(
  rule: Rule,
  rulebook: Pick<Rulebook, "conditions">,
  options: { readonly stage: Stage; readonly asOf: PlainDay },
): EngineRules | null {
  if (!rule.stages.includes(options.stage)) return null;
  const judged = rule.judges[options.stage];
  const entry = rule.limits.find((limit) => inForce(limit, options.asOf)) ?? null;
  const writing = new Writing(rule.id, options.stage, rulebook.conditions);
  const side = (bands: readonly Band[]): EngineRoot | null =>
    bands.length === 0 ? null : { all: [{ any: bands.map((band) => writing.band(band, judged)) }] };
  return {
    ruleId: rule.id,
    applies: rule.appliesWhen === null ? null : { all: [writing.condition(rule.appliesWhen)] },
    fail: side(entry?.fail ?? []),
    warn: side(entry?.warn ?? []),
    limitInForce: entry !== null,
    computed: writing.computed,
  };
}

/** Writes conditions and bands out, and keeps the facts that had to be made for them. */
class Writing {
  readonly computed: ComputedFact[];
  readonly #ruleId: string;
  readonly #named: NamedConditions;
  #bounds = 0;

  constructor(ruleId: string, stage: Stage, named: NamedConditions) {
    this.#ruleId = ruleId;
    this.#named = named;
    this.computed = [{ id: "stage", needs: [], compute: () => stage }];
  }

  condition(condition: Condition): EngineCondition {
    switch (condition.kind) {
      case "all":
        return { all: condition.parts.map((part) => this.condition(part)) };
      case "any":
        return { any: condition.parts.map((part) => this.condition(part)) };
      case "not":
        return { not: this.condition(condition.part) };
      case "named":
        return this.condition(namedCondition(condition.name, this.#named));
      case "comparison":
        return this.#comparison(condition);
    }
  }

  #comparison({ fact, operator, value }: Extract<Condition, { kind: "comparison" }>): EngineComparison {
    if (!isFactValue(value) || !isNumeric(factOf(fact))) return { fact, operator, value };
    return { fact, operator, value: this.#side(otherSide(value.fact, fact)) };
  }

  /** @throws RangeError for a band that needs a judged fact where there is none; loading has refused that */
  band(band: Band, judged: string | null): EngineCondition {
    if (band.is === "when") return this.condition(band.condition);
    if (judged === null) throw new RangeError(`the band "${band.is}" needs a judged fact`);
    if ("choices" in band) {
      return { fact: judged, operator: band.is === "oneOf" ? "in" : "notIn", value: band.choices };
    }
    const breaks = (operator: Operator, bound: Bound): EngineComparison => ({
      fact: judged,
      operator,
      value: bound.kind === "number" ? bound.value : this.#side(boundSide(bound, judged)),
    });
    if ("bounds" in band) {
      return { any: [breaks("lessThan", band.bounds[0]), breaks("greaterThan", band.bounds[1])] };
    }
    return breaks(BREAKING[band.is], band.bound);
  }

  /** The engine ignores keys it does not know, so a bound that is not a fact as it stands becomes one. */
  #side(side: NumberSide): { readonly fact: string } {
    const { fact } = side;
    if (fact === null) throw new RangeError("a number of the rule needs no fact");
    if (side.plain) return { fact };
    this.#bounds += 1;
    const id = `bound:${this.#ruleId}:${this.#bounds}`;
    this.computed.push({ id, needs: [fact], compute: ([value]) => side.of(Number(value)) });
    return { fact: id };
  }
}

const BREAKING: Readonly<Record<"below" | "above" | "atOrBelow" | "atOrAbove", Operator>> = {
  below: "lessThan",
  above: "greaterThan",
  atOrBelow: "lessThanInclusive",
  atOrAbove: "greaterThanInclusive",
};
