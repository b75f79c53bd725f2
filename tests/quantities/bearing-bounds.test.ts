import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type BearingOrders,
  bearingOrders,
  bearingOrdersWithin,
  machineGroupOf,
  machineGroupsWithin,
} from "../../src/quantities/index.js";

const share = fc.integer({ min: 0, max: 1000 }).map((step) => step / 1000);

/** Two ends with a value between them; whole numbers where asked for. */
function spread(min: number, max: number): fc.Arbitrary<{ lowest: number; highest: number; value: number }> {
  return fc.tuple(share, share, share).map((shares) => {
    const [lowest = 0, value = 0, highest = 0] = shares.map((at) => min + (max - min) * at).sort((a, b) => a - b);
    return { lowest, value, highest };
  });
}

describe("the orders of a bearing within bounds", () => {
  it("hold those of every bearing inside them", () => {
    let fitted = 0;
    fc.assert(
      fc.property(spread(3, 40), spread(0.02, 0.6), spread(0, 90), fc.nat(3), (counts, ratios, angles, known) => {
        const elements = { lowest: Math.floor(counts.lowest), highest: Math.ceil(counts.highest) };
        const count = Math.round(counts.value);
        // Elements that do not fit on their circle make no bearing.
        if (ratios.value > Math.sin(Math.PI / count)) return;
        fitted += 1;
        const orders = bearingOrders({
          elements: count,
          elementDiameterMm: ratios.value * 100,
          pitchDiameterMm: 100,
          contactAngleDeg: angles.value,
        });
        const bounds = bearingOrdersWithin({
          elements,
          diameterRatio: known % 2 === 0 ? ratios : null,
          contactAngleDeg: known < 2 ? angles : null,
        });
        for (const [name, order] of Object.entries(orders)) {
          const { lowest, highest } = bounds?.[name as keyof BearingOrders] ?? {
            lowest: Number.NaN,
            highest: Number.NaN,
          };
          expect(order).toBeGreaterThanOrEqual(lowest - 1e-9 * Math.abs(lowest));
          expect(order).toBeLessThanOrEqual(highest + 1e-9 * Math.abs(highest));
        }
      }),
      { numRuns: 2000 },
    );
    expect(fitted).toBeGreaterThan(100);
  });

  it("are exact where all of the geometry is, and none where the elements do not fit", () => {
    const exact = { elements: { lowest: 9, highest: 9 }, contactAngleDeg: { lowest: 15, highest: 15 } };
    const bounds = bearingOrdersWithin({ ...exact, diameterRatio: { lowest: 0.2, highest: 0.2 } });
    const orders = bearingOrders({ elements: 9, elementDiameterMm: 20, pitchDiameterMm: 100, contactAngleDeg: 15 });
    for (const [name, order] of Object.entries(orders)) {
      expect(bounds?.[name as keyof BearingOrders].lowest).toBeCloseTo(order, 12);
      expect(bounds?.[name as keyof BearingOrders].highest).toBeCloseTo(order, 12);
    }
    expect(bearingOrdersWithin({ ...exact, diameterRatio: { lowest: 0.4, highest: 0.5 } })).toBeNull();
  });
});

describe("the groups of machines within bounds", () => {
  it("hold the group of every machine inside them, and no other", () => {
    fc.assert(
      fc.property(spread(1, 70_000), spread(50, 500), fc.boolean(), (power, height, motor) => {
        const groups = machineGroupsWithin(power, motor ? height : null);
        expect(groups).toContain(machineGroupOf(power.value, motor ? height.value : null));
        expect(groups.size).toBeLessThanOrEqual(3);
      }),
    );
    expect(machineGroupsWithin({ lowest: 15, highest: 15 }, null)).toEqual(new Set([null]));
    expect(machineGroupsWithin({ lowest: 15, highest: 300 }, null)).toEqual(new Set([null, 2]));
    expect(machineGroupsWithin({ lowest: 16, highest: 301 }, null)).toEqual(new Set([2, 1]));
    expect(machineGroupsWithin({ lowest: 75, highest: 75 }, { lowest: 159, highest: 315 })).toEqual(
      new Set([null, 2, 1]),
    );
  });
});
