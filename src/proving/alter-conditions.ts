import { factOf, isNumeric } from "../facts/index.js";
import type { Condition, ConditionValue, Operator } from "../rulebook/index.js";
import { type Altered, alteredIn, comparisonInWords } from "./alteration.js";
import { besideNumber } from "./number-steps.js";

type Comparison = Extract<Condition, { kind: "comparison" }>;

/** What stands nearest to each operator; the first is its negation. */
const NEAR: Readonly<Record<Operator, readonly Operator[]>> = {
  equal: ["notEqual"],
  notEqual: ["equal"],
  lessThan: ["greaterThanInclusive", "lessThanInclusive"],
  lessThanInclusive: ["greaterThan", "lessThan"],
  greaterThan: ["lessThanInclusive", "greaterThanInclusive"],
  greaterThanInclusive: ["lessThan", "greaterThan"],
  in: ["notIn"],
  notIn: ["in"],
};

/** A condition with one thing in it altered: an operator, a value, a part left out, all for any. */
export function alterCondition(condition: Condition): readonly Altered<Condition>[] {
  switch (condition.kind) {
    case "all":
    case "any":
      return alterGroup(condition);
    case "not":
      return [
        { kind: "condition", what: "not is left out", thing: condition.part },
        ...alterCondition(condition.part).map(({ kind, what, thing }) => ({
          kind,
          what,
          thing: { kind: "not" as const, part: thing },
        })),
      ];
    case "named":
      return [{ kind: "condition", what: `"${condition.name}" is negated`, thing: { kind: "not", part: condition } }];
    case "comparison":
      return [...alterOperator(condition), ...alterValue(condition)];
  }
}

function alterGroup(group: Extract<Condition, { kind: "all" | "any" }>): readonly Altered<Condition>[] {
  const { kind, parts } = group;
  const inside = alteredIn(parts, alterCondition).map((altered) => ({
    ...altered,
    thing: { kind, parts: altered.thing } as const,
  }));
  if (parts.length < 2) return inside;
  const other = kind === "all" ? ("any" as const) : ("all" as const);
  const without = parts.map(
    (part, index): Altered<Condition> => ({
      kind: "condition",
      what: `"${partInWords(part)}" is left out of ${kind}`,
      thing: { kind, parts: parts.toSpliced(index, 1) },
    }),
  );
  return [
    { kind: "condition", what: `${kind} becomes ${other}`, thing: { kind: other, parts } },
    ...without,
    ...inside,
  ];
}

function partInWords(part: Condition): string {
  if (part.kind === "comparison") return comparisonInWords(part);
  return part.kind === "named" ? part.name : part.kind;
}

function alterOperator(comparison: Comparison): readonly Altered<Condition>[] {
  return NEAR[comparison.operator].map((operator) => ({
    kind: "operator",
    what: `${comparisonInWords(comparison)} becomes ${operator}`,
    thing: { ...comparison, operator },
  }));
}

function alterValue(comparison: Comparison): readonly Altered<Condition>[] {
  const { value, fact } = comparison;
  const withValue = (other: Comparison["value"], what: string): Altered<Condition> => ({
    kind: "condition",
    what: `${comparisonInWords(comparison)} ${what}`,
    thing: { ...comparison, value: other },
  });
  if (isList(value)) {
    const fewer = value.length < 2 ? [] : value.map((one, i) => withValue(value.toSpliced(i, 1), `without ${one}`));
    const more = othersThan(value, fact).map((one) => withValue([...value, one], `and ${one}`));
    return [...fewer, ...more];
  }
  if (typeof value === "object") return [];
  if (typeof value === "number" && isNumeric(factOf(fact))) {
    return besideNumber(value).map((other) => withValue(other, `becomes ${other}`));
  }
  // Yes and no swapped is the operator negated.
  return typeof value === "boolean" ? [] : othersThan([value], fact).map((one) => withValue(one, `becomes ${one}`));
}

function othersThan(values: readonly ConditionValue[], fact: string): readonly string[] {
  return (factOf(fact).choices ?? []).filter((choice) => !values.includes(choice));
}

function isList(value: Comparison["value"]): value is readonly ConditionValue[] {
  return Array.isArray(value);
}
