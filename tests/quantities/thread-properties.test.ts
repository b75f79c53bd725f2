import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  cuttingDrillMm,
  drilledHoleMm,
  formingHoleMm,
  holeForPercentMm,
  percentOfThread,
  rootAreaMm2,
  type TapHoleUse,
  tapHoleUse,
  tapHoleUseWithin,
  tensileStressAreaMm2,
  threadDiameters,
  threadLimits,
} from "../../src/quantities/index.js";
import { PITCH_DIAMETER_TOLERANCES, TOLERANCES_BY_PITCH } from "../../src/quantities/tables/thread-tolerances.js";
import { threadOf } from "./against-truth.js";
import { ALL_THREADS, TOLERANCED_THREADS } from "./all-threads.js";

const anyThread = fc.constantFrom(...ALL_THREADS);
const anyToleranced = fc.constantFrom(...TOLERANCED_THREADS);
const M6 = threadOf("M6");

describe("a thread", () => {
  it("has its diameters and areas in order", () => {
    fc.assert(
      fc.property(anyThread, (thread) => {
        const { majorMm, pitchDiameterMm, internalMinorMm, externalMinorMm } = threadDiameters(thread);
        const root = rootAreaMm2(thread);
        const stress = tensileStressAreaMm2(thread);
        return (
          externalMinorMm < internalMinorMm &&
          internalMinorMm < pitchDiameterMm &&
          pitchDiameterMm < majorMm &&
          0 < root &&
          root < stress &&
          stress < (Math.PI / 4) * pitchDiameterMm ** 2
        );
      }),
    );
  });

  it("carries tension on the circle of d - 0.9382 P, of d - 0.9743 P if unified", () => {
    for (const thread of ALL_THREADS) {
      const less = thread.majorMm - Math.sqrt((4 * tensileStressAreaMm2(thread)) / Math.PI);
      expect(less / thread.pitchMm).toBeCloseTo(thread.system === "metric" ? 0.9382 : 0.9743, 4);
    }
  });

  it("never lets bolt and hole of the usual fit meet outside their basic profile", () => {
    for (const thread of TOLERANCED_THREADS) {
      const limits = threadLimits(thread);
      const basic = threadDiameters(thread);
      // Half of the last digit to which the tables are rounded.
      const rounding = thread.system === "metric" ? 0.0005 : 0.00005 * 25.4;
      for (const { lowest, highest } of Object.values(limits)) expect(lowest, thread.designation).toBeLessThan(highest);
      expect(limits.externalMajorMm.highest).toBeLessThan(basic.majorMm);
      expect(limits.externalPitchMm.highest).toBeLessThan(basic.pitchDiameterMm);
      expect(limits.internalPitchMm.lowest).toBeGreaterThanOrEqual(basic.pitchDiameterMm - rounding - 1e-9);
      expect(limits.internalMinorMm.lowest).toBeGreaterThanOrEqual(basic.internalMinorMm - rounding - 1e-9);
      expect(limits.internalMinorMm.highest, thread.designation).toBeLessThan(limits.externalMajorMm.lowest);
    }
  });

  it("has the tolerances that the formulas of ISO 965-1 give, but for rounding to preferred numbers", () => {
    const near = (table: number, formula: number): void => expect(Math.abs(table / formula - 1)).toBeLessThan(0.06);
    for (const [pitch, deviation, major6, minor6] of TOLERANCES_BY_PITCH) {
      near(deviation, 15 + 11 * pitch);
      near(major6, 180 * pitch ** (2 / 3) - 3.15 / Math.sqrt(pitch));
      near(minor6, pitch < 1 ? 433 * pitch - 190 * pitch ** 1.22 : 230 * pitch ** 0.7);
    }
    for (const { aboveMm, upToMm, rows } of PITCH_DIAMETER_TOLERANCES) {
      for (const [pitch, external6, internal6] of rows) {
        const formula = 90 * pitch ** 0.4 * Math.sqrt(aboveMm * upToMm) ** 0.1;
        near(external6, formula);
        near(internal6, 1.32 * formula);
      }
    }
  });

  it("is refused without tolerances, or with sizes that make none", () => {
    expect(() => threadLimits(threadOf("M2x0.25"))).toThrow(RangeError);
    for (const [majorMm, pitchMm] of [
      [0, 1],
      [Number.NaN, 1],
      [6, 0],
      [6, -1],
      [6, Number.NaN],
      [1, 1],
      [6, Infinity],
    ] as const) {
      expect(() => threadDiameters({ system: "metric", majorMm, pitchMm })).toThrow(RangeError);
    }
  });
});

