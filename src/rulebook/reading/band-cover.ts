import type { Band, Bound } from "../book/rule.js";
import { below, type Report } from "../text/source.js";

/**
 * Reports a warning that can never be heard, since whatever breaks it breaks a failing limit too, and a band that
 * another one of the same side covers: most often two numbers that were swapped.
 *
 * @param pointers - of the two sides
 */
export function checkCovered(
  fail: readonly Band[],
  warn: readonly Band[],
  pointers: { readonly fail: string; readonly warn: string },
  report: Report,
): void {
  for (const [index, band] of warn.entries()) {
    if (!fail.some((one) => covers(one, band))) continue;
    const text =
      "whatever breaks this limit fails already, so that it never warns; swap the two, or leave this one out";
    report.atValue(placeOf(pointers.warn, index, warn.length), "warning-never-heard", text);
  }
  for (const [side, bands] of [
    ["fail", fail],
    ["warn", warn],
  ] as const) {
    for (const [index, band] of bands.entries()) {
      const other = bands.find((one, at) => at !== index && covers(one, band) && !(covers(band, one) && at > index));
      if (other === undefined) continue;
      const text = `another limit of ${side} is broken by whatever breaks this one; leave it out`;
      report.atValue(placeOf(pointers[side], index, bands.length), "limit-of-no-use", text);
    }
  }
}

function placeOf(pointer: string, index: number, length: number): string {
  return length > 1 ? below(pointer, index) : pointer;
}

/** Whether everything that breaks the inner band breaks the outer one; false also where it cannot be told. */
function covers(outer: Band, inner: Band): boolean {
  if (outer.is === "when" || inner.is === "when") {
    return outer.is === "when" && inner.is === "when" && isSame(outer.condition, inner.condition);
  }
  if (outer.is === "oneOf" && inner.is === "oneOf") return inner.choices.every((one) => outer.choices.includes(one));
  if (outer.is === "noneOf" && inner.is === "noneOf") return outer.choices.every((one) => inner.choices.includes(one));
  if ("choices" in outer || "choices" in inner) return false;
  return sidesOf(inner).every((side) => sidesOf(outer).some((one) => sideCovers(one, side)));
}

interface Side {
  readonly way: "down" | "up";
  readonly bound: Bound;
  /** The bound itself breaks it. */
  readonly inclusive: boolean;
}

function sidesOf(band: Exclude<Band, { is: "when" | "oneOf" | "noneOf" }>): readonly Side[] {
  if (band.is === "outside") {
    return [
      { way: "down", bound: band.bounds[0], inclusive: false },
      { way: "up", bound: band.bounds[1], inclusive: false },
    ];
  }
  const way = band.is === "below" || band.is === "atOrBelow" ? "down" : "up";
  return [{ way, bound: band.bound, inclusive: band.is.startsWith("atOr") }];
}

function sideCovers(outer: Side, inner: Side): boolean {
  if (outer.way !== inner.way) return false;
  const difference = differenceOf(outer.bound, inner.bound);
  if (difference === null) return false;
  const further = outer.way === "down" ? difference : -difference;
  const isSameEnd = outer.inclusive || !inner.inclusive;
  // Two shares of a fact are one number where the fact is 0.
  const canMeet = outer.bound.kind === "fact" && inner.bound.kind === "fact" && outer.bound.times !== inner.bound.times;
  return further > 0 ? !canMeet || isSameEnd : further === 0 && isSameEnd;
}

/** How far one bound lies above another, in sign; null where that depends on facts. */
function differenceOf(one: Bound, other: Bound): number | null {
  if (one.kind === "number" && other.kind === "number") return one.value - other.value;
  if (one.kind !== "fact" || other.kind !== "fact" || one.fact !== other.fact) return null;
  if (one.times === other.times) return one.plus - other.plus;
  // Facts that bounds scale are lengths, speeds, currents and the like, none below 0.
  return one.plus === other.plus && one.times >= 0 && other.times >= 0 ? one.times - other.times : null;
}

function isSame(one: unknown, other: unknown): boolean {
  return JSON.stringify(one) === JSON.stringify(other);
}
