import { formatNumber } from "../../base/index.js";
import { factName } from "../../facts/index.js";
import type { LimitMoved, Stretch } from "../../moving/index.js";

/** Digits of the moved number that are shown; two values of a survey may lie close together. */
export const DIGITS = 9;

/** A value of the moved number ("28.5 mm", "1.1 times"). */
export function valueInWords({ place }: Pick<LimitMoved, "place">, value: number): string {
  if (place.moves === "factor") return `${formatNumber(value, null, DIGITS)} times`;
  return formatNumber(value, place.unit, DIGITS);
}

/** What moves, in one line ("the number in "fail below" for the hole depth"). */
export function movedInWords({ place, model }: Pick<LimitMoved, "place" | "model">): string {
  const { bound, fact, name, moves } = place;
  const where = `"${name}" for the ${factName(fact)}`;
  const of = bound.kind === "fact" ? factName(bound.fact) : "";
  if (moves === "number") return `the number in ${where}`;
  if (moves === "factor") return `the factor on the ${of} in ${where}`;
  if (moves === "shift") return `what is added to the ${of} in ${where}`;
  return `the ${of}, of the sensor model "${model ?? ""}", in ${where}`;
}

/** What the horizontal axis and the first column are headed with ("seat diameter that the sensor needs, mm"). */
export function axisInWords({ place }: Pick<LimitMoved, "place">): string {
  const { bound, fact } = place;
  const of = bound.kind === "fact" ? factName(bound.fact) : factName(fact);
  if (place.moves === "factor") return `factor on ${of}`;
  const what = { number: `limit of ${of}`, shift: `shift of ${of}`, "model value": of }[place.moves];
  return place.unit === null || place.unit === "" ? what : `${what}, ${place.unit}`;
}

/** Whether a value lies in a stretch. */
export function holdsValue({ from, fromIncluded, to, toIncluded }: Stretch, value: number): boolean {
  return (fromIncluded ? from <= value : from < value) && (toIncluded ? value <= to : value < to);
}
