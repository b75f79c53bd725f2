import { findFact } from "../facts/index.js";
import type { LimitEntry, Rule, Rulebook } from "../rulebook/index.js";
import {
  type LikePoints,
  likePoints,
  type ReadyRule,
  type ResultHead,
  readyRules,
  type ScreeningInput,
  type ScreeningOptions,
} from "../screening/index.js";
import { type Counted, LikeJudge } from "./like-judge.js";
import { meetingsOf, reaches } from "./meeting-values.js";
import { type Moved, modelFactMoved, modelValueOn } from "./moved-book.js";
import { type NumberPlace, numberPlaces } from "./number-places.js";
import { searchedValues } from "./searched.js";
import { type RangeAsked, type Steps, stepsOf } from "./steps.js";
import { isSameCount, type LikeMeeting, type Stretch, stretchesOf } from "./stretches.js";

/** One value of the number with what comes out. */
export interface MovedStep extends Counted {
  readonly value: number;
  readonly inForce: boolean;
  /** Something came out otherwise at the value before. */
  readonly changes: boolean;
}

/** How the counts move as one number of one rule moves. */
export interface LimitMoved {
  readonly head: ResultHead;
  readonly rule: Rule;
  readonly entry: LimitEntry;
  readonly place: NumberPlace;
  /** The sensor model whose value moves; null where the number stands in the rule. */
  readonly model: string | null;
  /** The number as it is in force. */
  readonly inForce: number;
  /** Other rules of the set that feel the move, since they rest on the same value of the model. */
  readonly alsoMoved: readonly string[];
  readonly points: number;
  readonly from: number;
  readonly to: number;
  readonly step: number;
  readonly steps: readonly MovedStep[];
  /** From the first value to the last without a gap: where exactly the counts move. */
  readonly stretches: readonly Stretch[];
  /** Points for which something changes at values below or above those looked at. */
  readonly below: number;
  readonly above: number;
}

/** What is asked, on a place of `placesIn`. */
export interface MoveAsked extends RangeAsked {
  readonly rule: Rule;
  readonly place: NumberPlace;
  /** Id of the sensor model whose value moves; null where the surveys name one alone. */
  readonly model: string | null;
}

/** The numbers of a rule that can be moved at a stage and day, and the dated limits that hold then. */
export function placesIn(
  rule: Rule,
  { stage, asOf }: Pick<ScreeningOptions, "stage" | "asOf">,
): { readonly entry: LimitEntry; readonly places: readonly NumberPlace[] } | null {
  const entry = rule.limits.find(({ from, until }) => from <= asOf && (until === null || asOf < until));
  if (!entry || !rule.stages.includes(stage)) return null;
  return { entry, places: numberPlaces(rule, entry, rule.judges[stage]) };
}

/**
 * Moves one number of one rule over a range and counts at each value what the rule says, and the verdicts of the
 * points. All other rules are asked once; where the number is the value of a sensor model, every rule that rests on it
 * moves with it.
 *
 * @returns a sentence where what was asked for cannot be meant
 * @throws RangeError if the rulebook has no such set
 */
export function moveLimit(input: ScreeningInput, asked: MoveAsked): LimitMoved | string {
  const { rulebook, options } = input;
  const { rule, place } = asked;
  const found = placesIn(rule, options);
  const rules = rulesFeeling(readyRules(rulebook, options), rule, place);
  if (found === null || rules.length === 0)
    return `--rule: "${rule.id}" is not asked of these points at this stage and day`;
  const grouped = groupsFeeling(rules, place);
  if (grouped !== null) return grouped;
  const { head, like } = likePoints(input, new Set(rules.map((ready) => ready.rule.id)));
  const model = place.moves === "model value" ? modelOf(asked, rulebook, like) : null;
  if (typeof model === "string") return model;
  const moved: Moved = { rule, place, model };
  const inForce = valueInForce(moved, options);
  if (inForce === null)
    return `--model: "${model?.id}" states no single value for ${modelFactMoved(moved)} on ${options.asOf}`;
  const fits = fitting(moved, options);
  const meetings = meetingsOf(moved, rules, rulebook);
  const judge = new LikeJudge(rules, moved, rulebook, options);
  const met = like.map((one): LikeMeeting => ({ like: one, meets: meetings.of(one.facts) }));
  const near = met.flatMap(({ meets }) => meets);
  const steps = stepsOf(asked, inForce, near, fits);
  if (typeof steps === "string") return steps;
  for (const value of [steps.from, steps.to]) if (!fits(value)) return endPassed(moved, value);
  // Only some outputs tell of them.
  let stretches: readonly Stretch[] | null = null;
  const stretched = (): readonly Stretch[] => {
    stretches ??= stretchesOf(meetings.needsSearch ? withSearched(met, judge, steps) : met, judge, [
      steps.from,
      steps.to,
    ]);
    return stretches;
  };
  const beyond = (isBeyond: (value: number) => boolean): number =>
    met.reduce((sum, { like: one, meets }) => sum + (meets.some(isBeyond) ? one.points : 0), 0);
  return {
    head,
    rule,
    entry: found.entry,
    place,
    model: model?.id ?? null,
    inForce,
    alsoMoved: rules.slice(1).map((ready) => ready.rule.id),
    points: like.reduce((sum, { points }) => sum + points, 0),
    from: steps.from,
    to: steps.to,
    step: steps.step,
    steps: countedSteps(steps, like, judge, inForce),
    get stretches() {
      return stretched();
    },
    below: beyond((value) => value < steps.from),
    above: beyond((value) => value > steps.to),
  };
}

