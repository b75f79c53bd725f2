import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import {
  type CurePoint,
  waitingTimeBoundsMin,
  waitingTimeByHalvingMin,
  waitingTimeMin,
} from "../../src/quantities/index.js";
import { truthOf } from "../tools/truth.js";
import { compareWithTruth, type Given } from "./truth-figures.js";

function tableOf(temperaturesC: unknown, minutes: unknown): readonly CurePoint[] {
  const times = z.array(z.number()).parse(minutes);
  const temperatures = z.array(z.number()).parse(temperaturesC);
  return temperatures.map((temperatureC, index) => ({ temperatureC, minutes: times[index] ?? Number.NaN }));
}

/** The lines of the table come back as they stand. */
function lines({ entry }: Given): unknown {
  const table = tableOf(entry.inputs.temperatures_C, entry.expected);
  return table.map(({ temperatureC }) => waitingTimeMin(table, temperatureC));
}

compareWithTruth("bond", {
  "bond-table-1": lines,
  "bond-table-10": lines,
  "bond-halving": (given) => waitingTimeByHalvingMin(1, 20, 20 + given.number("difference_K")),
});

/** Every inner line of a published table, with the table without it. */
function leftOut(): readonly (readonly [CurePoint, readonly CurePoint[]])[] {
  const truth = truthOf("bond");
  return ["bond-table-1", "bond-table-10"].flatMap((id) => {
    const entry = truth.get(id);
    const table = tableOf(entry?.inputs.temperatures_C, entry?.expected);
    return table
      .slice(1, -1)
      .map((line): readonly [CurePoint, readonly CurePoint[]] => [line, table.filter((other) => other !== line)]);
  });
}

describe("waiting times between the lines of a table", () => {
  it("hold the printed time of a line that was left out within their bounds, and miss it by less than a factor of 3", () => {
    expect(leftOut()).toHaveLength(8);
    for (const [{ temperatureC, minutes }, table] of leftOut()) {
      const bounds = waitingTimeBoundsMin(table, { lowest: temperatureC, highest: temperatureC });
      expect(minutes).toBeGreaterThanOrEqual(bounds.lowest);
      expect(minutes).toBeLessThanOrEqual(bounds.highest);
      const ratio = waitingTimeMin(table, temperatureC) / minutes;
      expect(ratio).toBeGreaterThan(0.55);
      expect(ratio).toBeLessThan(3);
    }
  });

  it("are too short by the straight line in one case at least, so that the bounds are needed", () => {
    const ratios = leftOut().map(([{ temperatureC, minutes }, table]) => waitingTimeMin(table, temperatureC) / minutes);
    expect(Math.min(...ratios)).toBeCloseTo(0.56, 2);
    expect(Math.max(...ratios)).toBeCloseTo(2.95, 2);
  });

  it("fall as it gets warmer, and stay within the bounds", () => {
    const cure = fc
      .uniqueArray(fc.integer({ min: -20, max: 150 }), { minLength: 2, maxLength: 8 })
      .chain((temperatures) =>
        fc
          .array(fc.double({ min: 0.1, max: 1e5, noNaN: true }), {
            minLength: temperatures.length,
            maxLength: temperatures.length,
          })
          .map((minutes) => {
            const rising = [...temperatures].sort((a, b) => a - b);
            const falling = [...minutes].sort((a, b) => b - a);
            return rising.map((temperatureC, index) => ({ temperatureC, minutes: falling[index] ?? 1 }));
          }),
      );
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(cure, share, share, (table, one, other) => {
        const first = table[0]?.temperatureC ?? 0;
        const last = table.at(-1)?.temperatureC ?? 0;
        const lowest = first + (last - first) * Math.min(one, other);
        const highest = Math.min(last, first + (last - first) * Math.max(one, other));
        const bounds = waitingTimeBoundsMin(table, { lowest, highest });
        const cold = waitingTimeMin(table, lowest);
        const warm = waitingTimeMin(table, highest);
        const hair = 1 + 1e-12;
        expect(cold * hair).toBeGreaterThanOrEqual(warm);
        expect(cold).toBeLessThanOrEqual(bounds.highest * hair);
        expect(warm * hair).toBeGreaterThanOrEqual(bounds.lowest);
      }),
    );
  });

  it("are never given beyond the table, nor for a table that is none", () => {
    const table = [
      { temperatureC: 10, minutes: 240 },
      { temperatureC: 23, minutes: 60 },
    ];
    expect(() => waitingTimeMin(table, 9.9)).toThrow(RangeError);
    expect(() => waitingTimeMin(table, 23.1)).toThrow(RangeError);
    expect(() => waitingTimeMin(table, Number.NaN)).toThrow(RangeError);
    expect(() => waitingTimeBoundsMin(table, { lowest: 9, highest: 20 })).toThrow(RangeError);
    expect(() => waitingTimeBoundsMin(table, { lowest: 20, highest: 15 })).toThrow(RangeError);
    expect(() => waitingTimeMin(table.slice(0, 1), 10)).toThrow(/two lines/);
    expect(() => waitingTimeMin([...table].reverse(), 15)).toThrow(/must rise/);
    expect(() => waitingTimeMin([...table, { temperatureC: 40, minutes: 90 }], 15)).toThrow(/must rise/);
  });

  it("by the rule of halving come back when turned round, and are refused further than 20 K off", () => {
    expect(waitingTimeByHalvingMin(60, 23, 13)).toBeCloseTo(120, 12);
    expect(waitingTimeByHalvingMin(waitingTimeByHalvingMin(60, 23, 10), 10, 23)).toBeCloseTo(60, 12);
    expect(() => waitingTimeByHalvingMin(60, 23, 2)).toThrow(RangeError);
  });
});
