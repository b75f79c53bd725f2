import { factName, findFact, plainWords } from "../../facts/index.js";
import type { Band, LimitEntry } from "../../rulebook/index.js";
import { type Zones, zonesOf } from "./bands.js";
import type { BoundValues } from "./bound-values.js";
import { bandsOnLine } from "./number-bands.js";

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
}

export interface ChoicePicture {
  readonly of: "choices";
  readonly axis: string;
  readonly id: string;
  readonly hasMore: boolean;
  /** Choices in words, the worst outcome first. */
  readonly choices: readonly { readonly outcome: "fail" | "warn" | "pass"; readonly names: readonly string[] }[];
}

/**
 * The picture of the bands of a limit; null where it speaks of conditions alone.
 *
 * @param judged - the facts judged at any stage; they have one unit
 */
export function bandPicture(
  id: string,
  limit: LimitEntry,
  judged: readonly string[],
  boundValue: BoundValues,
): BandPicture | null {
  const line = bandsOnLine(limit, judged);
  if (line === null) return choicePicture(id, limit, judged);
  const subjects = line.fact === null ? judged : [line.fact];
  const { unit = null, kind = "count" } = findFact(subjects[0] ?? "") ?? {};
  // What is counted stands behind each number.
  const axis = `${namesOf(subjects)}${unit === null || kind === "count" ? "" : `, ${unitName(unit)}`}`;
  return { ...zonesOf(line.bands, unit, boundValue), of: "numbers", id, axis, hasMore: line.hasMore };
}

function choicePicture(id: string, { fail, warn }: LimitEntry, judged: readonly string[]): ChoicePicture | null {
  const all = findFact(judged[0] ?? "")?.choices ?? [];
  if (all.length === 0 || ![...fail, ...warn].some(isOfChoices)) return null;
  const breaks = (bands: readonly Band[], choice: string): boolean =>
    bands.filter(isOfChoices).some(({ is, choices }) => choices.includes(choice) === (is === "oneOf"));
  const outcomeOf = (choice: string): "fail" | "warn" | "pass" =>
    breaks(fail, choice) ? "fail" : breaks(warn, choice) ? "warn" : "pass";
  const choices = (["fail", "warn", "pass"] as const)
    .map((outcome) => ({ outcome, names: all.filter((choice) => outcomeOf(choice) === outcome).map(plainWords) }))
    .filter(({ names }) => names.length > 0);
  return { of: "choices", id, axis: namesOf(judged), hasMore: ![...fail, ...warn].every(isOfChoices), choices };
}

function isOfChoices(band: Band): band is Extract<Band, { is: "oneOf" | "noneOf" }> {
  return band.is === "oneOf" || band.is === "noneOf";
}

function namesOf(facts: readonly string[]): string {
  return [...new Set(facts)].map(factName).join(" or ");
}

/** A unit as people write it behind a comma. */
export function unitName(unit: string): string {
  return unit === "deg" ? "°" : unit;
}
