import { componentFrequencyHz, shaftFrequencyHz } from "./machine-frequencies.js";
import { requireCount, requireNotNegative, requirePositive, requireWithin } from "./require-number.js";

/** Samples taken per line of a spectrum; the 0.56 beyond the sampling theorem is the slope of the filter (usual practice). */
const SAMPLES_PER_LINE = 2.56;

/** Numbers of lines that instruments offer (common practice). */
export const USUAL_LINES = [100, 200, 400, 800, 1600, 3200, 6400, 12800, 25600] as const;

/** One record and the spectrum made from it. */
export interface SpectrumRecord {
  readonly lineSpacingHz: number;
  readonly recordLengthS: number;
  readonly sampleRateHz: number;
  readonly samples: number;
}

/**
 * The record that a spectrum needs.
 *
 * Source: discrete Fourier transform; spacing = top / lines, length = 1 / spacing, no window factor.
 *
 * @param topFrequencyHz - upper end of the spectrum, Hz, above 0
 * @param lines - number of lines, at least 1
 */
export function spectrumRecord(topFrequencyHz: number, lines: number): SpectrumRecord {
  requirePositive("topFrequencyHz", topFrequencyHz);
  requireCount("lines", lines, 1);
  return {
    lineSpacingHz: topFrequencyHz / lines,
    recordLengthS: lines / topFrequencyHz,
    sampleRateHz: SAMPLES_PER_LINE * topFrequencyHz,
    samples: SAMPLES_PER_LINE * lines,
  };
}

/**
 * Turns of the shaft in one record; take the lowest speed for the worst case.
 *
 * Source: derivation.
 *
 * @param shaftRpm - r/min, above 0
 * @param recordLengthS - s, above 0
 */
export function turnsInRecord(shaftRpm: number, recordLengthS: number): number {
  requirePositive("recordLengthS", recordLengthS);
  return shaftFrequencyHz(shaftRpm) * recordLengthS;
}

/**
 * Length of a record in which the shaft makes so many turns.
 *
 * Source: derivation, inverse of {@link turnsInRecord}.
 *
 * @param shaftRpm - r/min, above 0
 * @param turns - above 0
 * @returns s
 */
export function recordLengthForTurnsS(shaftRpm: number, turns: number): number {
  requirePositive("turns", turns);
  return turns / shaftFrequencyHz(shaftRpm);
}

/**
 * The least usual number of lines that keeps two frequencies apart.
 *
 * Source: derivation; lines ≥ top × lines apart / separation.
 *
 * @param topFrequencyHz - upper end of the spectrum, Hz, above 0
 * @param separationHz - distance of the two frequencies, Hz, above 0
 * @param linesApart - lines the two are to lie apart, at least 1; 3 or more with a window (common practice)
 * @param series - numbers of lines to choose from, rising
 * @returns number of lines, or null where the series ends before
 */
export function leastLines(
  topFrequencyHz: number,
  separationHz: number,
  linesApart: number,
  series: readonly number[] = USUAL_LINES,
): number | null {
  requirePositive("topFrequencyHz", topFrequencyHz);
  requirePositive("separationHz", separationHz);
  requireWithin("linesApart", linesApart, 1, 1000);
  // The hair keeps 100 lines enough where the division gives 100.00000000000001.
  const needed = ((topFrequencyHz * linesApart) / separationHz) * (1 - 1e-12);
  return series.find((lines) => lines >= needed) ?? null;
}

/**
 * Over how many lines a shaft-locked component spreads when the speed changes within the record.
 *
 * Source: derivation; spread = order × turning frequency × change, in lines of the spectrum.
 *
 * @param order - of the component, above 0
 * @param shaftRpm - r/min, above 0; the highest speed is the worst case
 * @param speedChangePct - change of speed within the record, per cent of the speed
 * @param lineSpacingHz - Hz, above 0
 */
export function smearLines(order: number, shaftRpm: number, speedChangePct: number, lineSpacingHz: number): number {
  requireNotNegative("speedChangePct", speedChangePct);
  requirePositive("lineSpacingHz", lineSpacingHz);
  return (componentFrequencyHz(order, shaftRpm) * speedChangePct) / 100 / lineSpacingHz;
}

/**
 * The greatest change of speed within a record that keeps a component inside so many lines.
 *
 * Source: derivation, inverse of {@link smearLines}.
 *
 * @param lines - lines it may spread over, above 0
 * @returns per cent of the speed
 */
export function greatestSpeedChangePct(order: number, shaftRpm: number, lineSpacingHz: number, lines = 1): number {
  requirePositive("lineSpacingHz", lineSpacingHz);
  requirePositive("lines", lines);
  return (100 * lines * lineSpacingHz) / componentFrequencyHz(order, shaftRpm);
}

/**
 * The shortest steady run in which a measurement of several averaged records can be made.
 *
 * Source: settling time plus record × ((averages − 1) × (1 − overlap) + 1), the second part as an instrument maker
 * prints it ("Measurement time", read 2026-11-26).
 *
 * @param settlingS - time until sensor and filters have settled, s
 * @param recordLengthS - s, above 0
 * @param averages - records averaged, at least 1
 * @param overlapPct - by how much each record overlaps the one before, 0 to 95 %
 * @returns s
 */
export function shortestRunS(settlingS: number, recordLengthS: number, averages: number, overlapPct: number): number {
  requireNotNegative("settlingS", settlingS);
  requirePositive("recordLengthS", recordLengthS);
  requireCount("averages", averages, 1);
  requireWithin("overlapPct", overlapPct, 0, 95);
  return settlingS + recordLengthS * ((averages - 1) * (1 - overlapPct / 100) + 1);
}
