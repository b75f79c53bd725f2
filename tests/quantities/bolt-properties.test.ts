import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  assemblyPreloadN,
  boltLoadN,
  boltUtilisation,
  equivalentStressMPa,
  headFrictionDiameterMm,
  nutFactor,
  preloadByNutFactorN,
  preloadForTorqueN,
  preloadRangeByNutFactorN,
  preloadRangeN,
  shortFormPreloadN,
  shortFormTorqueNm,
  type TorqueGeometry,
  tensileStressAreaMm2,
  threadDiameters,
  torqueByNutFactorNm,
  torqueForPreloadNm,
  torqueShares,
} from "../../src/quantities/index.js";
import { threadOf } from "./against-truth.js";
import { ALL_THREADS } from "./all-threads.js";
import { boltStrength, frictionOf, nutFactorOf, PROPERTY_CLASSES, strengthOrNone } from "./from-tables.js";
import { headOf } from "./heads.js";

const M6 = threadOf("M6");
const anyThread = fc.constantFrom(...ALL_THREADS);
const mu = fc.double({ min: 0.03, max: 0.6, noNaN: true });
const force = fc.double({ min: 1, max: 1e6, noNaN: true });
const torque = fc.double({ min: 0.1, max: 1000, noNaN: true });
const near = (a: number, b: number, within = 1e-12): boolean => Math.abs(a / b - 1) < within;

const geometryOf = (thread: (typeof ALL_THREADS)[number]): TorqueGeometry => ({
  pitchMm: thread.pitchMm,
  pitchDiameterMm: threadDiameters(thread).pitchDiameterMm,
  headFrictionDiameterMm: headFrictionDiameterMm(1.5 * thread.majorMm, 1.1 * thread.majorMm),
});

describe("torque and preload", () => {
  it("come back from one another, in all three forms", () => {
    fc.assert(
      fc.property(anyThread, mu, mu, force, (thread, threadFriction, headFriction, preload) => {
        const geometry = geometryOf(thread);
        const friction = { thread: threadFriction, head: headFriction };
        return (
          near(preloadForTorqueN(torqueForPreloadNm(preload, geometry, friction), geometry, friction), preload) &&
          near(shortFormPreloadN(shortFormTorqueNm(preload, geometry, friction), geometry, friction), preload) &&
          near(preloadByNutFactorN(torqueByNutFactorNm(preload, thread.majorMm, 0.2), thread.majorMm, 0.2), preload)
        );
      }),
    );
  });

  it("differ by what is said between the short form and the exact expression", () => {
    const usual = fc.double({ min: 0.04, max: 0.35, noNaN: true });
    const deviation = (thread: (typeof ALL_THREADS)[number], a: number, b: number): number => {
      const friction = { thread: a, head: b };
      const geometry = geometryOf(thread);
      return shortFormTorqueNm(1000, geometry, friction) / torqueForPreloadNm(1000, geometry, friction) - 1;
    };
    fc.assert(
      fc.property(anyThread, usual, usual, (thread, a, b) => {
        const alike = Math.min(a, 0.2);
        const apart = deviation(thread, a, b);
        return apart > -0.027 && apart < 0.003 && Math.abs(deviation(thread, alike, alike)) < 0.01;
      }),
      { numRuns: 1000 },
    );
  });

  it("rise with preload and with either friction", () => {
    fc.assert(
      fc.property(anyThread, mu, mu, fc.double({ min: 0.001, max: 0.2, noNaN: true }), (thread, a, b, more) => {
        const geometry = geometryOf(thread);
        const plain = torqueForPreloadNm(1000, geometry, { thread: a, head: b });
        return (
          torqueForPreloadNm(1000, geometry, { thread: a + more, head: b }) > plain &&
          torqueForPreloadNm(1000, geometry, { thread: a, head: b + more }) > plain &&
          near(torqueForPreloadNm(3000, geometry, { thread: a, head: b }), 3 * plain)
        );
      }),
    );
  });

  it("without friction lift the load by one pitch per turn", () => {
    fc.assert(
      fc.property(anyThread, force, (thread, preload) => {
        const turn = 2 * Math.PI * torqueForPreloadNm(preload, geometryOf(thread), { thread: 0, head: 0 });
        return near(turn, (preload * thread.pitchMm) / 1000);
      }),
    );
  });

  it("share the torque out so that nothing is left", () => {
    fc.assert(
      fc.property(anyThread, mu, mu, (thread, a, b) => {
        const { lead, thread: inThread, head } = torqueShares(geometryOf(thread), { thread: a, head: b });
        return lead > 0 && near(lead + inThread + head, 1);
      }),
    );
  });

  it("agree with the nut factor that the frictions amount to", () => {
    fc.assert(
      fc.property(anyThread, mu, mu, force, (thread, a, b, preload) => {
        const geometry = geometryOf(thread);
        const friction = { thread: a, head: b };
        const factor = nutFactor(thread.majorMm, geometry, friction);
        return near(
          torqueByNutFactorNm(preload, thread.majorMm, factor),
          shortFormTorqueNm(preload, geometry, friction),
        );
      }),
    );
  });

  it("are refused for what is no torque, no friction and no size", () => {
    const geometry = headOf(M6);
    const friction = { thread: 0.14, head: 0.14 };
    for (const bad of [-1, Number.NaN, Infinity]) {
      expect(() => torqueForPreloadNm(bad, geometry, friction)).toThrow(RangeError);
      expect(() => preloadForTorqueN(bad, geometry, friction)).toThrow(RangeError);
      expect(() => preloadForTorqueN(8, geometry, { ...friction, thread: bad })).toThrow(RangeError);
      expect(() => shortFormPreloadN(8, geometry, { ...friction, head: bad })).toThrow(RangeError);
      expect(() => torqueShares({ ...geometry, pitchMm: bad }, friction)).toThrow(RangeError);
      expect(() => torqueByNutFactorNm(1000, 6, bad)).toThrow(RangeError);
    }
    expect(() => torqueForPreloadNm(1000, { ...geometry, pitchMm: 20 }, { thread: 0.9, head: 0.1 })).toThrow(
      "cannot be turned",
    );
    expect(() => headFrictionDiameterMm(6.6, 6.6)).toThrow(RangeError);
  });
});

