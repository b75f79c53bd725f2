import { factName, findFact, plainWords } from "../../facts/index.js";
import type { LimitShown } from "../../screening/index.js";
import { isNumberBand, type Zones, zonesOf } from "./bands.js";

/** What a limit makes of the values of a fact: zones of numbers on a line, or choices by outcome. */
export type BandPicture = NumberPicture | ChoicePicture;

export interface NumberPicture extends Zones {
  readonly of: "numbers";
  /** What is judged, with its unit ("surface temperature, °C"). */
  readonly axis: string;
  /** Id that no other picture of the document has. */
  readonly id: string;
  /** The rule breaks in other ways, too, which the picture does not show. */
  readonly hasMore: boolean;
  /** The model whose values stand beside names of limits; null where none do. */
  readonly model: string | null;
}

export interface ChoicePicture {
  readonly of: "choices";
  readonly axis: string;
  readonly id: string;
  readonly hasMore: boolean;
  /** Choices in words, the worst outcome first. */
  readonly choices: readonly { readonly outcome: "fail" | "warn" | "pass"; readonly names: readonly string[] }[];
}

/** A model whose values may stand beside limits. */
export interface BaselineValues {
  readonly id: string;
  valueOf(fact: string): number | null;
}

/**
 * The picture of the bands of a limit; null where it speaks of conditions alone.
 *
 * @param judged - the facts judged, by stage, without those of no stage; they have one unit
 */
export function bandPicture(
  id: string,
  limits: readonly LimitShown[],
  judged: readonly string[],
  baseline: BaselineValues | null,
): BandPicture | null {
  const [first] = judged;
  if (first === undefined) return null;
  const numbers = limits.filter(isNumberBand);
  if (numbers.length > 0) {
    const unit = findFact(first)?.unit ?? null;
    const zones = zonesOf(numbers, unit, (fact) => baseline?.valueOf(fact) ?? null);
    return {
      ...zones,
      of: "numbers",
      id,
      axis: `${namesOf(judged)}${unit === null ? "" : `, ${unitName(unit)}`}`,
      hasMore: numbers.length < limits.length,
      model: zones.borders.some(({ baseline: value }) => value !== null) ? (baseline?.id ?? null) : null,
    };
  }
  return choicePicture(id, limits, judged, first);
}

function choicePicture(
  id: string,
  limits: readonly LimitShown[],
  judged: readonly string[],
  first: string,
): ChoicePicture | null {
  const bands = limits.filter(({ is }) => is === "oneOf" || is === "noneOf");
  const all = findFact(first)?.choices ?? [];
  if (bands.length === 0 || all.length === 0) return null;
  const outcomeOf = (choice: string): "fail" | "warn" | "pass" => {
    const held = bands.filter(({ is, choices }) => choices.includes(choice) === (is === "oneOf"));
    return held.some(({ outcome }) => outcome === "fail") ? "fail" : held.length > 0 ? "warn" : "pass";
  };
  const choices = (["fail", "warn", "pass"] as const)
    .map((outcome) => ({ outcome, names: all.filter((choice) => outcomeOf(choice) === outcome).map(plainWords) }))
    .filter(({ names }) => names.length > 0);
  return { of: "choices", id, axis: namesOf(judged), hasMore: bands.length < limits.length, choices };
}

function namesOf(facts: readonly string[]): string {
  return [...new Set(facts)].map(factName).join(" or ");
}

/** A unit as people write it behind a comma. */
export function unitName(unit: string): string {
  return unit === "deg" ? "°" : unit;
}
