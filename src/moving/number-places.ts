import { factOf, isNumeric } from "../facts/index.js";
import type { Band, Bound, Condition, LimitEntry, Rule } from "../rulebook/index.js";

/** What kind of number it is that moves. */
export type Moves = "number" | "factor" | "shift" | "model value";

/** A number that a rule compares a fact with, and that can be another one. */
export interface NumberPlace {
  /** As a person names it: the side, the kind of band, and what moves where that is not the obvious thing. */
  readonly name: string;
  readonly moves: Moves;
  /** The fact that is compared with it. */
  readonly fact: string;
  /** Null for a factor, and where the fact has no unit. */
  readonly unit: string | null;
  /** The number as it is; null for the value of a model, which depends on the model. */
  readonly value: number | null;
  /** The bound that it belongs to; a bare number is a bound of its own. */
  readonly bound: Bound;
  readonly at: Rule["at"];
  /** The other number that it may not pass, if the rule states one: the other end of a range. */
  readonly end: { readonly is: "lowest" | "highest"; readonly value: number } | null;
  /** The rule with another number in this place; the same rule for the value of a model. */
  readonly with: (value: number) => Rule;
}

type Part = Omit<NumberPlace, "at" | "name" | "end" | "with"> & { readonly with: (value: number) => Bound };

/**
 * The numbers of a rule that can be moved, of the limits in force and of its conditions, in the order of the file. A
 * bound that is a fact has up to three: the factor, the shift, and the value of the sensor model. Named conditions are
 * not looked into, since other rules rest on them too.
 */
export function numberPlaces(rule: Rule, entry: LimitEntry, judged: string | null): readonly NumberPlace[] {
  const index = rule.limits.indexOf(entry);
  const sides = (["fail", "warn"] as const).flatMap((side) =>
    entry[side].flatMap((band, at) => {
      const withBand = (other: Band): Rule => ({
        ...rule,
        limits: rule.limits.with(index, { ...entry, [side]: entry[side].with(at, other) }),
      });
      return placesOfBand(band, side, judged, withBand);
    }),
  );
  const { appliesWhen } = rule;
  const applies =
    appliesWhen === null
      ? []
      : placesOfCondition(appliesWhen, "applies when", rule.at, (other) => ({ ...rule, appliesWhen: other }));
  return numbered([...sides, ...applies]);
}

/** Places of one name are told apart by a number. */
function numbered(places: readonly NumberPlace[]): readonly NumberPlace[] {
  const seen = new Map<string, number>();
  return places.map((place) => {
    const count = (seen.get(place.name) ?? 0) + 1;
    seen.set(place.name, count);
    return count === 1 ? place : { ...place, name: `${place.name} ${count}` };
  });
}

function placesOfBand(
  band: Band,
  side: string,
  judged: string | null,
  withBand: (band: Band) => Rule,
): readonly NumberPlace[] {
  const { at } = band;
  if (band.is === "when") {
    return placesOfCondition(band.condition, `${side} when`, at, (condition) => withBand({ ...band, condition }));
  }
  if (judged === null || "choices" in band) return [];
  if (band.is !== "outside") {
    const places = placesOfBound(band.bound, judged);
    return named(places, `${side} ${band.is}`, { at, end: null }, (bound) => withBand({ ...band, bound }));
  }
  const [low, high] = band.bounds;
  const endOf = (bound: Bound, is: "lowest" | "highest"): NumberPlace["end"] =>
    bound.kind === "number" ? { is, value: bound.value } : null;
  return [
    ...named(placesOfBound(low, judged), `${side} outside low`, { at, end: endOf(high, "highest") }, (bound) =>
      withBand({ ...band, bounds: [bound, high] }),
    ),
    ...named(placesOfBound(high, judged), `${side} outside high`, { at, end: endOf(low, "lowest") }, (bound) =>
      withBand({ ...band, bounds: [low, bound] }),
    ),
  ];
}

/** The first of the places is what a person means who says no more; the others say what of the bound they move. */
function named(
  parts: readonly Part[],
  name: string,
  more: Pick<NumberPlace, "at" | "end">,
  withBound: (bound: Bound) => Rule,
): readonly NumberPlace[] {
  return parts.map((part, index) => ({
    ...part,
    at: more.at,
    // Of a bound that is scaled, the other end of the range says nothing of the factor.
    end: part.moves === "number" ? more.end : null,
    name: index === 0 ? name : `${name}, ${part.moves}`,
    with: (value) => withBound(part.with(value)),
  }));
}

function placesOfBound(bound: Bound, judged: string): readonly Part[] {
  const { unit: own, dimension } = factOf(judged);
  const unit = own ?? null;
  if (bound.kind === "number") {
    const { value } = bound;
    return [{ moves: "number", fact: judged, unit, value, bound, with: (other) => ({ kind: "number", value: other }) }];
  }
  const isTemperature = dimension === "temperature";
  const factor: Part = {
    moves: "factor",
    fact: judged,
    unit: null,
    value: bound.times,
    bound,
    with: (times) => ({ ...bound, times }),
  };
  const shift: Part = {
    moves: "shift",
    fact: judged,
    // A shift of a temperature is a difference.
    unit: isTemperature ? "K" : unit,
    value: bound.plus,
    bound,
    with: (plus) => ({ ...bound, plus }),
  };
  const { source, unit: ofModel } = factOf(bound.fact);
  const model: readonly Part[] =
    source === "model"
      ? [{ moves: "model value", fact: judged, unit: ofModel ?? null, value: null, bound, with: () => bound }]
      : [];
  // A temperature cannot be scaled; its zero is a convention.
  if (isTemperature) return bound.plus === 0 ? [...model, shift] : [shift, ...model];
  if (bound.times !== 1) return [factor, shift, ...model];
  return bound.plus !== 0 ? [shift, factor, ...model] : [...model, factor, shift];
}

function placesOfCondition(
  condition: Condition,
  name: string,
  at: Rule["at"],
  withCondition: (condition: Condition) => Rule,
): readonly NumberPlace[] {
  switch (condition.kind) {
    case "named":
      return [];
    case "not":
      return placesOfCondition(condition.part, name, at, (part) => withCondition({ ...condition, part }));
    case "all":
    case "any":
      return condition.parts.flatMap((part, index) =>
        placesOfCondition(part, name, at, (other) =>
          withCondition({ ...condition, parts: condition.parts.with(index, other) }),
        ),
      );
    case "comparison": {
      const { fact, operator, value } = condition;
      const definition = factOf(fact);
      if (typeof value !== "number" || !isNumeric(definition)) return [];
      return [
        {
          name: `${name} ${fact} ${operator}`,
          moves: "number",
          fact,
          unit: definition.unit ?? null,
          value,
          bound: { kind: "number", value },
          at,
          end: null,
          with: (other) => withCondition({ ...condition, value: other }),
        },
      ];
    }
  }
}
