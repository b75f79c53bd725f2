import { convert, unitSpelled } from "../../base/index.js";
import { type CellReading, type CellTrouble, trouble } from "./cell-reading.js";
import type { UnitRead } from "./cell-unit.js";
import { type NumberContext, type NumberParts, takeNumber, unitOfText } from "./number-parts.js";
import { finishNumber } from "./number-result.js";
import { readDigits } from "./number-style.js";

const BETWEEN = /^(?:-|–|—|−|…|\.{2,3}|÷)\s*/;
/** Between the ends of a range, but only behind a word that opens one (between 900 and 1500). */
const AND = /^(?:and|und|y|e|et)$/i;
const PLUS_MINUS = /^(?:±|\+\/-|\+-|\+\/−)\s*/;

/** A number with its tolerance: 10 ± 0.5 mm, 24 V ± 10 %. */
export function readTolerance({ first, rest, opened }: NumberParts, context: NumberContext): CellReading | null {
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
  return finishNumber([first.value - half, first.value + half], { half, range: false, unit, opened }, context);
}

/** Two numbers: a range where the running speed is asked for, else one too many. */
export function readTwoNumbers(
  { first, rest, glued, opened }: NumberParts,
  context: NumberContext,
): CellReading | null {
  const second = secondOfRange(glued ? rest : ` ${rest}`, opened.from, context);
  if (second === null) return null;
  if (!second.ok) return second;
  if (context.field.id !== "nominal_speed" || !second.between) {
    return trouble("several-values", "expected one number, found two; give the one that holds for this point");
  }
  const unit = unitOfText(second.unitText, false, context);
  if (!unit.ok) return unit;
  const ends = [first.value, second.value].sort((a, b) => a - b) as [number, number];
  return finishNumber(ends, { half: null, range: true, unit, opened }, context);
}

interface SecondNumber {
  readonly ok: true;
  readonly value: number;
  readonly unitText: string;
  readonly between: boolean;
}

function secondOfRange(rest: string, from: boolean, context: NumberContext): SecondNumber | CellTrouble | null {
  if (!/\d/.test(rest) || isUnit(rest.trim(), context)) return null;
  const { dimension } = context.field;
  const split = context.vocabulary.betweenNumbers.exec(rest);
  if (!split) return null;
  const [, ahead = "", between, sign = "", after = ""] = split;
  const before = ahead.trim();
  if (before !== "" && dimension !== undefined && unitSpelled(before, dimension) === null) return null;
  const second = takeNumber(after.replace(BETWEEN, ""), context);
  if (!second.ok) return second;
  const unitText = second.rest.trim() || before;
  return { ok: true, value: second.value, unitText, between: between !== undefined || (from && AND.test(sign)) };
}

function isUnit(text: string, context: NumberContext): boolean {
  return context.field.dimension !== undefined && unitSpelled(text, context.field.dimension) !== null;
}

/** Two units of one quantity side by side: 1 h 30 min, 5 ft 3 in. */
export function readDuration({ first, rest, opened }: NumberParts, context: NumberContext): CellReading | null {
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
  return finishNumber([value, value], { half: null, range: false, unit: whole, opened }, context);
}