describe("the scatter of the preload", () => {
  it("holds the preload of every torque and friction within the intervals", () => {
    const part = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(anyThread, torque, part, part, part, part, (thread, least, wide, t, a, b) => {
        const geometry = geometryOf(thread);
        const range = preloadRangeN(
          { lowest: least, highest: least * (1 + wide) },
          geometry,
          { lowest: 0.08, highest: 0.16 },
          { lowest: 0.1, highest: 0.24 },
        );
        const one = preloadForTorqueN(least * (1 + wide * t), geometry, {
          thread: 0.08 + 0.08 * a,
          head: 0.1 + 0.14 * b,
        });
        return range.lowest <= one * (1 + 1e-12) && one <= range.highest * (1 + 1e-12);
      }),
    );
  });

  it("gives for 10 N·m on M6 what the frictions of oil and bare steel make of it", () => {
    const oiled = frictionOf("carbon-steel", "oiled");
    const dry = frictionOf("carbon-steel", "dry");
    if (!oiled || !dry) throw new Error("no friction");
    const tenNm = { lowest: 10, highest: 10 };
    const withOil = preloadRangeN(tenNm, headOf(M6), oiled, oiled);
    const bare = preloadRangeN(tenNm, headOf(M6), dry, dry);
    expect(withOil.highest / withOil.lowest).toBeGreaterThan(1.7);
    expect(bare.highest).toBeLessThan(withOil.highest);
    const used = boltUtilisation(M6, boltStrength("8.8", 6), withOil.highest, oiled.lowest);
    expect(used.ofProof).toBeGreaterThan(1);
    expect(used.ofYield).toBeGreaterThan(used.ofTensile);
  });

  it("by nut factors: 10 N·m greased takes M6 class 8.8 to 119 per cent of proof, 0.12 being the lowest K", () => {
    const { highest } = preloadRangeByNutFactorN({ lowest: 10, highest: 10 }, 6, nutFactorOf("greased"));
    expect(boltUtilisation(M6, boltStrength("8.8", 6), highest, 0.1).ofProof).toBeCloseTo(1.19, 2);
  });

  it("is refused for open or turned intervals", () => {
    const fine = { lowest: 0.1, highest: 0.2 };
    for (const bad of [
      { lowest: 8, highest: Infinity },
      { lowest: 9, highest: 8 },
      { lowest: Number.NaN, highest: 8 },
    ]) {
      expect(() => preloadRangeN(bad, headOf(M6), fine, fine)).toThrow(RangeError);
      expect(() => preloadRangeN({ lowest: 8, highest: 8 }, headOf(M6), bad, fine)).toThrow(RangeError);
      expect(() => preloadRangeByNutFactorN(bad, 6, fine)).toThrow(RangeError);
    }
  });

  it("has no friction for adhesive on austenitic steel, and nut factors that hold the frictions' own", () => {
    expect(frictionOf("austenitic-stainless", "locked")).toBeNull();
    const friction = frictionOf("carbon-steel", "locked");
    if (!friction) throw new Error("no friction");
    const factors = nutFactorOf("locked");
    for (const designation of ["M5", "M6", "M8", "M10"]) {
      const thread = threadOf(designation);
      const most = nutFactor(thread.majorMm, headOf(thread), { thread: friction.highest, head: friction.highest });
      expect(most).toBeGreaterThan(factors.lowest);
      expect(most).toBeLessThan(factors.highest);
    }
  });
});

