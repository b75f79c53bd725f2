import { round12 } from "../base/index.js";
import { factOf } from "../facts/index.js";
import type { Band, Bound } from "../rulebook/index.js";
import { alterCondition } from "./alter-conditions.js";
import type { Altered } from "./alteration.js";
import { besideNumber } from "./number-steps.js";

/** A bound that is a plain fact is altered by a twentieth. */
const SHARE = 0.05;

type OneSided = Extract<Band, { is: "below" | "above" | "atOrBelow" | "atOrAbove" }>;

/** What stands nearest to each kind of band: the limit itself in or out, and the other side. */
const NEAR: Readonly<Record<OneSided["is"], readonly OneSided["is"][]>> = {
  below: ["atOrBelow", "atOrAbove"],
  above: ["atOrAbove", "atOrBelow"],
  atOrBelow: ["below", "above"],
  atOrAbove: ["above", "below"],
};

/**
 * A band with one thing in it altered.
 *
 * @param judged - the fact it speaks of, or null where only free conditions speak
 */
export function alterBand(band: Band, judged: string | null): readonly Altered<Band>[] {
  switch (band.is) {
    case "when":
      return alterCondition(band.condition).map(({ kind, what, thing }) => ({
        kind,
        what,
        thing: { ...band, condition: thing },
      }));
    case "oneOf":
    case "noneOf":
      return alterChoices(band, judged);
    case "outside":
      return alterOutside(band);
    default:
      return [...alterSide(band), ...alterBound(band.bound).map((altered) => boundIn(band, altered))];
  }
}

function boundIn(band: OneSided, { kind, what, thing }: Altered<Bound>): Altered<Band> {
  return { kind, what: `${band.is} ${what}`, thing: { ...band, bound: thing } };
}

function alterSide(band: OneSided): readonly Altered<Band>[] {
  return NEAR[band.is].map((is) => ({ kind: "operator", what: `${band.is} becomes ${is}`, thing: { ...band, is } }));
}

function alterOutside(band: Extract<Band, { is: "outside" }>): readonly Altered<Band>[] {
  const [low, high] = band.bounds;
  return [
    { kind: "operator", what: "outside becomes below", thing: { is: "below", bound: low, at: band.at } },
    { kind: "operator", what: "outside becomes above", thing: { is: "above", bound: high, at: band.at } },
    ...alterBound(low).map(
      ({ kind, what, thing }): Altered<Band> => ({
        kind,
        what: `outside, low end ${what}`,
        thing: { ...band, bounds: [thing, high] },
      }),
    ),
    ...alterBound(high).map(
      ({ kind, what, thing }): Altered<Band> => ({
        kind,
        what: `outside, high end ${what}`,
        thing: { ...band, bounds: [low, thing] },
      }),
    ),
  ];
}

function alterBound(bound: Bound): readonly Altered<Bound>[] {
  const altered = (thing: Bound, what: string): Altered<Bound> => ({ kind: "limit", what, thing });
  if (bound.kind === "number") {
    return besideNumber(bound.value).map((value) =>
      altered({ kind: "number", value }, `${bound.value} becomes ${value}`),
    );
  }
  const isTemperature = factOf(bound.fact).dimension === "temperature";
  const scales = bound.times === 1 ? [1 - SHARE, 1 + SHARE] : besideNumber(bound.times);
  const scaled = isTemperature
    ? []
    : scales.map((times) =>
        altered({ ...bound, times: round12(times) }, `${bound.fact} becomes ${round12(times)} times`),
      );
  if (bound.plus === 0 && !isTemperature) return scaled;
  const shifts = besideNumber(bound.plus);
  return [
    ...scaled,
    ...shifts.map((plus) => altered({ ...bound, plus }, `${bound.fact} plus ${bound.plus} becomes ${plus}`)),
  ];
}

function alterChoices(
  band: Extract<Band, { is: "oneOf" | "noneOf" }>,
  judged: string | null,
): readonly Altered<Band>[] {
  const { choices } = band;
  const others = (judged === null ? [] : (factOf(judged).choices ?? [])).filter((choice) => !choices.includes(choice));
  const is = band.is === "oneOf" ? ("noneOf" as const) : ("oneOf" as const);
  const fewer = choices.length < 2 ? [] : choices;
  return [
    { kind: "operator", what: `${band.is} becomes ${is}`, thing: { ...band, is } },
    ...fewer.map(
      (choice): Altered<Band> => ({
        kind: "limit",
        what: `${band.is} without ${choice}`,
        thing: { ...band, choices: choices.filter((one) => one !== choice) },
      }),
    ),
    ...others.map(
      (choice): Altered<Band> => ({
        kind: "limit",
        what: `${band.is} and ${choice}`,
        thing: { ...band, choices: [...choices, choice] },
      }),
    ),
  ];
}
