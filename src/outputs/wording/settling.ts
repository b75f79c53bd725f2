import { factName } from "../../facts/index.js";
import type { SettlingStep } from "../../screening/index.js";
import { countOf } from "./numbers.js";

/** One step of what to find out ("hole depth, depth of full thread: settles 14 points more, 52 by then"). */
export function stepInWords({ facts, points, pointsSoFar }: SettlingStep): string {
  const more = pointsSoFar === points ? "" : ` more, ${pointsSoFar} by then`;
  return `${facts.map(factName).join(", ")}: settles ${countOf(points, "point")}${more}`;
}

/** Points whose verdict does not wait for what they lack. */
export function failAnywayInWords(points: number): string {
  return `${countOf(points, "point")} with something missing ${points === 1 ? "fails" : "fail"} whatever it is`;
}

/** Points that are open, and not for want of a fact. */
export function notByFactsInWords(points: number): string {
  return `${countOf(points, "point")} stay${points === 1 ? "s" : ""} open whatever is found out: a limit is not in force`;
}