describe("the percentage of thread", () => {
  const convention = fc.constantFrom("of-1.299-pitches" as const, "of-1.0825-pitches" as const);

  it("comes back from the hole it gives", () => {
    fc.assert(
      fc.property(anyThread, convention, fc.double({ min: 1, max: 110, noNaN: true }), (thread, which, percent) => {
        const back = percentOfThread(thread, holeForPercentMm(thread, percent, which), which);
        return Math.abs(back - percent) < 1e-9 * percent + 1e-9;
      }),
    );
  });

  it("is 1.2 times higher by the convention of 1.0825 pitches, and 100 there at the minor diameter", () => {
    fc.assert(
      fc.property(anyThread, (thread) => {
        const hole = threadDiameters(thread).internalMinorMm;
        const narrow = percentOfThread(thread, hole, "of-1.0825-pitches");
        return (
          Math.abs(narrow - 100) < 1e-9 &&
          Math.abs(narrow / percentOfThread(thread, hole, "of-1.299-pitches") - 1.2) < 1e-12
        );
      }),
    );
  });

  it("is refused for a hole that is none or wider than the thread", () => {
    for (const hole of [0, -1, Number.NaN, 6, 7]) {
      expect(() => percentOfThread(M6, hole, "of-1.299-pitches")).toThrow(RangeError);
    }
    expect(() => holeForPercentMm(M6, 0, "of-1.299-pitches")).toThrow(RangeError);
    expect(() => holeForPercentMm(M6, 500, "of-1.299-pitches")).toThrow(RangeError);
  });
});

describe("what a hole is good for", () => {
  it.each<[number, TapHoleUse]>([
    [4.9, "too-small"],
    [4.917, "cutting"],
    [5, "cutting"],
    [5.153, "cutting"],
    [5.16, "neither"],
    [5.4, "neither"],
    [5.47, "neither"],
    [5.5, "forming"],
    [5.55, "forming"],
    [5.6, "forming"],
    [5.7, "too-large"],
  ])("M6 in %d mm: %s", (hole, use) => {
    expect(tapHoleUse(M6, hole)).toBe(use);
  });

  it("is cutting for every drill of the charts", () => {
    const drilled = TOLERANCED_THREADS.flatMap((thread) => {
      const drill = cuttingDrillMm(thread);
      return drill === null ? [] : [[thread.designation, tapHoleUse(thread, drill)]];
    });
    expect(drilled.length).toBeGreaterThan(35);
    expect(drilled.filter(([, use]) => use !== "cutting")).toEqual([]);
  });

  it("only moves on as the hole grows, and forming never overlaps cutting", () => {
    const order: readonly TapHoleUse[] = ["too-small", "cutting", "neither", "forming", "too-large"];
    fc.assert(
      fc.property(
        anyToleranced,
        fc.double({ min: 0.5, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 0.2, noNaN: true }),
        (thread, part, more) => {
          const hole = part * thread.majorMm;
          return order.indexOf(tapHoleUse(thread, hole)) <= order.indexOf(tapHoleUse(thread, hole + more));
        },
      ),
    );
    for (const thread of TOLERANCED_THREADS) {
      expect(threadLimits(thread).internalMinorMm.highest).toBeLessThan(formingHoleMm(thread).lowest);
    }
  });

  it("is left open where the hole may be good for two things", () => {
    expect(tapHoleUseWithin(M6, drilledHoleMm(5))).toBe("cutting");
    expect(tapHoleUseWithin(M6, drilledHoleMm(5.3))).toBe("neither");
    expect(tapHoleUseWithin(M6, drilledHoleMm(5.4))).toBeNull();
    expect(() => tapHoleUseWithin(M6, { lowest: 5, highest: Infinity })).toThrow(RangeError);
  });

  it("is refused for a drill that is none or beyond the table", () => {
    for (const drill of [0, -5, Number.NaN, 30.1]) expect(() => drilledHoleMm(drill)).toThrow(RangeError);
  });
});
