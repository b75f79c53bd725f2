import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  CABLE_TABLE_COEFFICIENT_PER_K,
  COPPER_COEFFICIENT_PER_K,
  commonReturnVoltagesV,
  copperResistanceOhmPerKm,
  extraLowVoltage,
  leastCrossSectionMm2,
  longestCableM,
  loopResistanceOhm,
  lowestVoltageAtLoadV,
  mostPointsOnSupply,
  resistanceAtTemperature,
  resistanceRangeOhmPerKm,
  supplyBandV,
  supplyLoad,
  trunkVoltagesV,
  voltageAtLoadV,
  voltageAtSteadyPowerV,
} from "../../src/quantities/index.js";
import {
  CONDUCTOR_CLASSES,
  CONDUCTOR_COATS,
  CONDUCTOR_SIZES,
  type ConductorClass,
  type ConductorCoat,
  greatestResistance,
  OVER_COPPER,
} from "./from-tables.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const SIZES = CONDUCTOR_SIZES;
const size = fc.constantFrom(...SIZES);
const conductor = fc.record({
  class: fc.constantFrom(...CONDUCTOR_CLASSES),
  coat: fc.constantFrom(...CONDUCTOR_COATS),
});

function sizesOf(wire: { class: ConductorClass; coat: ConductorCoat }) {
  return SIZES.map((mm2) => [mm2, greatestResistance(mm2, wire.class, wire.coat)] as const);
}

describe("conductors", () => {
  it("resist less the thicker they are, and never less than bare copper of their size", () => {
    for (const conductorClass of CONDUCTOR_CLASSES) {
      for (const coat of CONDUCTOR_COATS) {
        const row = SIZES.map((mm2) => greatestResistance(mm2, conductorClass, coat));
        expect(row).toEqual([...row].sort((a, b) => b - a));
        for (const [index, mm2] of SIZES.entries()) {
          const overCopper = (row[index] ?? 0) / copperResistanceOhmPerKm(mm2);
          expect(overCopper).toBeGreaterThan(1);
          expect(overCopper).toBeLessThan(1.2);
        }
      }
    }
  });

  it("gain a little more by the table's coefficient than by the physical one, and lose a little more when cold", () => {
    const of = (temperatureC: number, coefficientPerK: number) =>
      resistanceAtTemperature(39, temperatureC, coefficientPerK);
    expect(resistanceAtTemperature(39, 70)).toBe(of(70, COPPER_COEFFICIENT_PER_K));
    expect(of(70, CABLE_TABLE_COEFFICIENT_PER_K)).toBeGreaterThan(of(70, COPPER_COEFFICIENT_PER_K));
    expect(of(-20, CABLE_TABLE_COEFFICIENT_PER_K)).toBeLessThan(of(-20, COPPER_COEFFICIENT_PER_K));
    expect(of(20, CABLE_TABLE_COEFFICIENT_PER_K)).toBe(39);
  });

  it("lie between the bounds at every temperature in the interval", () => {
    fc.assert(
      fc.property(size, conductor, between(-40, 90), between(0, 60), between(0, 1), (mm2, wire, cold, wider, part) => {
        const greatest = greatestResistance(mm2, wire.class, wire.coat);
        const heat = { lowest: cold, highest: cold + wider };
        const bounds = resistanceRangeOhmPerKm({ lowest: mm2, highest: mm2 }, greatest, OVER_COPPER, heat);
        const now = resistanceAtTemperature(greatest, cold + wider * part);
        expect(now).toBeGreaterThanOrEqual(bounds.lowest);
        expect(now).toBeLessThanOrEqual(bounds.highest * (1 + 1e-12));
      }),
    );
  });
});

describe("a run to one load", () => {
  const run = fc.record({ oneWayLengthM: between(1, 1000), hottestCopperC: between(-20, 90) });

  it("leaves just the voltage that the longest cable was asked to leave", () => {
    fc.assert(
      fc.property(
        between(20, 60),
        between(5, 19),
        between(0.001, 5),
        between(1, 100),
        (supply, needed, amps, perKm) => {
          const length = longestCableM(supply, needed, amps, perKm);
          expect(voltageAtLoadV(supply, loopResistanceOhm(length, perKm), amps)).toBeCloseTo(needed, 6);
        },
      ),
    );
    expect(longestCableM(18, 20, 0.1, 39)).toBe(0);
  });

  it("has the least size that leaves the voltage, or none", () => {
    fc.assert(
      fc.property(run, conductor, between(0.01, 2), (cable, wire, amps) => {
        const least = leastCrossSectionMm2(20.4, 18, amps, cable, sizesOf(wire));
        const leaves = (mm2: number) => {
          const resistanceAt20OhmPerKm = greatestResistance(mm2, wire.class, wire.coat);
          return lowestVoltageAtLoadV(20.4, amps, { ...cable, resistanceAt20OhmPerKm }) >= 18;
        };
        expect(SIZES.find(leaves) ?? null).toBe(least);
      }),
    );
  });

  it("carries a steady power at the voltage where current and drop agree, or not at all", () => {
    fc.assert(
      fc.property(between(10, 60), between(0.01, 50), between(0.01, 50), (supply, ohm, watts) => {
        const volts = voltageAtSteadyPowerV(supply, ohm, watts);
        if (volts === null) expect(supply ** 2 / (4 * ohm)).toBeLessThan(watts);
        else expect(voltageAtLoadV(supply, ohm, watts / volts)).toBeCloseTo(volts, 6);
      }),
    );
    expect(voltageAtSteadyPowerV(24, 0, 5)).toBe(24);
  });
});

