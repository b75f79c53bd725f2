import type { Truth } from "../base/index.js";
import { requireWithin } from "./require-number.js";

/** A degree of protection as marked. */
export interface IpCode {
  /** First digit, 0 to 6; null where marked X. */
  readonly solids: number | null;
  /** Second digits, each 0 to 9: two where marked for both, as IP66/IP68; none where marked X. */
  readonly water: readonly number[];
}

const MARK = /^IP\s?([0-6X])(9K|[0-9X])(?:\s?\/\s?(?:IP\s?)?([0-6X])?(9K|[0-9]))?$/;

/**
 * Reads a degree of protection: IP65, IPX7, IP66/IP67, IP67/69K, ip 54.
 *
 * Source: IEC 60529 as reprinted. 9K is the spelling of road vehicle standards and is read as 9; 4K and 6K stand for
 * other tests and are not read. Additional letters are not read either.
 *
 * @returns the digits, or null where the text is none of these
 */
export function readIpCode(text: string): IpCode | null {
  const match = MARK.exec(text.trim().toUpperCase());
  if (!match) return null;
  const [, first, second, otherFirst, otherSecond] = match;
  const [solids, ...others] = new Set([first, otherFirst].flatMap(digitOf));
  if (others.length > 0) return null;
  return { solids: solids ?? null, water: [second, otherSecond].flatMap(digitOf) };
}

function digitOf(mark: string | undefined): number[] {
  return mark === undefined || mark === "X" ? [] : [Number(mark.charAt(0))];
}

/**
 * Whether one second digit says that the tests of another are met.
 *
 * Source: IEC 60529 as quoted (clause 6): up to 6 a digit includes all lower ones; 7 and 8 alone do not include the
 * jets 5 and 6. That 8 is harder than 7, and that 9 alone includes neither jets nor immersion, is from memory.
 *
 * @param marked - 0 to 9
 * @param asked - 0 to 9
 * @returns true, false, or null where the sources do not say (drops and splashes under 7, 8 and 9)
 */
export function waterDigitIncludes(marked: number, asked: number): Truth {
  mustBeDigit("marked", marked, 9);
  mustBeDigit("asked", asked, 9);
  if (asked === marked || asked === 0) return true;
  if (asked > marked) return false;
  if (marked <= 6) return true;
  if (marked === 8 && asked === 7) return true;
  return asked <= 4 ? null : false;
}

/**
 * Whether a marked degree of protection includes the one that is asked for.
 *
 * Source: as {@link waterDigitIncludes}; each first digit includes all lower ones.
 *
 * @param marked - as read
 * @param asked - first digit 0 to 6, and a second digit 0 to 9
 * @returns true, false, or null where it is not known
 */
export function ipCodeIncludes(marked: IpCode, asked: { readonly solids: number; readonly water: number }): Truth {
  mustBeDigit("asked.solids", asked.solids, 6);
  mustBeDigit("asked.water", asked.water, 9);
  const solids: Truth = asked.solids === 0 ? true : marked.solids === null ? null : marked.solids >= asked.solids;
  const waters = marked.water.map((digit) => waterDigitIncludes(digit, asked.water));
  const water: Truth =
    asked.water === 0 || waters.includes(true) ? true : waters.length === 0 || waters.includes(null) ? null : false;
  if (solids === false || water === false) return false;
  return solids === null || water === null ? null : true;
}

/** Water that a place is exposed to, worst last but for immersion, which is another kind of test. */
export type WaterExposure = "dry" | "splash" | "jets" | "hot-high-pressure" | "submerged";

/** Whether a degree of protection covers an exposure: as a whole, only a milder form of it, or not. */
export type WaterProtection = "covers" | "partly" | "lacks";

/**
 * Whether a marked degree of protection suits the water at its place.
 *
 * Source: as {@link waterDigitIncludes}: splashes ask for 4, jets for 5, and immersion does not include jets. Under water
 * asks for 8: the test of 7 is half an hour under 1 m at most (IEC 60529 as several pages quote it, read 2026-11-26), which is
 * a milder form of it. Common practice: 9 for hot cleaning under high pressure, for which 5 and 6 are tests of a milder jet;
 * 7, 8 and 9 are taken as good against splashes, of which the standard as quoted does not speak.
 *
 * @returns null where the marking says nothing of water
 */
export function waterProtection(marked: IpCode, exposure: WaterExposure): WaterProtection | null {
  if (exposure === "dry") return "covers";
  if (marked.water.length === 0) return null;
  const meets = (asked: number): boolean =>
    marked.water.some((digit) => waterDigitIncludes(digit, asked) === true || (asked === 4 && digit >= 7));
  if (exposure === "splash") return meets(4) ? "covers" : "lacks";
  const [full, mild] = DIGITS_ASKED[exposure];
  if (meets(full)) return "covers";
  return meets(mild) ? "partly" : "lacks";
}

/** The digit that an exposure asks for, and that of a milder form of it. */
const DIGITS_ASKED = { jets: [5, 9], "hot-high-pressure": [9, 5], submerged: [8, 7] } as const;

function mustBeDigit(name: string, value: number, highest: number): void {
  requireWithin(name, value, 0, highest);
  if (!Number.isInteger(value)) throw new RangeError(`${name} must be a whole number, got ${value}`);
}
