import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  bearingAreaMm2,
  bearingPressureMPa,
  bondShearMPa,
  bondTorqueNm,
  bracketFrequencyHz,
  bracketFrequencyRangeHz,
  cantileverStiffnessNPerMm,
  flatNeededMm,
  flatWidthMm,
  rectangleSecondMomentMm4,
  rimGapMm,
  rimGapRangeMm,
  roundSecondMomentMm4,
  smallestCylinderMm,
  tiltGapMm,
} from "../../src/quantities/index.js";

const size = fc.double({ min: 1, max: 500, noNaN: true });
const part = fc.double({ min: 0.01, max: 0.99, noNaN: true });
const near = (a: number, b: number, within = 1e-9): boolean => Math.abs(a / b - 1) < within;
const BAD = [0, -1, Number.NaN, Infinity];

describe("the gap under a flat base on a cylinder", () => {
  it("comes back as the flat that a cut of its depth leaves", () => {
    fc.assert(
      fc.property(size, part, (radius, share) =>
        near(flatWidthMm(radius, rimGapMm(radius, 2 * radius * share)), 2 * radius * share),
      ),
    );
  });

  it("is allowed on the smallest cylinder made for it", () => {
    fc.assert(
      fc.property(size, part, (base, share) => {
        const gap = (base / 2) * share;
        return near(rimGapMm(smallestCylinderMm(base, gap) / 2, base), gap);
      }),
    );
  });

  it("shrinks with the radius and grows with the base, like the square of it on large radii", () => {
    fc.assert(
      fc.property(size, part, (base, share) => {
        const radius = base / 2 / share;
        return (
          rimGapMm(radius * 1.1, base) < rimGapMm(radius, base) &&
          rimGapMm(radius, base * share) < rimGapMm(radius, base)
        );
      }),
    );
    expect(near(rimGapMm(1e9, 30), 30 ** 2 / 8e9)).toBe(true);
  });

  it("is 0.38 mm for 30 mm on a radius of 300 mm and 1.13 mm on 100 mm", () => {
    expect(rimGapMm(300, 30)).toBeCloseTo(0.38, 2);
    expect(rimGapMm(100, 30)).toBeCloseTo(1.13, 2);
    expect(rimGapRangeMm({ lowest: 100, highest: 300 }, 30)).toEqual({
      lowest: rimGapMm(300, 30),
      highest: rimGapMm(100, 30),
    });
  });

  it("is half the base on a cylinder just as wide, and refused beyond", () => {
    expect(rimGapMm(15, 30)).toBe(15);
    expect(() => rimGapMm(14.9, 30)).toThrow("wider than a cylinder");
    for (const bad of BAD) {
      expect(() => rimGapMm(bad, 30)).toThrow(RangeError);
      expect(() => rimGapMm(300, bad)).toThrow(RangeError);
      expect(() => smallestCylinderMm(30, bad)).toThrow(RangeError);
    }
    expect(() => rimGapRangeMm({ lowest: 100, highest: Infinity }, 30)).toThrow(RangeError);
    expect(() => flatWidthMm(100, 101)).toThrow(RangeError);
    expect(() => smallestCylinderMm(30, 16)).toThrow(RangeError);
  });
});

describe("flat, tilt and pressure", () => {
  it("ask for 1.1 times the base, and room for a hole off the middle on both sides", () => {
    expect(flatNeededMm(30)).toBeCloseTo(33, 12);
    expect(flatNeededMm(30, 1, 2)).toBe(34);
    expect(() => flatNeededMm(30, 0.9)).toThrow(RangeError);
    expect(() => flatNeededMm(30, 1.1, -1)).toThrow(RangeError);
  });

  it("give a gap of half a millimetre for one degree on 30 mm, none without tilt", () => {
    expect(tiltGapMm(30, 1)).toBeCloseTo(0.52, 2);
    expect(tiltGapMm(30, 0)).toBe(0);
    expect(() => tiltGapMm(30, -1)).toThrow(RangeError);
    expect(() => tiltGapMm(30, 90)).toThrow(RangeError);
  });

  it("give back the preload as pressure times area", () => {
    fc.assert(
      fc.property(size, part, size, (base, share, preload) => {
        const area = bearingAreaMm2(base, base * share);
        return near(bearingPressureMPa(preload, area) * area, preload) && area < bearingAreaMm2(base, 0);
      }),
    );
    expect(() => bearingAreaMm2(8, 8)).toThrow(RangeError);
    expect(() => bearingPressureMPa(-1, 10)).toThrow(RangeError);
  });
});

