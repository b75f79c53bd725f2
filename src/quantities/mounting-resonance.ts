import { requireNotNegative, requirePositive, requireWithin } from "./require-number.js";

/**
 * How much too much a sensor reads below its mounted resonance; negative where it reads too little.
 *
 * Source: forced response of one mass on one spring with damping (handbooks; W. T. Thomson, Theory of Vibration with
 * Applications, section 3.11): 1/√((1 − r²)² + (2 ζ r)²) − 1.
 * Holds below the resonance; other resonances of the sensor or the mount are not in it.
 *
 * @param frequencyRatio - frequency over mounted resonance, from 0 to below 1
 * @param dampingRatio - share of critical damping, 0 to 1; 0 is the worst case, and near the truth for stiff mounts
 * @returns per cent
 */
export function overReadingPct(frequencyRatio: number, dampingRatio = 0): number {
  return 100 * (amplification(frequencyRatio, dampingRatio) - 1);
}

/** The same as {@link overReadingPct} in decibels. */
export function overReadingDb(frequencyRatio: number, dampingRatio = 0): number {
  return 20 * Math.log10(amplification(frequencyRatio, dampingRatio));
}

function amplification(frequencyRatio: number, dampingRatio: number): number {
  // Nearer to the resonance the model says nothing useful, and undamped it has no value at all.
  requireWithin("frequencyRatio", frequencyRatio, 0, 0.999);
  requireWithin("dampingRatio", dampingRatio, 0, 1);
  return 1 / Math.hypot(1 - frequencyRatio ** 2, 2 * dampingRatio * frequencyRatio);
}

/**
 * The greatest share of the mounted resonance at which the reading is still within an accepted error, above or below.
 *
 * Source: derivation; the response of {@link overReadingPct} solved for the first frequency where the error is reached.
 *
 * @param acceptedErrorPct - error accepted on either side, per cent, 0.001 to 99
 * @param dampingRatio - share of critical damping, 0 to 1
 * @returns share of the mounted resonance, above 0; at most 0.999
 */
export function usableShareOfResonance(acceptedErrorPct: number, dampingRatio = 0): number {
  requireWithin("acceptedErrorPct", acceptedErrorPct, 0.001, 99);
  requireWithin("dampingRatio", dampingRatio, 0, 1);
  const error = acceptedErrorPct / 100;
  // With x = r² and b = 1 − 2 ζ², the response reaches 1/g where x² − 2 b x + 1 − g² = 0.
  const b = 1 - 2 * dampingRatio ** 2;
  const tooMuch = 1 - 1 / (1 + error) ** 2;
  const peaks = b > 0 && b * b >= tooMuch;
  // The smaller root in the form that keeps its digits; where the peak stays below, the reading falls short at last.
  const x = peaks ? tooMuch / (b + Math.sqrt(b * b - tooMuch)) : b + Math.sqrt(b * b - 1 + 1 / (1 - error) ** 2);
  return Math.min(Math.sqrt(x), 0.999);
}

/**
 * Up to which frequency a mounting can be used.
 *
 * Source: derivation, see {@link usableShareOfResonance}. A third of the resonance reads 12.5 % too much undamped, a
 * fifth 4.2 %; ISO 5348 as quoted asks for a resonance of more than five times the highest frequency of interest.
 *
 * @param mountedResonanceHz - resonance of the sensor as mounted, Hz, above 0; the lowest that is likely is the worst case
 * @param acceptedErrorPct - per cent, 0.001 to 99
 * @param dampingRatio - share of critical damping, 0 to 1
 * @returns Hz
 */
export function usableUpperFrequencyHz(mountedResonanceHz: number, acceptedErrorPct: number, dampingRatio = 0): number {
  requirePositive("mountedResonanceHz", mountedResonanceHz);
  return mountedResonanceHz * usableShareOfResonance(acceptedErrorPct, dampingRatio);
}

/**
 * The resonance a mounting must have to be usable up to a frequency.
 *
 * Source: derivation, inverse of {@link usableUpperFrequencyHz}.
 *
 * @param highestFrequencyHz - highest frequency of interest, Hz, above 0
 * @returns Hz
 */
export function neededResonanceHz(highestFrequencyHz: number, acceptedErrorPct: number, dampingRatio = 0): number {
  requirePositive("highestFrequencyHz", highestFrequencyHz);
  return highestFrequencyHz / usableShareOfResonance(acceptedErrorPct, dampingRatio);
}

/**
 * Resonance of a sensor on the stiffness of its contact, the machine being far heavier.
 *
 * Source: natural frequency of one mass on one spring, √(k/m)/(2π).
 *
 * @param contactStiffnessNPerM - N/m, above 0
 * @param massKg - sensor with adapter, kg, above 0
 * @returns Hz
 */
export function resonanceOnContactHz(contactStiffnessNPerM: number, massKg: number): number {
  requirePositive("contactStiffnessNPerM", contactStiffnessNPerM);
  requirePositive("massKg", massKg);
  return Math.sqrt(contactStiffnessNPerM / massKg) / (2 * Math.PI);
}

/**
 * How far an added mass shifts the natural frequency of the part it sits on; never above 0.
 *
 * Source: one mass on one spring; f'/f = √(m/(m + Δm)). The moving mass is that of the part, not of the machine.
 *
 * @param movingMassKg - mass that moves with the point, kg, above 0; the lightest is the worst case
 * @param addedMassKg - sensor, adapter and cable end, kg
 * @returns per cent
 */
export function naturalFrequencyShiftPct(movingMassKg: number, addedMassKg: number): number {
  requirePositive("movingMassKg", movingMassKg);
  requireNotNegative("addedMassKg", addedMassKg);
  return 100 * (Math.sqrt(movingMassKg / (movingMassKg + addedMassKg)) - 1);
}

/**
 * The mass that shifts the natural frequency of a part by so much.
 *
 * Source: derivation, inverse of {@link naturalFrequencyShiftPct}.
 *
 * @param movingMassKg - kg, above 0
 * @param acceptedShiftPct - how far the frequency may fall, per cent, 0.001 to 90
 * @returns kg
 */
export function massForShiftKg(movingMassKg: number, acceptedShiftPct: number): number {
  requirePositive("movingMassKg", movingMassKg);
  requireWithin("acceptedShiftPct", acceptedShiftPct, 0.001, 90);
  return movingMassKg * (1 / (1 - acceptedShiftPct / 100) ** 2 - 1);
}

/** Greatest share of the moving mass that a sensor may have; rule of thumb of several trade pages and a course, read as quoted. */
const USUAL_MASS_SHARE = 0.1;

/**
 * The heaviest sensor, with adapter, that a moving part may carry.
 *
 * Source: common practice: a tenth of the mass that moves with the point (it shifts a natural frequency by 4.7 %).
 *
 * @param movingMassKg - kg, above 0
 * @param share - another share than a tenth, 0.001 to 1
 * @returns kg
 */
export function heaviestSensorKg(movingMassKg: number, share: number = USUAL_MASS_SHARE): number {
  requirePositive("movingMassKg", movingMassKg);
  requireWithin("share", share, 0.001, 1);
  return movingMassKg * share;
}