describe("the strength of a bolt", () => {
  it("has proof below yield below tensile strength, and the numbers of its name", () => {
    for (const name of PROPERTY_CLASSES) {
      const { tensileMPa, yieldMPa, proofMPa } = boltStrength(name, 10);
      expect(proofMPa).toBeLessThanOrEqual(yieldMPa);
      expect(yieldMPa).toBeLessThan(tensileMPa);
      const [first = 0, second = 0] = name.split(/[.-]/).map(Number);
      if (name.startsWith("A")) expect(tensileMPa).toBe(10 * second);
      else {
        expect(tensileMPa / (100 * first)).toBeGreaterThanOrEqual(1);
        expect(tensileMPa / (100 * first)).toBeLessThan(1.051);
        expect(yieldMPa / (10 * first * second)).toBeGreaterThanOrEqual(1);
        expect(yieldMPa / (10 * first * second)).toBeLessThan(1.07);
      }
    }
  });

  it("of class 8.8 changes above 16 mm, and is open where the class has no such size", () => {
    expect(boltStrength("8.8", 16).proofMPa).toBe(580);
    expect(boltStrength("8.8", 16.001).proofMPa).toBe(600);
    expect(strengthOrNone("9.8", 20)).toBeNull();
    expect(strengthOrNone("A2-70", 30)).toBeNull();
    expect(() => boltLoadN(0, 20)).toThrow(RangeError);
    expect(() => boltLoadN(580, -1)).toThrow(RangeError);
  });

  it("is used up exactly by the assembly preload made for it", () => {
    const part = fc.double({ min: 0.05, max: 1, noNaN: true });
    fc.assert(
      fc.property(anyThread, fc.double({ min: 0, max: 0.5, noNaN: true }), part, (thread, friction, utilisation) => {
        for (const torsion of ["plastic", "elastic"] as const) {
          const preload = assemblyPreloadN(thread, 640, friction, utilisation, torsion);
          if (!near(equivalentStressMPa(thread, preload, friction, torsion), 640 * utilisation)) return false;
        }
        return true;
      }),
    );
  });

  it("is used up more by tension with torsion than by tension alone, and more with more friction", () => {
    fc.assert(
      fc.property(anyThread, force, mu, (thread, preload, friction) => {
        const tension = preload / tensileStressAreaMm2(thread);
        const stress = equivalentStressMPa(thread, preload, friction);
        return (
          stress > tension &&
          equivalentStressMPa(thread, preload, friction + 0.05) > stress &&
          equivalentStressMPa(thread, preload, friction, "elastic") > stress
        );
      }),
    );
    expect(() => equivalentStressMPa(M6, 1000, 1.1)).toThrow(RangeError);
    expect(() => assemblyPreloadN(M6, 640, 0.1, 1.1)).toThrow(RangeError);
    expect(() => assemblyPreloadN(M6, 640, 0.1, 0)).toThrow(RangeError);
  });
});
