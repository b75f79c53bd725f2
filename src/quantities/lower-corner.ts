import { requirePositive, requireWithin } from "./require-number.js";

/**
 * What share of a vibration a sensor shows near its lower corner.
 *
 * Source: magnitude of a first-order high pass, r/√(1 + r²), r = frequency over corner: 71 % (−3 dB) at the corner,
 * 83 % at 1.5 times, 95 % at 3 times. Steeper filters show less below the corner and more above it.
 *
 * @param frequencyHz - Hz, above 0
 * @param cornerHz - frequency at which the sensor reads 3 dB too little, Hz, above 0
 * @returns from 0 to 1
 */
export function shareShownAbove(frequencyHz: number, cornerHz: number): number {
  requirePositive("frequencyHz", frequencyHz);
  requirePositive("cornerHz", cornerHz);
  const ratio = frequencyHz / cornerHz;
  // Divided by the greater of the two, so that neither a large nor a small ratio loses its digits.
  return ratio > 1 ? 1 / Math.hypot(1, 1 / ratio) : ratio / Math.hypot(1, ratio);
}

/**
 * The lowest frequency of which a sensor still shows a given share.
 *
 * Source: derivation, inverse of {@link shareShownAbove}.
 *
 * @param cornerHz - −3 dB corner, Hz, above 0
 * @param share - share to be shown, 0.01 to 0.999
 * @returns Hz
 */
export function lowestFrequencyShownHz(cornerHz: number, share: number): number {
  requirePositive("cornerHz", cornerHz);
  requireWithin("share", share, 0.01, 0.999);
  return (cornerHz * share) / Math.sqrt(1 - share * share);
}
