import { isOpen, type Outcome, type Stage } from "../../base/index.js";
import { type FactDefinition, type FactState, factOf } from "../../facts/index.js";
import { type OnceBuilt, STEPS, type Steps } from "../../quantities/index.js";
import { showFact } from "../fact-shown.js";
import type { ReadyRule } from "../judge-point.js";
import type { ModelShelf } from "../models.js";
import type { PointFacts } from "../point-facts.js";
import { surveyFactsUnder } from "../survey-facts-under.js";
import { afterChange, type Change, type ChangeShelf, SupposedNumber } from "./change.js";
import { type Ladder, laddersOf } from "./ladder.js";
import { type Answer, nearestThatHelps } from "./nearest.js";

/** Whether every further step in the same direction would do as well; "exactly" says nothing of them. */
export type Reach = "at least" | "at most" | "exactly";

/** Ways to change one fact in one direction, the smallest change first; any of them would do. */
export interface Alternative {
  readonly fact: string;
  readonly from: number | string | boolean | null;
  readonly unit: string | null;
  readonly changes: readonly Change[];
  readonly reach: Reach;
}

/** A rule, and the point of which it is asked. */
export interface Asked {
  readonly ready: ReadyRule;
  readonly facts: PointFacts;
}

/** A point that a rule does not pass, and what changes can be made from. */
export interface Unsolved extends Asked {
  readonly stage: Stage;
  readonly models: ModelShelf;
  readonly shelf: ChangeShelf;
}

/** Whether a rule that says this no longer stands in the way. */
export function isSettled(outcome: Outcome): boolean {
  return outcome === "pass" || outcome === "not-applicable";
}

/**
 * The smallest change of each fact that the rule names as changeable, in each direction, by which the rule passes or no
 * longer applies. It is found by asking the same rule, never by a formula of its own.
 */
export function alternativesFor(unsolved: Unsolved): readonly Alternative[] {
  const { rule, compiled } = unsolved.ready;
  const under = new Set(compiled.factsNamed.flatMap(surveyFactsUnder));
  return rule.remedy.change.flatMap((fact) => {
    const steps = STEPS.get(fact);
    const isBuilt = unsolved.stage === "installed";
    if (!steps || !under.has(fact) || (isBuilt && steps.onceBuilt === "no")) return [];
    return alternativesOf(fact, steps, isBuilt ? steps.onceBuilt : "freely", unsolved);
  });
}

function alternativesOf(fact: string, steps: Steps, onceBuilt: OnceBuilt, unsolved: Unsolved): readonly Alternative[] {
  switch (steps.by) {
    case "step":
    case "sizes":
      return numbersFor(fact, steps, onceBuilt, unsolved);
    case "words-in-order":
      return wordsInOrderFor(fact, steps, onceBuilt, unsolved);
    case "choice": {
      const { from } = shownNow(fact, unsolved);
      const changes = steps.words.map((word) => unsolved.shelf.of(fact, word));
      return oneOf(
        fact,
        from,
        changes.filter((change) => change.to !== from && helps(unsolved, change)),
      );
    }
    case "model": {
      const { ready, facts: point, models, shelf } = unsolved;
      const others = models.othersThan(point.model).map((choice) => shelf.of(fact, choice.model.id, choice));
      // A rule that another model only evades (a margin, of a speed at which the model fails) is no reason to choose it.
      const passes = others.filter((change) => ready.compiled.outcomeOn(afterChange(point, change)).outcome === "pass");
      return oneOf(fact, point.model.ok ? point.model.model.id : null, passes);
    }
  }
}

function helps({ ready, facts: point }: Unsolved, change: Change): boolean {
  return isSettled(ready.compiled.outcomeOn(afterChange(point, change)).outcome);
}

function shownNow(fact: string, { facts }: Unsolved): Pick<Alternative, "from" | "unit"> {
  const { value, unit } = showFact(fact, facts);
  return { from: value, unit };
}

