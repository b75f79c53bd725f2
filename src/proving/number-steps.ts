import { round12 } from "../base/index.js";

/** Decimals past which a number is a converted one and nobody wrote them. */
const MOST_DECIMALS = 4;

/** One step in the last digit of a number as written: 15 by 1, 20.4 by 0.1; of a converted one in the third digit. */
export function lastDigit(value: number): number {
  const [, decimals = ""] = String(value).split(".");
  if (String(value).includes("e") || decimals.length > MOST_DECIMALS) {
    return 10 ** (Math.floor(Math.log10(Math.abs(value))) - 2);
  }
  return decimals === "" ? 1 : Number(`1e-${decimals.length}`);
}

/** The numbers one step in the last digit to both sides. */
export function besideNumber(value: number): readonly [number, number] {
  const step = lastDigit(value);
  return [round12(value - step), round12(value + step)];
}
