import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { single } from "../../src/base/index.js";
import {
  copperResistanceOhmPerKm,
  resistanceAtTemperature,
  resistanceRangeOhmPerKm,
} from "../../src/quantities/index.js";
import { CONDUCTOR_CLASSES, CONDUCTOR_COATS, CONDUCTOR_SIZES, greatestResistance, OVER_COPPER } from "./from-tables.js";

const COOL = single(20);

describe("the range of a conductor's resistance", () => {
  it("of a listed size ends at its greatest, and of any other at a factor over bare copper", () => {
    expect(resistanceRangeOhmPerKm(single(0.5), 36.7, 1.2, COOL)).toEqual({ lowest: 34.482, highest: 36.7 });
    expect(resistanceRangeOhmPerKm(single(0.5), null, 1.2, COOL).highest).toBeCloseTo(1.2 * 34.482, 9);
  });

  it("holds every listed conductor, also where the size is known with an accuracy only", () => {
    for (const size of CONDUCTOR_SIZES) {
      const about = resistanceRangeOhmPerKm({ lowest: size * 0.95, highest: size * 1.05 }, null, OVER_COPPER, COOL);
      for (const conductorClass of CONDUCTOR_CLASSES) {
        for (const coat of CONDUCTOR_COATS) {
          const ohmPerKm = greatestResistance(size, conductorClass, coat);
          expect(ohmPerKm).toBeLessThanOrEqual(resistanceRangeOhmPerKm(single(size), null, OVER_COPPER, COOL).highest);
          expect(ohmPerKm).toBeLessThanOrEqual(about.highest);
          expect(ohmPerKm).toBeGreaterThan(copperResistanceOhmPerKm(size));
        }
      }
      expect(about.lowest).toBeLessThan(copperResistanceOhmPerKm(size));
    }
  });

  it("grows with the spread of area and temperature, and never turns round", () => {
    const area = fc.double({ min: 0.05, max: 16, noNaN: true });
    const heat = fc.double({ min: -50, max: 200, noNaN: true });
    fc.assert(
      fc.property(area, area, heat, heat, (a, b, c, d) => {
        const wide = resistanceRangeOhmPerKm({ lowest: Math.min(a, b), highest: Math.max(a, b) }, null, OVER_COPPER, {
          lowest: Math.min(c, d),
          highest: Math.max(c, d),
        });
        const bare = resistanceAtTemperature(copperResistanceOhmPerKm(a), c);
        expect(wide.lowest).toBeLessThanOrEqual(bare);
        expect(wide.highest).toBeGreaterThan(bare);
      }),
    );
  });

  it("refuses areas, resistances, factors and temperatures that cannot be", () => {
    expect(() => resistanceRangeOhmPerKm(single(0), null, 1.2, COOL)).toThrow(RangeError);
    expect(() => resistanceRangeOhmPerKm(single(1), null, 0.9, COOL)).toThrow(RangeError);
    expect(() => resistanceRangeOhmPerKm(single(1), -20, 1.2, COOL)).toThrow(RangeError);
    expect(() => resistanceRangeOhmPerKm(single(1), 20, 1.2, { lowest: 40, highest: 20 })).toThrow(RangeError);
  });
});