/** The rule itself first; the others where the value of a model moves that they rest on. */
function rulesFeeling(ready: readonly ReadyRule[], own: Rule, place: NumberPlace): readonly ReadyRule[] {
  const first = ready.filter(({ rule }) => rule.id === own.id);
  const { bound } = place;
  if (place.moves !== "model value" || bound.kind !== "fact") return first;
  const others = ready.filter(
    ({ rule, compiled }) => rule.id !== own.id && compiled.factsNamed.some((id) => reaches(id, bound.fact)),
  );
  return [...first, ...others];
}

/** What is judged on groups of rows rests on other points, too, which are not judged anew here. */
function groupsFeeling(rules: readonly ReadyRule[], { moves, bound }: NumberPlace): string | null {
  const ofGroups = rules.find(({ rule }) => rule.group !== null);
  if (ofGroups)
    return `--rule: "${ofGroups.rule.id}" judges groups of rows, whose limits cannot be moved here; use what-changes`;
  const moved = moves === "model value" && bound.kind === "fact" ? bound.fact : null;
  if (moved === null) return null;
  for (const { rule, compiled } of rules) {
    const group = compiled.factsNamed.find((id) => findFact(id)?.source === "group" && reaches(id, moved));
    if (group)
      return `--rule: "${rule.id}" rests on ${group}, which rows share, so that ${moved} cannot be moved here; use what-changes`;
  }
  return null;
}

function modelOf({ model }: MoveAsked, rulebook: Rulebook, like: readonly LikePoints[]): Moved["model"] | string {
  const used = [...new Set(like.flatMap(({ facts }) => (facts.model.ok ? [facts.model.model.id] : [])))].sort();
  if (model !== null) {
    return rulebook.models.get(model) ?? `--model: no sensor model "${model}"; the surveys name ${used.join(", ")}`;
  }
  const [only, ...more] = used;
  if (only === undefined)
    return "--model: no point of the surveys has a sensor model that is known; say which one is moved";
  if (more.length > 0) return `--model: the surveys name ${used.join(", ")}; say the value of which one is moved`;
  return rulebook.models.get(only) ?? null;
}

function valueInForce(moved: Moved, { asOf }: ScreeningOptions): number | null {
  const fact = modelFactMoved(moved);
  return fact === null || moved.model === null ? moved.place.value : modelValueOn(moved.model, fact, asOf);
}

/** Whether the number can have a value: one end of a range never passes the other. */
function fitting(moved: Moved, { asOf }: ScreeningOptions): (value: number) => boolean {
  const { end } = moved.place;
  if (end !== null) return (value) => (end.is === "highest" ? value <= end.value : value >= end.value);
  const fact = modelFactMoved(moved);
  if (fact === null || moved.model === null) return () => true;
  const isLow = fact.endsWith("_min");
  const partner = isLow ? fact.replace(/min$/, "max") : fact.replace(/max$/, "min");
  const other = partner === fact ? null : modelValueOn(moved.model, partner, asOf);
  if (other === null) return () => true;
  return (value) => (isLow ? value < other : value > other);
}

function endPassed({ place }: Moved, value: number): string {
  const unit = place.unit === null ? "" : ` ${place.unit}`;
  return `${value}${unit} passes the other end of the range that this number is one end of; take another --from or --to`;
}

function withSearched(met: readonly LikeMeeting[], judge: LikeJudge, { values }: Steps): readonly LikeMeeting[] {
  const searched = searchedValues(
    met.map(({ like }) => like),
    judge,
    values,
  );
  return met.map(({ like, meets }) => ({ like, meets: [...meets, ...(searched.get(like) ?? [])] }));
}

function countedSteps(
  { values }: Steps,
  like: readonly LikePoints[],
  judge: LikeJudge,
  inForce: number,
): readonly MovedStep[] {
  const steps: MovedStep[] = [];
  for (const value of values) {
    const points = new Map<string, number>();
    for (const one of like) {
      const said = judge.at(value, one);
      points.set(said, (points.get(said) ?? 0) + one.points);
    }
    const counted = judge.count(points);
    const before = steps.at(-1);
    const changes = before !== undefined && !isSameCount({ rule: before.rule, points: before.points }, counted);
    steps.push({ value, inForce: value === inForce, changes, ...counted });
  }
  return steps;
}
