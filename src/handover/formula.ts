import { looksLikeFormula, showText } from "../base/index.js";

/**
 * A reference designation: aspects with their signs (=A1+B2-C3) in front of capital letters, digits and full stops.
 * IEC 81346-1, from memory.
 */
const DESIGNATION = /^[=+-]{1,2}[A-Z0-9.]+(?:[=+-][A-Z0-9.]+)*$/;

/** Why a code must not be written as it stands, and it is never changed; null where it may. */
export function formulaTrouble(code: string): string | null {
  if (!looksLikeFormula(code) || DESIGNATION.test(code)) return null;
  return (
    `"${showText(code)}" begins like a formula and is no reference designation (=, + or - in front of capital letters, ` +
    "digits and full stops); a code is not changed, so mend it in the survey, or make the column a text"
  );
}
