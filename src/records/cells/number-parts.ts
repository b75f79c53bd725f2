import { showText, type Unit, unitOf } from "../../base/index.js";
import type { FactDefinition } from "../../facts/index.js";
import type { Vocabulary } from "../words/vocabulary.js";
import { type CellTrouble, trouble } from "./cell-reading.js";
import { readUnit, type UnitRead } from "./cell-unit.js";
import type { OpenedNumber } from "./number-opening.js";
import { type NumberStyle, readDigits } from "./number-style.js";

/** What surrounds a number cell. */
export interface NumberContext {
  readonly field: FactDefinition;
  readonly style: NumberStyle;
  /** Unit and kind of supply that the heading states. */
  readonly headingUnit: Unit | null;
  readonly headingSupply: "dc" | "ac" | null;
  /** The heading speaks of a unit, but not so that a bare number below it can be read. */
  readonly headingUnsettled?: boolean;
  /** Why the unit that would be assumed is doubted, and what to do. */
  readonly unitDoubt?: string | undefined;
  readonly vocabulary: Vocabulary;
}

const NUMBER = /^([+-]?)\s?(\d{1,3}(?:[ \u00a0\u202f\u2009'’]\d{3})+(?!\d)(?:[.,]\d+)?|\d+(?:[.,]\d+)*|[.,]\d+)/;
/** 3/4, 1 1/2, 1-1/2. */
const FRACTION = /^(?:(\d{1,4})(?:[ \u00a0]+|-))?(\d{1,3})\/(2|4|8|16|32|64)(?![\d.,])/;

/** A number taken off the front of a text. */
export interface Taken {
  readonly ok: true;
  readonly value: number;
  readonly rest: string;
  readonly fraction: boolean;
  /** Half of the last decimal place; 0 of a fraction. */
  readonly lastPlace: number;
}

/** A number cell with its first number taken off. */
export interface NumberParts {
  readonly first: Taken;
  /** What follows the number, trimmed. */
  readonly rest: string;
  /** It follows without a blank. */
  readonly glued: boolean;
  readonly opened: OpenedNumber;
}

/** Takes the number off the front of a text; fractions (3/4, 1 1/2) only where lengths or times are asked for. */
export function takeNumber(text: string, context: NumberContext): Taken | CellTrouble {
  const { dimension } = context.field;
  const fraction = dimension === "length" || dimension === "time" ? FRACTION.exec(text) : null;
  if (fraction && Number(fraction[2]) < Number(fraction[3])) {
    const value = Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
    return { ok: true, value, rest: text.slice(fraction[0].length), fraction: true, lastPlace: 0 };
  }
  const found = NUMBER.exec(text);
  if (!found) return trouble("not-a-number", `expected a number${inUnit(context.field)}; type the number alone`);
  const [all, sign, digits = ""] = found;
  const value = readDigits(digits, context.style);
  if (value === "ambiguous") {
    return trouble("ambiguous-number", `"${digits}" can be read in two ways and nothing in the file settles it`);
  }
  if (value === null) return trouble("not-a-number", `"${showText(digits)}" is not a number in any way of writing`);
  const signed = sign === "-" ? -value : value;
  const lastPlace = halfLastPlace(value, digits);
  return { ok: true, value: signed, rest: text.slice(all.length), fraction: false, lastPlace };
}

/** Half of the last decimal place of a number, by its digits as written (0.63: 0.005; 16: 0.5; 1,480: 0.5). */
export function halfLastPlace(value: number, written: string): number {
  const decimals =
    Number.isInteger(value) && !/[.,]0+$/.test(written) ? 0 : (/[.,](\d+)$/.exec(written)?.[1]?.length ?? 0);
  return 0.5 * 10 ** -decimals;
}

function inUnit(field: FactDefinition): string {
  return field.unit === undefined ? "" : ` in ${field.unit}`;
}

/** The unit that a text behind a number spells; a count takes nothing but the name of what is counted. */
export function unitOfText(text: string, glued: boolean, context: NumberContext): UnitRead | CellTrouble {
  const { field } = context;
  if (field.dimension === undefined) {
    if (text === "" || text === field.unit) return { ok: true, unit: null, supply: null };
    return /\d/.test(text)
      ? trouble("several-values", "expected one count")
      : trouble(glued ? "not-a-number" : "unknown-unit", `expected a count of ${field.unit}, found more words`);
  }
  const unit = readUnit(text, field.dimension, glued, field.id === "supply_voltage");
  return unit.ok || field.id !== "supply_voltage" ? unit : (supplyInWords(text, context) ?? unit);
}

/** "V Gleichspannung", "V, AC", "volts continua": a voltage whose kind is said in words. */
function supplyInWords(text: string, context: NumberContext): UnitRead | null {
  const found = /^(?:(volts?|v)\b)?[\s,;]*(.+)$/iu.exec(text);
  const supply = context.vocabulary.choices.get("supply_kind")?.whole(found?.[2] ?? "");
  if (supply !== "dc" && supply !== "ac") return null;
  return { ok: true, unit: found?.[1] === undefined ? null : unitOf("V", "dc-voltage"), supply };
}
