import { convert, type Interval, round12, showText, type Unit, unitSpelled } from "../base/index.js";
import type { FactDefinition } from "../facts/index.js";
import { type CellReading, type CellTrouble, trouble } from "./cell-reading.js";
import { readUnit, type UnitRead } from "./cell-unit.js";
import { openNumberText } from "./number-opening.js";
import { type NumberStyle, readDigits } from "./number-style.js";
import type { Vocabulary } from "./vocabulary.js";

/** Longest text that can be meant as a number; what is longer is refused before any pattern runs over it. */
const LONGEST_NUMBER = 120;

/** What surrounds a number cell. */
export interface NumberContext {
  readonly field: FactDefinition;
  readonly style: NumberStyle;
  /** Unit and kind of supply that the heading states. */
  readonly headingUnit: Unit | null;
  readonly headingSupply: "dc" | "ac" | null;
  readonly vocabulary: Vocabulary;
}

const NUMBER = /^([+-]?)\s?(\d{1,3}(?:[ \u00a0\u202f\u2009'’]\d{3})+(?!\d)(?:[.,]\d+)?|\d+(?:[.,]\d+)*|[.,]\d+)/;
const FRACTION = /^(?:(\d{1,4})[ \u00a0])?(\d{1,3})\/(2|4|8|16|32|64)(?![\d.,])/;
const BETWEEN = /^(?:-|–|—|−|…|\.{2,3}|÷)\s*/;
const PLUS_MINUS = /^(?:±|\+\/-|\+-|\+\/−)\s*/;

/** Reads a text as the number of a quantity or count field. */
export function readNumberText(text: string, context: NumberContext): CellReading {
  if (text.length > LONGEST_NUMBER) return trouble("not-a-number", "expected a number, found a long text");
  const opened = openNumberText(text, context.field, context.vocabulary);
  if (!opened.ok) return opened;
  // In a cable type the number of cores stands first (4x0,34, 3G1,5); the conductor size is the last number.
  const size =
    context.field.dimension === "area" ? opened.rest.replace(/^(?:\d{1,3}\s*[x×g]\s*)+(?=[\d.,])/i, "") : opened.rest;
  const first = takeNumber(size, context);
  if (!first.ok) return first;
  const rest = first.rest.trim();
  const glued = first.rest !== "" && !/^\s/.test(first.rest);
  const parts = { first, rest, glued, opened };
  const reading = readTolerance(parts, context) ?? readDuration(parts, context) ?? readTwoNumbers(parts, context);
  return reading ?? readOne(parts, context);
}

type Opened = Extract<ReturnType<typeof openNumberText>, { ok: true }>;
interface Taken {
  readonly ok: true;
  readonly value: number;
  readonly rest: string;
  readonly fraction: boolean;
}
interface Parts {
  readonly first: Taken;
  readonly rest: string;
  readonly glued: boolean;
  readonly opened: Opened;
}

function takeNumber(text: string, context: NumberContext): Taken | CellTrouble {
  const fraction = context.field.dimension === "length" ? FRACTION.exec(text) : null;
  if (fraction) {
    const value = Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]);
    return { ok: true, value, rest: text.slice(fraction[0].length), fraction: true };
  }
  const found = NUMBER.exec(text);
  if (!found) return trouble("not-a-number", `expected a number${inUnit(context.field)}; type the number alone`);
  const [all, sign, digits = ""] = found;
  const value = readDigits(digits, context.style);
  if (value === "ambiguous") {
    return trouble("ambiguous-number", `"${digits}" can be read in two ways and nothing in the file settles it`);
  }
  if (value === null) return trouble("not-a-number", `"${showText(digits)}" is not a number in any way of writing`);
  return { ok: true, value: sign === "-" ? -value : value, rest: text.slice(all.length), fraction: false };
}

function inUnit(field: FactDefinition): string {
  return field.unit === undefined ? "" : ` in ${field.unit}`;
}

function unitOfText(text: string, glued: boolean, context: NumberContext): UnitRead | CellTrouble {
  const { field } = context;
  if (field.dimension === undefined) {
    if (text === "" || text === field.unit) return { ok: true, unit: null, supply: null };
    return /\d/.test(text)
      ? trouble("several-values", "expected one count")
      : trouble(glued ? "not-a-number" : "unknown-unit", `expected a count of ${field.unit}, found more words`);
  }
  return readUnit(text, field.dimension, glued, field.id === "supply_voltage");
}

function readTolerance({ first, rest, opened }: Parts, context: NumberContext): CellReading | null {
  const split = /^(.*?)\s*(±|\+\/-|\+-|\+\/−)\s*(.*)$/.exec(rest);
  if (!split) return null;
  const [, before = "", , after = ""] = split;
  const width = takeNumber(after.replace(PLUS_MINUS, ""), context);
  if (!width.ok) return trouble("several-values", "expected a number with its tolerance, such as 10 ± 0.5 mm");
  const behind = width.rest.trim();
  const unit = unitOfText(before === "" ? (behind === "%" ? "" : behind) : before, false, context);
  if (!unit.ok) return unit;
  const relative = behind === "%" && context.field.dimension !== "ratio";
  if (!relative && before !== "" && behind !== "") {
    const second = unitOfText(behind, false, context);
    if (!second.ok || second.unit?.id !== unit.unit?.id) return trouble("several-values", "two different units");
  }
  const half = relative ? (Math.abs(first.value) * width.value) / 100 : width.value;
  return finish([first.value - half, first.value + half], { half, range: false, unit, opened }, context);
}

function readTwoNumbers({ first, rest, glued, opened }: Parts, context: NumberContext): CellReading | null {
  const second = secondOfRange(glued ? rest : ` ${rest}`, context);
  if (second === null) return null;
  if (!second.ok) return second;
  if (context.field.id !== "nominal_speed" || !second.between) {
    return trouble("several-values", "expected one number, found two; give the one that holds for this point");
  }
  const unit = unitOfText(second.unitText, false, context);
  if (!unit.ok) return unit;
  const ends = [first.value, second.value].sort((a, b) => a - b) as [number, number];
  return finish(ends, { half: null, range: true, unit, opened }, context);
}

interface SecondNumber {
  readonly ok: true;
  readonly value: number;
  readonly unitText: string;
  readonly between: boolean;
}

function secondOfRange(rest: string, context: NumberContext): SecondNumber | CellTrouble | null {
  if (!/\d/.test(rest) || isUnit(rest.trim(), context)) return null;
  const { dimension } = context.field;
  const words = [...context.vocabulary.common.to].map(escapeForPattern).join("|");
  const separator = new RegExp(
    `^(.*?)\\s*(?:(-|–|—|−|…|\\.{2,3}|÷|(?<![\\p{L}])(?:${words})(?![\\p{L}]))|([x×*+/;,&]|(?<=\\s)\\p{L}+))\\s*(?=[+-]?[\\d.,])(.*)$`,
    "iu",
  );
  const split = separator.exec(rest);
  if (!split) return null;
  const [, ahead = "", between, , after = ""] = split;
  const before = ahead.trim();
  if (before !== "" && dimension !== undefined && unitSpelled(before, dimension) === null) return null;
  const second = takeNumber(after.replace(BETWEEN, ""), context);
  if (!second.ok) return second;
  const unitText = second.rest.trim() || before;
  return { ok: true, value: second.value, unitText, between: between !== undefined };
}

function isUnit(text: string, context: NumberContext): boolean {
  return context.field.dimension !== undefined && unitSpelled(text, context.field.dimension) !== null;
}

function escapeForPattern(text: string): string {
  return text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}

/** Two units of one quantity side by side: 1 h 30 min, 5 ft 3 in. */
function readDuration({ first, rest, opened }: Parts, context: NumberContext): CellReading | null {
  const { dimension, unit } = context.field;
  if ((dimension !== "time" && dimension !== "length") || unit === undefined) return null;
  const split = /^([^\d\s]+)\s*(\d+(?:[.,]\d+)?)\s*([^\d\s]+)$/u.exec(rest);
  if (!split) return null;
  const large = unitSpelled(split[1] ?? "", dimension);
  const small = unitSpelled(split[3] ?? "", dimension);
  const more = readDigits(split[2] ?? "", context.style);
  if (!large || !small || typeof more !== "number" || large.toBase(1) <= small.toBase(1)) return null;
  const value = convert(first.value, large.id, unit, dimension) + convert(more, small.id, unit, dimension);
  const whole: UnitRead = { ok: true, unit: unitSpelled(unit, dimension), supply: null };
  return finish([value, value], { half: null, range: false, unit: whole, opened }, context);
}

function readOne({ first, rest, glued, opened }: Parts, context: NumberContext): CellReading {
  const unit = unitOfText(opened.unitAhead || rest, glued, context);
  if (!unit.ok) return unit;
  if (opened.unitAhead !== "" && rest !== "") return trouble("unknown-unit", `found "${showText(rest)}" too`);
  if (first.fraction && unit.unit === null && context.headingUnit === null) {
    return trouble("ambiguous-number", "a fraction without a unit may be inches; write the unit");
  }
  return finish([first.value, first.value], { half: null, range: false, unit, opened }, context);
}

interface Finish {
  readonly half: number | null;
  readonly range: boolean;
  readonly unit: UnitRead;
  readonly opened: Opened;
}

function finish(ends: readonly [number, number], found: Finish, context: NumberContext): CellReading {
  return numberRead(
    ends,
    { ...found, supply: found.unit.supply ?? found.opened.supply, remarks: found.opened.remarks },
    context,
  );
}

/** Puts a number, a range or a number with its tolerance into the unit of the field and checks that it can be meant. */
export function numberRead(
  ends: readonly [number, number],
  found: {
    readonly half: number | null;
    readonly range: boolean;
    readonly unit: UnitRead;
    readonly supply: "dc" | "ac" | null;
    readonly remarks: readonly string[];
  },
  context: NumberContext,
): CellReading {
  const { field, headingUnit } = context;
  const unit = found.unit.unit ?? headingUnit;
  const inField = (value: number): number =>
    unit && field.dimension && field.unit ? convert(value, unit.id, field.unit, field.dimension) : round12(value);
  const converted = [inField(ends[0]), inField(ends[1])].sort((a, b) => a - b);
  const interval: Interval = { lowest: converted[0] ?? 0, highest: converted[1] ?? 0 };
  const wrong = notMeant(interval, found.half, field);
  if (wrong) return wrong;
  return {
    ok: true,
    kind: "number",
    interval,
    accuracy: found.half === null ? null : round12((interval.highest - interval.lowest) / 2),
    range: found.range,
    unitFrom: found.unit.unit ? "cell" : headingUnit ? "heading" : "field",
    supply: found.supply ?? (found.unit.unit === null ? context.headingSupply : null),
    hertz: field.dimension === "rotational-speed" && unit?.id === "Hz",
    remarks: found.remarks,
  };
}

function notMeant(interval: Interval, half: number | null, field: FactDefinition): CellTrouble | null {
  if (field.kind === "count" && !(Number.isInteger(interval.lowest) && Number.isInteger(interval.highest))) {
    return trouble("not-whole", `expected a whole number of ${field.unit}`);
  }
  const { plausible, unit } = field;
  if (!plausible) return null;
  const middle = half === null ? [interval.lowest, interval.highest] : [(interval.lowest + interval.highest) / 2];
  if (middle.every((value) => value >= plausible.lowest && value <= plausible.highest)) return null;
  const limits = `${plausible.lowest} to ${plausible.highest} ${unit}`;
  return trouble("out-of-range", `this can hardly be meant (expected ${limits}); check number and unit`);
}