describe("the first frequency of a bracket", () => {
  const steel = 210_000;

  it("falls like the root of the mass, and with the third power of the length under the root", () => {
    fc.assert(
      fc.property(size, size, part, (second, length, mass) => {
        const stiffness = cantileverStiffnessNPerMm(steel, second, length);
        const frequency = bracketFrequencyHz(stiffness, mass);
        return (
          near(bracketFrequencyHz(stiffness, 4 * mass), frequency / 2) &&
          near(bracketFrequencyHz(cantileverStiffnessNPerMm(steel, second, 4 * length), mass), frequency / 8) &&
          bracketFrequencyHz(stiffness, mass, 0.1) < frequency
        );
      }),
    );
  });

  it("lies within the range made from the ends", () => {
    fc.assert(
      fc.property(size, part, part, (stiffness, mass, share) => {
        const range = bracketFrequencyRangeHz(
          { lowest: stiffness, highest: 2 * stiffness },
          { lowest: mass, highest: 2 * mass },
        );
        const one = bracketFrequencyHz(stiffness * (1 + share), mass * (2 - share));
        return range.lowest <= one && one <= range.highest;
      }),
    );
  });

  it("is refused for what has no mass, no stiffness or no section", () => {
    expect(() => bracketFrequencyHz(100, 0)).toThrow(RangeError);
    expect(() => bracketFrequencyHz(100, -1)).toThrow(RangeError);
    for (const bad of BAD) {
      expect(() => bracketFrequencyHz(bad, 1)).toThrow(RangeError);
      expect(() => cantileverStiffnessNPerMm(steel, 100, bad)).toThrow(RangeError);
      expect(() => rectangleSecondMomentMm4(10, bad)).toThrow(RangeError);
      expect(() => roundSecondMomentMm4(bad)).toThrow(RangeError);
    }
    expect(() => roundSecondMomentMm4(10, 10)).toThrow(RangeError);
  });

  it("has sections that do not depend on how they are put together", () => {
    fc.assert(
      fc.property(size, part, (outer, share) => {
        const inner = outer * share;
        const sum = roundSecondMomentMm4(outer, inner) + roundSecondMomentMm4(inner);
        return near(sum, roundSecondMomentMm4(outer));
      }),
    );
  });
});

describe("the shear in the bond of a pad", () => {
  it("comes back as torque, for disc and ring", () => {
    fc.assert(
      fc.property(size, fc.double({ min: 0, max: 0.99, noNaN: true }), size, (outer, share, torque) =>
        near(bondTorqueNm(bondShearMPa(torque, outer, outer * share), outer, outer * share), torque),
      ),
    );
  });

  it("is 16 T/(π d³) for a disc, falls with the third power, and a hole raises it", () => {
    expect(bondShearMPa(10, 30)).toBeCloseTo((16 * 10_000) / (Math.PI * 30 ** 3), 12);
    fc.assert(
      fc.property(size, part, (outer, share) => {
        const disc = bondShearMPa(10, outer);
        return near(bondShearMPa(10, 2 * outer), disc / 8) && bondShearMPa(10, outer, outer * share) >= disc;
      }),
    );
    expect(bondShearMPa(0, 30)).toBe(0);
  });

  it("is that of a thin tube, T/(2 π r² t), for a narrow ring", () => {
    const [mean, wall] = [30, 0.01];
    const ring = bondShearMPa(10, mean + wall, mean - wall);
    expect(near(ring, 10_000 / (2 * Math.PI * 15 ** 2 * wall), 0.001)).toBe(true);
  });

  it("is refused for a negative torque and a pad that is none", () => {
    expect(() => bondShearMPa(-1, 30)).toThrow(RangeError);
    expect(() => bondShearMPa(Number.NaN, 30)).toThrow(RangeError);
    expect(() => bondShearMPa(10, 0)).toThrow(RangeError);
    expect(() => bondShearMPa(10, 30, 30)).toThrow(RangeError);
    expect(() => bondTorqueNm(-1, 30)).toThrow(RangeError);
  });
});
