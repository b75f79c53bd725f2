import { requireNotNegative, requirePositive } from "./require-number.js";

// All of these hold for a single sine. A mixture of frequencies has no fixed ratio of peak to r.m.s., and its velocity
// follows from its acceleration only line by line.

/** Standard gravity, m/s², by definition. */
export const STANDARD_GRAVITY_M_PER_S2 = 9.80665;

/** How the size of a vibration is stated. */
export type Detector = "rms" | "peak" | "peak-to-peak";

const OF_PEAK: Readonly<Record<Detector, number>> = { rms: Math.SQRT1_2, peak: 1, "peak-to-peak": 2 };

/**
 * The size of a sine stated in another way.
 *
 * Source: sine wave; peak = √2 × r.m.s., peak to peak = 2 × peak.
 *
 * @param size - in any unit, not negative
 * @returns in the same unit
 */
export function restateSine(size: number, from: Detector, to: Detector): number {
  requireNotNegative("size", size);
  return (size / OF_PEAK[from]) * OF_PEAK[to];
}

/** Velocity in mm/s of an acceleration in m/s², both stated in the same way; v = a/(2πf). */
export function velocityOfAccelerationMmPerS(accelerationMPerS2: number, frequencyHz: number): number {
  requireNotNegative("accelerationMPerS2", accelerationMPerS2);
  return (1000 * accelerationMPerS2) / angular(frequencyHz);
}

/** Acceleration in m/s² of a velocity in mm/s, both stated in the same way; a = 2πf v. */
export function accelerationOfVelocityMPerS2(velocityMmPerS: number, frequencyHz: number): number {
  requireNotNegative("velocityMmPerS", velocityMmPerS);
  return (velocityMmPerS * angular(frequencyHz)) / 1000;
}

/** Displacement in µm of a velocity in mm/s, both stated in the same way; s = v/(2πf). */
export function displacementOfVelocityUm(velocityMmPerS: number, frequencyHz: number): number {
  requireNotNegative("velocityMmPerS", velocityMmPerS);
  return (1000 * velocityMmPerS) / angular(frequencyHz);
}

/** Velocity in mm/s of a displacement in µm, both stated in the same way; v = 2πf s. */
export function velocityOfDisplacementMmPerS(displacementUm: number, frequencyHz: number): number {
  requireNotNegative("displacementUm", displacementUm);
  return (displacementUm * angular(frequencyHz)) / 1000;
}

function angular(frequencyHz: number): number {
  requirePositive("frequencyHz", frequencyHz);
  return 2 * Math.PI * frequencyHz;
}

/**
 * R.m.s. noise of a sensor in a band, from a flat noise density.
 *
 * Source: derivation; density × √bandwidth. Near 0 Hz the density of most sensors rises: take the value stated there.
 *
 * @param densityUgPerRootHz - µg/√Hz, above 0
 * @param bandwidthHz - Hz, above 0
 * @returns m/s²
 */
export function noiseInBandMPerS2(densityUgPerRootHz: number, bandwidthHz: number): number {
  requirePositive("densityUgPerRootHz", densityUgPerRootHz);
  requirePositive("bandwidthHz", bandwidthHz);
  return densityUgPerRootHz * 1e-6 * STANDARD_GRAVITY_M_PER_S2 * Math.sqrt(bandwidthHz);
}

/**
 * How many times the noise a slow shaft's vibration stands above it.
 *
 * Source: derivation; acceleration of the velocity at the turning frequency, over the noise. 3 is the least in common practice.
 *
 * @param velocityMmPerS - r.m.s. velocity to be seen, mm/s
 * @param frequencyHz - Hz, above 0; the lowest speed is the worst case
 * @param noiseMPerS2 - r.m.s. noise in the band, m/s², above 0
 */
export function timesAboveNoise(velocityMmPerS: number, frequencyHz: number, noiseMPerS2: number): number {
  requirePositive("noiseMPerS2", noiseMPerS2);
  return accelerationOfVelocityMPerS2(velocityMmPerS, frequencyHz) / noiseMPerS2;
}

/**
 * The least velocity that stands so many times above the noise.
 *
 * Source: derivation, inverse of {@link timesAboveNoise}.
 *
 * @returns mm/s r.m.s.
 */
export function leastVelocityAboveNoiseMmPerS(frequencyHz: number, noiseMPerS2: number, times: number): number {
  requirePositive("noiseMPerS2", noiseMPerS2);
  requirePositive("times", times);
  return velocityOfAccelerationMmPerS(times * noiseMPerS2, frequencyHz);
}
