import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { single } from "../../src/base/index.js";
import {
  type ConductorClass,
  type ConductorCoat,
  copperResistanceOhmPerKm,
  greatestResistanceOhmPerKm,
  resistanceAtTemperature,
  resistanceRangeOhmPerKm,
} from "../../src/quantities/index.js";

const CLASSES: readonly ConductorClass[] = [1, 2, 5];
const COATS: readonly ConductorCoat[] = ["plain", "metal-coated"];
const SIZES = [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10];
const COOL = single(20);

describe("the range of a conductor's resistance", () => {
  it("of a size of the table ends at the worst of its class, and of all classes where none is stated", () => {
    expect(resistanceRangeOhmPerKm(single(0.5), 1, COOL)).toEqual({ lowest: 34.482, highest: 36.7 });
    expect(resistanceRangeOhmPerKm(single(0.5), 5, COOL)).toEqual({ lowest: 34.482, highest: 40.1 });
    expect(resistanceRangeOhmPerKm(single(0.5), null, COOL)).toEqual({ lowest: 34.482, highest: 40.1 });
  });

  it("holds every conductor of the table, also where the size is known with an accuracy only", () => {
    for (const size of SIZES) {
      for (const known of [...CLASSES, null]) {
        const exact = resistanceRangeOhmPerKm(single(size), known, COOL);
        const about = resistanceRangeOhmPerKm({ lowest: size * 0.95, highest: size * 1.05 }, known, COOL);
        for (const real of known === null ? CLASSES : [known]) {
          for (const coat of COATS) {
            const ohmPerKm = greatestResistanceOhmPerKm(size, real, coat) ?? Number.NaN;
            expect(ohmPerKm).toBeLessThanOrEqual(exact.highest);
            expect(ohmPerKm).toBeLessThanOrEqual(about.highest);
          }
        }
        expect(copperResistanceOhmPerKm(size)).toBe(exact.lowest);
        expect(about.lowest).toBeLessThan(exact.lowest);
      }
    }
  });

  it("grows with the spread of area and temperature, and never turns round", () => {
    const area = fc.double({ min: 0.05, max: 16, noNaN: true });
    const heat = fc.double({ min: -50, max: 200, noNaN: true });
    fc.assert(
      fc.property(area, area, heat, heat, fc.constantFrom(...CLASSES, null), (a, b, c, d, known) => {
        const wide = resistanceRangeOhmPerKm({ lowest: Math.min(a, b), highest: Math.max(a, b) }, known, {
          lowest: Math.min(c, d),
          highest: Math.max(c, d),
        });
        const bare = resistanceAtTemperature(copperResistanceOhmPerKm(a), c);
        expect(wide.lowest).toBeLessThanOrEqual(bare);
        expect(wide.highest).toBeGreaterThan(bare);
      }),
    );
  });

  it("refuses an area that is not above 0", () => {
    expect(() => resistanceRangeOhmPerKm(single(0), null, COOL)).toThrow(RangeError);
  });
});
