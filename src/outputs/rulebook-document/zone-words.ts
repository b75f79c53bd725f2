import { markedOutcome } from "../wording/outcomes.js";
import type { BandPicture } from "./band-picture.js";
import type { Border, Zone } from "./bands.js";

/** The values of a zone with its limits named ("below 30 mm", "20.4 V to 28.8 V"). */
export function zoneInWords({ from, to }: Zone, borders: readonly Border[]): string {
  const name = (end: NonNullable<Zone["from"]>): string => borderInWords(borders[end.border]);
  if (from === null && to === null) return "any value";
  if (from === null && to !== null) return `${to.included ? "up to" : "below"} ${name(to)}`;
  if (to === null && from !== null) return from.included ? `${name(from)} and more` : `above ${name(from)}`;
  if (from === null || to === null) return "";
  if (from.border === to.border) return `just ${name(from)}`;
  return `${from.included ? "" : "above "}${name(from)} to ${to.included ? "" : "below "}${name(to)}`;
}

function borderInWords(border: Border | undefined): string {
  return border?.words ?? "";
}

/** Where a zone lies to the limits beside it, for a picture in which the limits are named below. */
export function zonePlace({ from, to }: Zone): string {
  if (from === null && to === null) return "";
  if (from === null) return to?.included ? "up to the limit" : "below the limit";
  if (to === null) return from.included ? "from the limit on" : "above the limit";
  if (from.border === to.border) return "just there";
  if (from.included && to.included) return "both limits and between";
  if (from.included) return "from the lower limit on";
  return to.included ? "up to the upper limit" : "between the limits";
}

/** What a reader must know beside the zones: what is drawn for which case, and that the rule can be broken otherwise. */
export function pictureNotes(picture: BandPicture): readonly string[] {
  const notes: string[] = [];
  if (picture.of === "numbers" && picture.drawnFor !== null) notes.push(picture.drawnFor);
  if (picture.hasMore) notes.push("pass only where the other limits of the rule are kept, too");
  return notes;
}

/** A picture in words, for those who do not see it. */
export function pictureInWords(picture: BandPicture): string {
  const parts =
    picture.of === "choices"
      ? picture.choices.map(({ outcome, names }) => `${names.join(", ")}: ${outcome}`)
      : picture.zones.map((zone) => `${zoneInWords(zone, picture.borders)}: ${zone.outcome}`);
  return [...parts, ...valueNotes(picture), ...pictureNotes(picture)].map((part) => `${part}.`).join(" ");
}

/** What the rulebook gives the limits that are facts ("seat diameter the model needs is 30 mm by baseline"). */
export function valueNotes(picture: BandPicture): readonly string[] {
  if (picture.of === "choices") return [];
  return picture.borders.flatMap(({ words, value }) =>
    value === null ? [] : [`${words} is ${value.words} by ${value.by}`],
  );
}

/** Rows of the picture as a table: values, then what comes out. */
export function pictureRows(picture: BandPicture): readonly (readonly [values: string, outcome: string])[] {
  if (picture.of === "choices") {
    return picture.choices.map(({ outcome, names }) => [names.join(", "), markedOutcome(outcome)]);
  }
  return picture.zones.map((zone) => [zoneInWords(zone, picture.borders), markedOutcome(zone.outcome)]);
}
