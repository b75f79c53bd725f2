import { round12 } from "../base/index.js";
import type { DayPattern, FileForm } from "./mapping.js";

/**
 * A number as it is written: no grouping, no exponent, the same on every machine.
 *
 * @param decimals - digits behind the decimal sign; null: as many as it takes
 */
export function numberInWriting(value: number, decimals: number | null, sign: FileForm["decimalSign"]): string {
  const plain = decimals === null ? shortest(round12(value)) : noMinusZero(round12(value).toFixed(decimals));
  return sign === "comma" ? plain.replace(".", ",") : plain;
}

function shortest(value: number): string {
  const text = String(value + 0);
  if (!text.includes("e")) return text;
  // Beyond the reach of plain notation: whole numbers from 1e21 on, and fractions below 1e-6.
  if (Math.abs(value) >= 1) return BigInt(value).toString();
  return noMinusZero(value.toFixed(20).replace(/0+$/, "").replace(/\.$/, ""));
}

function noMinusZero(text: string): string {
  return /^-0(?:\.0*)?$/.test(text) ? text.slice(1) : text;
}

/** A day by a pattern. */
export function dayInWriting(day: string, pattern: DayPattern): string {
  const [year = "", month = "", of = ""] = day.split("-");
  return pattern.replace("YYYY", year).replace("MM", month).replace("DD", of);
}
