import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { factOf } from "../../src/facts/index.js";
import {
  engagementToBreakBoltMm,
  externalShearAreaMm2,
  holeStrippingLoadN,
  internalShearAreaMm2,
  jointStrength,
  leastEngagementMm,
  SHEAR_OVER_TENSILE,
  strippingLoadN,
  strippingSizes,
  tensileStressAreaMm2,
} from "../../src/quantities/index.js";
import { threadOf } from "./against-truth.js";
import { TOLERANCED_THREADS } from "./all-threads.js";
import { boltStrength, inTable, wallStrength } from "./from-tables.js";

const engagementIn = (metal: string) => inTable("table.engagement_min", { wall_metal: metal });

const NO_STRENGTH = { lowest: Number.NaN, highest: Number.NaN };
const anyThread = fc.constantFrom(...TOLERANCED_THREADS);
const length = fc.double({ min: 0.5, max: 100, noNaN: true });
const strength = fc.double({ min: 50, max: 1500, noNaN: true });

describe("the shear areas of a thread", () => {
  it("are larger for basic sizes than at the worst limits, and in the hole than in the bolt", () => {
    fc.assert(
      fc.property(anyThread, length, (thread, engagement) => {
        const worst = strippingSizes(thread, "worst");
        const basic = strippingSizes(thread, "basic");
        return (
          internalShearAreaMm2(worst, engagement) < internalShearAreaMm2(basic, engagement) &&
          externalShearAreaMm2(worst, engagement) < externalShearAreaMm2(basic, engagement) &&
          externalShearAreaMm2(worst, engagement) < internalShearAreaMm2(worst, engagement)
        );
      }),
    );
  });

  it("of basic sizes are 7/8 and 3/4 of the cylinders on which they shear", () => {
    fc.assert(
      fc.property(anyThread, length, (thread, engagement) => {
        const sizes = strippingSizes(thread, "basic");
        const internal = internalShearAreaMm2(sizes, engagement) / (Math.PI * sizes.externalMajorMm * engagement);
        const external = externalShearAreaMm2(sizes, engagement) / (Math.PI * sizes.internalMinorMm * engagement);
        return Math.abs(internal - 7 / 8) < 1e-9 && Math.abs(external - 3 / 4) < 1e-9;
      }),
    );
  });

  it("are refused for threads that do not meet and lengths that are none", () => {
    const sizes = strippingSizes(threadOf("M6"), "worst");
    expect(() => internalShearAreaMm2({ ...sizes, internalPitchMm: 7 }, 6)).toThrow("do not meet");
    expect(() => externalShearAreaMm2({ ...sizes, externalPitchMm: 3 }, 6)).toThrow("do not meet");
    for (const bad of [-1, Number.NaN, Infinity]) {
      expect(() => internalShearAreaMm2(sizes, bad)).toThrow(RangeError);
      expect(() => strippingLoadN(bad, 100)).toThrow(RangeError);
      expect(() => leastEngagementMm(bad, 100, 10)).toThrow(RangeError);
    }
    expect(() => strippingLoadN(10, 0)).toThrow(RangeError);
    expect(() => leastEngagementMm(10, 100, 0)).toThrow(RangeError);
  });
});

