import { isSingle } from "../../base/index.js";
import { type FactValue, factOf, isNumeric } from "../../facts/index.js";
import type { Look } from "../book/check.js";
import type { Band, Condition, LimitEntry, Rule } from "../book/rule.js";
import { isFactValue, type NamedConditions, namedCondition } from "./condition-check.js";

/** What a rule compares its facts with: the numbers and the words that stand in it. */
export interface Compared {
  readonly numbers: readonly number[];
  readonly words: readonly string[];
  /** It scales or shifts a bound, so that the numbers where its answer turns are not those that stand in it. */
  readonly scales: boolean;
}

/** Gathers what a rule compares its facts with; of its limits those of the entry given. */
export function comparedIn(rule: Rule, entry: LimitEntry | null, named: NamedConditions): Compared {
  const compared = { numbers: new Set<number>(), words: new Set<string>(), scales: false };
  const add = (value: unknown): void => {
    if (typeof value === "number") compared.numbers.add(value);
    else if (typeof value === "string") compared.words.add(value);
  };
  const ofCondition = (condition: Condition): void => {
    if (condition.kind === "comparison") {
      if (isFactValue(condition.value)) compared.scales ||= unitsDiffer(condition.fact, condition.value.fact);
      else for (const value of [condition.value].flat()) add(value);
    } else if (condition.kind === "not") ofCondition(condition.part);
    else if (condition.kind === "named") ofCondition(namedCondition(condition.name, named));
    else for (const part of condition.parts) ofCondition(part);
  };
  const ofBand = (band: Band): void => {
    if (band.is === "when") ofCondition(band.condition);
    else if ("choices" in band) for (const choice of band.choices) add(choice);
    else
      for (const bound of "bounds" in band ? band.bounds : [band.bound]) {
        if (bound.kind === "number") add(bound.value);
        else compared.scales ||= bound.times !== 1 || bound.plus !== 0;
      }
  };
  if (rule.appliesWhen) ofCondition(rule.appliesWhen);
  for (const band of entry ? [...entry.fail, ...entry.warn] : []) ofBand(band);
  return { numbers: [...compared.numbers], words: [...compared.words], scales: compared.scales };
}

function unitsDiffer(a: string, b: string): boolean {
  return factOf(a).unit !== factOf(b).unit;
}

/**
 * Values that stand for all that a fact can turn out to be, as far as the rule can tell them apart: each choice; each
 * number at which something turns, and two within each stretch between, so that two facts can also lie there apart.
 *
 * @param named - the facts that the rule names
 */
export function valuesToTry(
  id: string,
  compared: Compared,
  named: readonly string[],
  look: Look,
): readonly FactValue[] {
  const definition = factOf(id);
  if (definition.kind === "yes-no") return [true, false];
  if (definition.choices) return definition.choices;
  if (!isNumeric(definition)) {
    const others = named
      .map(look)
      .flatMap((state) => (state.known && typeof state.value === "string" ? state.value : []));
    return [...new Set([...compared.words, ...others, "\u0000another", "\u0000and another"])];
  }
  const turns = new Set(compared.numbers);
  for (const other of named) {
    const state = other === id ? undefined : look(other);
    if (!state?.known || typeof state.value !== "object") continue;
    for (const end of [state.value.lowest, state.value.highest]) if (Number.isFinite(end)) turns.add(end);
  }
  const state = look(id);
  const within = state.known && typeof state.value === "object" && !isSingle(state.value) ? state.value : null;
  // The ends may lie closer to a number of the rule than any step between two of its numbers.
  for (const end of within ? [within.lowest, within.highest] : []) if (Number.isFinite(end)) turns.add(end);
  return spread([...turns].sort((a, b) => a - b))
    .filter((value) => within === null || (within.lowest <= value && value <= within.highest))
    .map((value) => ({ lowest: value, highest: value }));
}

function spread(turns: readonly number[]): readonly number[] {
  const [first = 0] = turns;
  const values = [first - 2, first - 1];
  for (const [i, turn] of turns.entries()) {
    const next = turns[i + 1];
    const step = next === undefined ? 1 : (next - turn) / 3;
    values.push(turn, turn + step, turn + 2 * step);
  }
  return turns.length === 0 ? [0, 1, 2] : values;
}
