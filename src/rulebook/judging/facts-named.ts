import type { Stage } from "../../base/index.js";
import type { Band, Bound, Condition, LimitEntry, Rule } from "../book/rule.js";
import { isFactValue, type NamedConditions, namedCondition } from "./condition-check.js";

/** Facts that a condition names, in the order of the file, named conditions written out; may repeat. */
export function factsInCondition(condition: Condition, named: NamedConditions): readonly string[] {
  switch (condition.kind) {
    case "comparison":
      return isFactValue(condition.value) ? [condition.fact, condition.value.fact] : [condition.fact];
    case "not":
      return factsInCondition(condition.part, named);
    case "named":
      return factsInCondition(namedCondition(condition.name, named), named);
    default:
      return condition.parts.flatMap((part) => factsInCondition(part, named));
  }
}

function factsInBand(band: Band, named: NamedConditions): readonly string[] {
  const inBound = (bound: Bound): readonly string[] => (bound.kind === "fact" ? [bound.fact] : []);
  switch (band.is) {
    case "when":
      return factsInCondition(band.condition, named);
    case "oneOf":
    case "noneOf":
      return [];
    case "outside":
      return band.bounds.flatMap(inBound);
    default:
      return inBound(band.bound);
  }
}

/** Every fact that a rule names at a stage, the judged one first; of its limits those of the entry given. */
export function factsNamedBy(
  rule: Rule,
  entry: LimitEntry | null,
  stage: Stage,
  named: NamedConditions,
): readonly string[] {
  const judged = rule.judges[stage];
  const applies = rule.appliesWhen === null ? [] : factsInCondition(rule.appliesWhen, named);
  const bands = entry === null ? [] : [...entry.fail, ...entry.warn];
  return [
    ...new Set([
      ...(judged === null ? [] : [judged]),
      ...applies,
      ...bands.flatMap((band) => factsInBand(band, named)),
    ]),
  ];
}