describe("the least engagement", () => {
  it("is just enough: at it each thread holds what breaks the bolt", () => {
    fc.assert(
      fc.property(anyThread, strength, strength, (thread, bolt, tapped) => {
        const area = tensileStressAreaMm2(thread);
        const { forHoleMm, forBoltMm } = engagementToBreakBoltMm(thread, area, bolt, tapped);
        const sizes = strippingSizes(thread, "worst");
        const hole = strippingLoadN(internalShearAreaMm2(sizes, forHoleMm), SHEAR_OVER_TENSILE * tapped);
        const shank = strippingLoadN(externalShearAreaMm2(sizes, forBoltMm), SHEAR_OVER_TENSILE * bolt);
        return Math.abs(hole / (area * bolt) - 1) < 1e-9 && Math.abs(shank / (area * bolt) - 1) < 1e-9;
      }),
    );
  });

  it("grows as the tapped material gets weaker, and does not depend on the bolt for its own thread", () => {
    fc.assert(
      fc.property(anyThread, strength, strength, (thread, bolt, tapped) => {
        const one = engagementToBreakBoltMm(thread, 50, bolt, tapped);
        const weaker = engagementToBreakBoltMm(thread, 50, bolt, tapped * 0.9);
        const stronger = engagementToBreakBoltMm(thread, 50, bolt * 1.1, tapped);
        return weaker.forHoleMm > one.forHoleMm && Math.abs(stronger.forBoltMm / one.forBoltMm - 1) < 1e-12;
      }),
    );
  });

  it("of thumb agrees with the areas: about one diameter of steel for class 8.8, two of weak aluminium", () => {
    const thread = threadOf("M6");
    const area = tensileStressAreaMm2(thread);
    const steel = engagementToBreakBoltMm(thread, area, 800, 400).forHoleMm / 6;
    const aluminium = engagementToBreakBoltMm(thread, area, 800, 200).forHoleMm / 6;
    expect(Math.abs(steel - (engagementIn("carbon-steel") ?? 0))).toBeLessThan(0.15);
    expect(Math.abs(aluminium - (engagementIn("aluminium") ?? 0))).toBeLessThan(0.25);
    expect(engagementIn("plastic")).toBeNull();
  });

  it("of the table holds what a bolt of class 8.8 or A2-70 may be loaded with, in the weakest grade, threads at their worst", () => {
    const metals = (factOf("wall_metal").choices ?? []).filter((metal) => wallStrength(metal) !== null);
    expect(metals).toHaveLength(5);
    for (const metal of metals) {
      for (const [bolt, steel] of [
        ["8.8", "carbon-steel"],
        ["A2-70", "austenitic-stainless"],
      ] as const) {
        const share = (inTable("table.preload_share_max", { bolt_steel: steel }) ?? Number.NaN) / 100;
        for (const thread of ["M5", "M6", "M8", "M10", "M12", "M16"].map(threadOf)) {
          const lengthMm = (engagementIn(metal) ?? Number.NaN) * thread.majorMm;
          const loadN = share * boltStrength(bolt, thread.majorMm).proofMPa * tensileStressAreaMm2(thread);
          const stripsAtN = holeStrippingLoadN(thread, wallStrength(metal) ?? NO_STRENGTH, lengthMm).lowest;
          expect(stripsAtN, `${bolt} ${thread.designation} in ${metal}`).toBeGreaterThan(loadN);
        }
      }
    }
  });

  it("is refused for no strength", () => {
    expect(() => engagementToBreakBoltMm(threadOf("M6"), 20.1, 0, 200)).toThrow(RangeError);
    expect(() => engagementToBreakBoltMm(threadOf("M6"), 20.1, 800, Number.NaN)).toThrow(RangeError);
    expect(() => engagementToBreakBoltMm(threadOf("M6"), 20.1, 800, 200, 0)).toThrow(RangeError);
  });
});

describe("a tapped joint", () => {
  const M6 = threadOf("M6");

  it("changes from a stripped hole to a broken bolt at the least engagement", () => {
    fc.assert(
      fc.property(
        anyThread.filter(({ majorMm }) => majorMm <= 16),
        fc.double({ min: 100, max: 500, noNaN: true }),
        (thread, tapped) => {
          const { forHoleMm, forBoltMm } = engagementToBreakBoltMm(thread, tensileStressAreaMm2(thread), 800, tapped);
          fc.pre(forHoleMm > 1.01 * forBoltMm);
          return (
            jointStrength(thread, 800, tapped, 0.999 * forHoleMm).weakest === "hole-thread" &&
            jointStrength(thread, 800, tapped, 1.001 * forHoleMm).weakest === "bolt"
          );
        },
      ),
    );
  });

  it("strips the bolt where the tapped material is far harder", () => {
    expect(jointStrength(M6, 400, 1200, 1).weakest).toBe("bolt-thread");
  });

  it("holds least in the weakest grade, and its range holds the load of every grade", () => {
    const range = holeStrippingLoadN(M6, { lowest: 180, highest: 290 }, 9);
    for (const tensile of [180, 220, 290]) {
      const { holeThreadN } = jointStrength(M6, 800, tensile, 9);
      expect(holeThreadN).toBeGreaterThanOrEqual(range.lowest);
      expect(holeThreadN).toBeLessThanOrEqual(range.highest);
    }
  });

  it("is refused for no strength and no length", () => {
    expect(() => jointStrength(M6, 800, 0, 9)).toThrow(RangeError);
    expect(() => jointStrength(M6, 800, 200, -1)).toThrow(RangeError);
    expect(() => holeStrippingLoadN(M6, { lowest: 180, highest: 290 }, Number.NaN)).toThrow(RangeError);
  });
});