/** Choices without an order among them, all of which would do. */
function oneOf(fact: string, from: Alternative["from"], changes: readonly Change[]): readonly Alternative[] {
  return changes.length === 0 ? [] : [{ fact, from, unit: null, changes, reach: "exactly" as const }];
}

/** The next word of the same series to either side; where none would do, the nearest of another series. */
function wordsInOrderFor(
  fact: string,
  steps: Extract<Steps, { readonly by: "words-in-order" }>,
  onceBuilt: OnceBuilt,
  unsolved: Unsolved,
): readonly Alternative[] {
  const { from } = shownNow(fact, unsolved);
  const place = typeof from === "string" ? steps.sizeOf(from) : null;
  if (!place) return [];
  const placed = steps.series.flatMap((words, series) =>
    words.map((word) => ({ word, series, more: (steps.sizeOf(word)?.size ?? 0) - place.size })),
  );
  const byDistance = placed
    .filter(({ more }) => onceBuilt === "freely" || more > 0)
    .sort((a, b) => Math.abs(a.more) - Math.abs(b.more));
  const first = (fits: (one: (typeof placed)[number]) => boolean): readonly Alternative[] => {
    const found = byDistance.find((one) => fits(one) && helps(unsolved, unsolved.shelf.of(fact, one.word)));
    if (!found) return [];
    return [{ fact, from, unit: null, changes: [unsolved.shelf.of(fact, found.word)], reach: "exactly" as const }];
  };
  const own = [
    ...first(({ series, more }) => series === place.series && more > 0),
    ...first(({ series, more }) => series === place.series && more < 0),
  ];
  return own.length > 0 || !steps.crosses ? own : first(({ series }) => series !== place.series);
}

function numbersFor(
  fact: string,
  steps: Extract<Steps, { readonly by: "step" | "sizes" }>,
  onceBuilt: OnceBuilt,
  unsolved: Unsolved,
): readonly Alternative[] {
  const state: FactState | undefined = unsolved.facts.get(fact);
  if (!state?.known || typeof state.value !== "object") return [];
  const definition = factOf(fact);
  const { more, less } = laddersOf(steps, definition, state.value);
  return [
    ...numberOn(more, "at least", definition, unsolved),
    ...(onceBuilt === "freely" ? numberOn(less, "at most", definition, unsolved) : []),
  ];
}

function numberOn(
  ladder: Ladder,
  beyond: Reach,
  { id: fact }: FactDefinition,
  unsolved: Unsolved,
): readonly Alternative[] {
  const ask = asking(fact, ladder, unsolved);
  const index = nearestThatHelps(ladder.count, ask);
  if (index === null || ask(index, index) !== "helps") return [];
  const reach = ask(index, ladder.count - 1) === "helps" ? beyond : "exactly";
  const changes = [unsolved.shelf.of(fact, ladder.at(index))];
  return [{ fact, ...shownNow(fact, unsolved), changes, reach }];
}

/**
 * Asks the rule of all values between two at once. That a narrower stretch could settle what is open is looked into for
 * the whole of a ladder: where the number is not what leaves it open, nothing on it helps.
 */
export function asking(
  fact: string,
  { count, at }: Ladder,
  { ready, facts }: Asked,
): (from: number, to: number) => Answer {
  return (from, to) => {
    const [one, other] = [at(from), at(to)];
    const supposed = new SupposedNumber(facts, fact, Math.min(one, other), Math.max(one, other));
    const { outcome, atBest } = ready.compiled.outcomeOn(supposed);
    if (isSettled(outcome)) return "helps";
    if (!isOpen(outcome) || atBest === null || !isSettled(atBest)) return "no";
    if (from > 0 || to < count - 1) return "open";
    const { open } = ready.compiled.judge(supposed);
    // Beside a number that is known by one end alone, a number can be large or small enough all the same.
    const mayMatter = (id: string): boolean => facts.get(id)?.known === true || surveyFactsUnder(id).includes(fact);
    return open.some((missing) => mayMatter(missing.fact)) ? "open" : "no";
  };
}
