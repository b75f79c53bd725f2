import type { Interval } from "../base/index.js";
import { requirePositive, requireWithin } from "./require-number.js";

/** One line of an adhesive's cure table: so long at this temperature until the strength in question is reached. */
export interface CurePoint {
  readonly temperatureC: number;
  readonly minutes: number;
}

/**
 * Waiting time at a temperature, between the lines of a cure table.
 *
 * Source: derivation; straight line in the logarithm of time over temperature. Never beyond the table: below its coldest
 * line an adhesive may not cure at all. An estimate: the inner lines of two published tables, each left out and computed
 * from its neighbours, came out between 0.56 and 2.9 times the printed time. Where a verdict hangs on it, take the upper end
 * of {@link waitingTimeBoundsMin}.
 *
 * @param table - at least two lines, temperatures rising, times falling
 * @param temperatureC - of the bond while it cures, °C, within the table
 * @returns minutes
 */
export function waitingTimeMin(table: readonly CurePoint[], temperatureC: number): number {
  const [colder, hotter] = neighbours(table, temperatureC);
  const span = hotter.temperatureC - colder.temperatureC;
  if (span === 0) return colder.minutes;
  const share = (temperatureC - colder.temperatureC) / span;
  return colder.minutes * (hotter.minutes / colder.minutes) ** share;
}

/**
 * Certain bounds of the waiting time when the temperature lies anywhere in an interval: the times of the next lines of the
 * table outside it.
 *
 * Source: derivation; warmer bonds cure faster, whatever the law between two lines.
 *
 * @param table - as of {@link waitingTimeMin}
 * @param temperatureC - coldest and warmest the bond may be, °C, both within the table
 * @returns minutes
 */
export function waitingTimeBoundsMin(table: readonly CurePoint[], temperatureC: Interval): Interval {
  requireWithin("coldest temperature", temperatureC.lowest, -Number.MAX_VALUE, temperatureC.highest);
  return {
    lowest: neighbours(table, temperatureC.highest)[1].minutes,
    highest: neighbours(table, temperatureC.lowest)[0].minutes,
  };
}

function neighbours(table: readonly CurePoint[], temperatureC: number): readonly [CurePoint, CurePoint] {
  const first = table[0];
  const last = table.at(-1);
  if (first === undefined || last === undefined || table.length < 2) {
    throw new RangeError("a cure table needs at least two lines");
  }
  for (const [index, line] of table.entries()) {
    requirePositive("minutes", line.minutes);
    requireWithin("temperatureC of the table", line.temperatureC, -60, 400);
    const before = table[index - 1];
    if (before && !(before.temperatureC < line.temperatureC && before.minutes >= line.minutes)) {
      throw new RangeError("the temperatures of a cure table must rise and its times must not");
    }
  }
  requireWithin("temperatureC", temperatureC, first.temperatureC, last.temperatureC);
  const exact = table.find((line) => line.temperatureC === temperatureC);
  if (exact) return [exact, exact];
  const above = table.findIndex((line) => line.temperatureC > temperatureC);
  return [table[above - 1] ?? first, table[above] ?? last];
}

/**
 * Waiting time by the rule that each 10 K more halve it, where there is one line of data only.
 *
 * Source: rule of thumb of adhesive makers ("every 10 °C added to cure conditions will reduce cure time by half", read
 * 2026-11-26). No substitute for a table: below room temperature real adhesives slow down faster (a published table has
 * four times the time at 10 °C that it has at 23 °C; the rule says 2.5 times).
 *
 * @param knownMinutes - min, above 0
 * @param knownTemperatureC - °C
 * @param temperatureC - °C, not more than 20 K from the known one
 * @returns minutes
 */
export function waitingTimeByHalvingMin(knownMinutes: number, knownTemperatureC: number, temperatureC: number): number {
  requirePositive("knownMinutes", knownMinutes);
  requireWithin("knownTemperatureC", knownTemperatureC, -60, 400);
  requireWithin("temperatureC", temperatureC, knownTemperatureC - 20, knownTemperatureC + 20);
  return knownMinutes * 2 ** ((knownTemperatureC - temperatureC) / 10);
}