describe("shared conductors", () => {
  const section = fc.record({ loopOhm: between(0, 10), takenA: between(0, 1) });

  it("of a trunk sag towards the end, and carry one load as a run of its own would", () => {
    fc.assert(
      fc.property(fc.array(section, { minLength: 1, maxLength: 12 }), (sections) => {
        const volts = trunkVoltagesV(24, sections);
        expect(volts).toHaveLength(sections.length);
        for (const [index, here] of volts.entries()) expect(here).toBeLessThanOrEqual((volts[index - 1] ?? 24) + 1e-9);
        const alone = sections.map((one, index) => ({ ...one, takenA: index === sections.length - 1 ? 0.1 : 0 }));
        const whole = sections.reduce((sum, { loopOhm }) => sum + loopOhm, 0);
        expect(trunkVoltagesV(24, alone).at(-1)).toBeCloseTo(voltageAtLoadV(24, whole, 0.1), 9);
      }),
    );
    expect(trunkVoltagesV(24, [])).toEqual([]);
  });

  it("as a common return lower every point by the currents of all", () => {
    const point = fc.record({ outgoingOhm: between(0, 10), currentA: between(0, 1) });
    fc.assert(
      fc.property(
        fc.array(point, { minLength: 1, maxLength: 8 }),
        between(0, 5),
        between(0.01, 1),
        (points, back, more) => {
          const volts = commonReturnVoltagesV(24, points, back);
          const withAnother = commonReturnVoltagesV(24, [...points, { outgoingOhm: 0, currentA: more }], back);
          for (const [index, here] of volts.entries()) {
            expect(withAnother[index]).toBeCloseTo(here - back * more, 9);
          }
          const [only] = points;
          if (only) {
            const [alone = Number.NaN] = commonReturnVoltagesV(24, [only], back);
            expect(alone).toBeCloseTo(voltageAtLoadV(24, only.outgoingOhm + back, only.currentA), 9);
          }
        },
      ),
    );
  });
});

describe("supplies", () => {
  it("carry as many points as fit, and not one more", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 500 }), fc.integer({ min: 1, max: 50 }), (milliamps, amps) => {
        const most = mostPointsOnSupply(milliamps / 1000, amps, 80);
        const loadOf = (count: number) => supplyLoad(Array(count).fill(milliamps / 1000), amps, 1).runningPct;
        expect(loadOf(most)).toBeLessThanOrEqual(80 * (1 + 1e-9));
        expect(loadOf(most + 1)).toBeGreaterThan(80);
      }),
    );
    expect(mostPointsOnSupply(0.1, 1, 80)).toBe(8);
  });

  it("start with the inrush of all their points", () => {
    const load = supplyLoad([0.06, 0.06, 0.08], 1, 5);
    expect(load.runningA).toBeCloseTo(0.2, 12);
    expect(load.runningPct).toBeCloseTo(20, 12);
    expect(load.startingA).toBeCloseTo(1, 12);
    expect(load.startingPct).toBeCloseTo(100, 12);
  });

  it("of 24 V with 5 % ripple reach from 19.2 to 30 V", () => {
    const band = supplyBandV(24, undefined, 5);
    expect(band.lowest).toBeCloseTo(19.2, 12);
    expect(band.highest).toBeCloseTo(30, 12);
  });

  it("count as extra-low voltage up to the limit itself", () => {
    expect(extraLowVoltage(30, "dc")).toBe("touchable-anywhere");
    expect(extraLowVoltage(30.1, "dc")).toBe("touchable-when-dry");
    expect(extraLowVoltage(60.1, "dc")).toBe("extra-low");
    expect(extraLowVoltage(120.1, "dc")).toBe("above");
    expect(extraLowVoltage(24, "ac")).toBe("touchable-when-dry");
    expect(extraLowVoltage(230, "ac")).toBe("above");
  });
});
