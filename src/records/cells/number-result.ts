import { convert, type Interval, round12 } from "../../base/index.js";
import { type FactDefinition, withinPossible } from "../../facts/index.js";
import { type CellReading, type CellTrouble, trouble } from "./cell-reading.js";
import type { UnitRead } from "./cell-unit.js";
import type { OpenedNumber } from "./number-opening.js";
import type { NumberContext } from "./number-parts.js";

/** What was found around the ends of a number. */
export interface Found {
  readonly half: number | null;
  readonly range: boolean;
  /** Half of the last decimal place as written; absent where that says nothing. */
  readonly lastPlace?: number;
  readonly unit: UnitRead;
  readonly opened: OpenedNumber;
}

/** Turns the ends found in a text into a reading; supply and remarks in front of the number go with it. */
export function finishNumber(ends: readonly [number, number], found: Found, context: NumberContext): CellReading {
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
    readonly lastPlace?: number;
    readonly unit: UnitRead;
    readonly supply: "dc" | "ac" | null;
    readonly remarks: readonly string[];
  },
  context: NumberContext,
): CellReading {
  const { field, headingUnit } = context;
  const unit = found.unit.unit ?? headingUnit;
  if (unit === null && context.headingUnsettled) {
    return trouble(
      "unknown-unit",
      context.unitDoubt ?? "the heading does not settle the unit; write the unit into the cell",
    );
  }
  const inField = (value: number): number =>
    unit && field.dimension && field.unit ? convert(value, unit.id, field.unit, field.dimension) : round12(value);
  const converted = [inField(ends[0]), inField(ends[1])].sort((a, b) => a - b);
  const interval: Interval = { lowest: converted[0] ?? 0, highest: converted[1] ?? 0 };
  const wrong = notMeant(interval, found.half, field);
  if (wrong) return wrong;
  return {
    ok: true,
    kind: "number",
    interval: found.half === null ? interval : withinPossible(interval, field),
    accuracy: found.half === null ? null : round12((interval.highest - interval.lowest) / 2),
    range: found.range,
    unitFrom: found.unit.unit ? "cell" : headingUnit ? "heading" : "field",
    supply: found.supply ?? (found.unit.unit === null ? context.headingSupply : null),
    unit: unit?.id ?? field.unit ?? null,
    rounding: Math.abs(inField(ends[0] + (found.lastPlace ?? 0)) - inField(ends[0])),
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
