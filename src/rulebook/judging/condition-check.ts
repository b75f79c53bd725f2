import { allOf, anyOf, type Interval, isSameNumber, notOf, single, type Truth } from "../../base/index.js";
import { factOf, isNumeric } from "../../facts/index.js";
import { type Check, joinedCheck, type Look, leafCheck, numberIn, wordIn } from "../book/check.js";
import { compareNumbers, factSide, fixedSide, otherSide } from "../book/number-sides.js";
import type { Condition, ConditionValue, Operator } from "../book/rule.js";

/** Named conditions of a rulebook. */
export type NamedConditions = ReadonlyMap<string, Condition>;

/**
 * Makes a checked condition ready to run.
 *
 * @throws RangeError for a named condition that the rulebook lacks; loading has refused that
 */
export function conditionCheck(condition: Condition, named: NamedConditions): Check {
  switch (condition.kind) {
    case "all":
      return joinedCheck(
        condition.parts.map((part) => conditionCheck(part, named)),
        allOf,
      );
    case "any":
      return joinedCheck(
        condition.parts.map((part) => conditionCheck(part, named)),
        anyOf,
      );
    case "not": {
      const part = conditionCheck(condition.part, named);
      return { truth: (look) => notOf(part.truth(look)), gatherOpen: (look, open) => part.gatherOpen(look, open) };
    }
    case "named":
      return conditionCheck(namedCondition(condition.name, named), named);
    case "comparison":
      return isNumeric(factOf(condition.fact)) ? numberCheck(condition) : wordCheck(condition);
  }
}

/** @throws RangeError for a name that the rulebook lacks */
export function namedCondition(name: string, named: NamedConditions): Condition {
  const condition = named.get(name);
  if (!condition) throw new RangeError(`no condition "${name}" in the rulebook`);
  return condition;
}

type Comparison = Extract<Condition, { kind: "comparison" }>;

function numberCheck({ fact, operator, value }: Comparison): Check {
  if (operator === "in" || operator === "notIn") {
    const members = listOf(value).map((member) => single(Number(member)));
    return leafCheck([fact], (look) => {
      const interval = numberIn(look, fact);
      if (interval === null) return null;
      const isIn = anyOf(members.map((member) => isSameNumber(interval, member)));
      return operator === "in" ? isIn : notOf(isIn);
    });
  }
  const left = factSide(fact);
  const right = isFactValue(value) ? otherSide(value.fact, fact) : fixedSide(Number(value));
  const facts = right.fact === null ? [fact] : [fact, right.fact];
  return leafCheck(facts, (look) => {
    const a: Interval | null = left.read(look);
    const b: Interval | null = right.read(look);
    return a === null || b === null ? null : compareNumbers(operator, a, b);
  });
}

function wordCheck({ fact, operator, value }: Comparison): Check {
  if (isFactValue(value)) {
    const other = value.fact;
    return leafCheck([fact, other], (look) => {
      const [a, b] = [wordIn(look, fact), wordIn(look, other)];
      return a === null || b === null ? null : (a === b) === (operator === "equal");
    });
  }
  const words = Array.isArray(value) ? listOf(value) : [value];
  return membershipCheck(fact, words, isPositive(operator));
}

/** Whether the value of a fact is one of some words, or (`wanted` false) none of them. */
export function membershipCheck(fact: string, words: readonly unknown[], wanted: boolean): Check {
  return leafCheck([fact], (look: Look): Truth => {
    const word = wordIn(look, fact);
    return word === null ? null : words.includes(word) === wanted;
  });
}

function isPositive(operator: Operator): boolean {
  return operator === "equal" || operator === "in";
}

/** Whether a comparison is with another fact. */
export function isFactValue(value: Comparison["value"]): value is { readonly fact: string } {
  return typeof value === "object" && "fact" in value;
}

function listOf(value: Comparison["value"]): readonly ConditionValue[] {
  return Array.isArray(value) ? value : [];
}
