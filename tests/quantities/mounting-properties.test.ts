import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  accelerationOfVelocityMPerS2,
  type Detector,
  displacementOfVelocityUm,
  leastVelocityAboveNoiseMmPerS,
  lowestFrequencyShownHz,
  massForShiftKg,
  naturalFrequencyShiftPct,
  neededResonanceHz,
  noiseInBandMPerS2,
  overReadingDb,
  overReadingPct,
  resonanceOnContactHz,
  restateSine,
  shareShownAbove,
  timesAboveNoise,
  usableShareOfResonance,
  usableUpperFrequencyHz,
  velocityOfAccelerationMmPerS,
  velocityOfDisplacementMmPerS,
} from "../../src/quantities/index.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const frequency = between(0.01, 40_000);

describe("reading below the mounted resonance", () => {
  it("errs by just the accepted error at the usable share, and by no more anywhere below it", () => {
    fc.assert(
      fc.property(between(0.1, 40), between(0, 0.6), between(0, 1), (error, damping, part) => {
        const share = usableShareOfResonance(error, damping);
        if (share < 0.999) expect(Math.abs(overReadingPct(share, damping))).toBeCloseTo(error, 6);
        expect(Math.abs(overReadingPct(share * part, damping))).toBeLessThanOrEqual(error + 1e-9);
      }),
    );
  });

  it("errs to the other side where the damping lets no peak reach the error", () => {
    const share = usableShareOfResonance(5, 0.7);
    expect(overReadingPct(share, 0.7)).toBeCloseTo(-5, 9);
    expect(usableShareOfResonance(5, 1)).toBeLessThan(share);
  });

  it("grows with the frequency without damping, and shrinks with damping", () => {
    fc.assert(
      fc.property(between(0.01, 0.9), between(0.001, 0.5), (ratio, damping) => {
        expect(overReadingPct(ratio * 1.05)).toBeGreaterThan(overReadingPct(ratio));
        expect(overReadingPct(ratio, damping)).toBeLessThan(overReadingPct(ratio));
        expect(10 ** (overReadingDb(ratio, damping) / 20)).toBeCloseTo(1 + overReadingPct(ratio, damping) / 100, 9);
      }),
    );
    expect(overReadingPct(0)).toBe(0);
    expect(() => overReadingPct(1)).toThrow(RangeError);
  });

  it("asks for the resonance that makes a frequency usable", () => {
    fc.assert(
      fc.property(frequency, between(0.5, 40), between(0, 0.5), (highest, error, damping) => {
        const resonance = neededResonanceHz(highest, error, damping);
        expect(usableUpperFrequencyHz(resonance, error, damping) / highest).toBeCloseTo(1, 12);
      }),
    );
  });
});

describe("masses and stiffnesses", () => {
  it("raise and lower a resonance by their square root", () => {
    fc.assert(
      fc.property(between(1e5, 1e8), between(0.001, 10), between(1.1, 50), (stiffness, mass, factor) => {
        const resonance = resonanceOnContactHz(stiffness, mass);
        expect(resonanceOnContactHz(stiffness * factor ** 2, mass) / resonance).toBeCloseTo(factor, 9);
        expect(resonanceOnContactHz(stiffness, mass * factor ** 2) / resonance).toBeCloseTo(1 / factor, 9);
        const shift = naturalFrequencyShiftPct(mass, mass * (factor - 1));
        const moved = resonanceOnContactHz(stiffness, mass * factor);
        expect(100 * (moved / resonance - 1)).toBeCloseTo(shift, 9);
      }),
    );
  });

  it("shift a natural frequency by what the mass was chosen for", () => {
    fc.assert(
      fc.property(between(0.01, 1000), between(0.01, 80), (moving, shift) => {
        expect(naturalFrequencyShiftPct(moving, massForShiftKg(moving, shift))).toBeCloseTo(-shift, 9);
      }),
    );
    expect(naturalFrequencyShiftPct(1, 0)).toBe(0);
  });
});

describe("the lower corner", () => {
  it("shows 71 % at the corner, 83 % at one and a half times, and never more than all", () => {
    expect(shareShownAbove(10, 10)).toBeCloseTo(0.71, 2);
    expect(shareShownAbove(15, 10)).toBeCloseTo(0.83, 2);
    expect(shareShownAbove(30, 10)).toBeCloseTo(0.95, 2);
    fc.assert(
      fc.property(frequency, between(0.01, 100), (hz, corner) => {
        const share = shareShownAbove(hz, corner);
        expect(share).toBeGreaterThan(0);
        expect(share).toBeLessThanOrEqual(1);
        expect(shareShownAbove(2 * hz, corner)).toBeGreaterThanOrEqual(share);
      }),
    );
  });

  it("is turned round", () => {
    fc.assert(
      fc.property(between(0.01, 100), between(0.02, 0.99), (corner, share) => {
        expect(shareShownAbove(lowestFrequencyShownHz(corner, share), corner)).toBeCloseTo(share, 9);
      }),
    );
  });
});

describe("sines", () => {
  const DETECTORS: readonly Detector[] = ["rms", "peak", "peak-to-peak"];

  it("come back from every other way of stating them", () => {
    fc.assert(
      fc.property(
        between(0.001, 1e6),
        fc.constantFrom(...DETECTORS),
        fc.constantFrom(...DETECTORS),
        (size, from, to) => {
          expect(restateSine(restateSine(size, from, to), to, from) / size).toBeCloseTo(1, 12);
        },
      ),
    );
    expect(restateSine(0, "rms", "peak")).toBe(0);
  });

  it("come back from acceleration and displacement, and scale with the frequency", () => {
    fc.assert(
      fc.property(between(0.001, 1000), frequency, (velocity, hz) => {
        const acceleration = accelerationOfVelocityMPerS2(velocity, hz);
        const displacement = displacementOfVelocityUm(velocity, hz);
        expect(velocityOfAccelerationMmPerS(acceleration, hz) / velocity).toBeCloseTo(1, 12);
        expect(velocityOfDisplacementMmPerS(displacement, hz) / velocity).toBeCloseTo(1, 12);
        expect(accelerationOfVelocityMPerS2(velocity, 2 * hz) / acceleration).toBeCloseTo(2, 12);
        expect(displacementOfVelocityUm(velocity, 2 * hz) / displacement).toBeCloseTo(1 / 2, 12);
      }),
    );
  });

  it("of a slow shaft sink into the noise: 1 mm/s at 0.5 Hz is 3 mm/s²", () => {
    expect(1000 * accelerationOfVelocityMPerS2(1, 0.5)).toBeCloseTo(Math.PI, 9);
    const noise = noiseInBandMPerS2(25, 100);
    expect(noise).toBeCloseTo(25e-6 * 9.80665 * 10, 12);
    const least = leastVelocityAboveNoiseMmPerS(0.5, noise, 3);
    expect(timesAboveNoise(least, 0.5, noise)).toBeCloseTo(3, 9);
    expect(timesAboveNoise(least, 5, noise)).toBeCloseTo(30, 9);
  });
});
