import { compileRule, type Rulebook } from "../rulebook/index.js";
import type { ScreeningOptions } from "./input.js";
import type { ReadyRule } from "./judge-point.js";

/**
 * The rules of a set, ready for a stage and a day.
 *
 * @throws RangeError if the rulebook has no such set
 */
export function readyRules(
  rulebook: Rulebook,
  options: Pick<ScreeningOptions, "set" | "stage" | "asOf">,
): readonly ReadyRule[] {
  if (!rulebook.sets.includes(options.set)) {
    throw new RangeError(`the rulebook has no set "${options.set}"; it has ${rulebook.sets.join(", ")}`);
  }
  return rulebook.rules.flatMap((rule) => {
    const compiled = rule.sets.includes(options.set) ? compileRule(rule, rulebook, options) : null;
    return compiled ? [{ rule, compiled }] : [];
  });
}
