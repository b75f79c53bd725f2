/**
 * Metric threads by nominal diameter in mm: the coarse pitch first, then the fine pitches, in mm.
 *
 * Source: ISO 261, first and second choice, M1.6 to M36, from memory; the coarse pitches agree with published
 * tap drill charts read on 2026-11-26. A pitch that is not listed is no thread of that diameter here.
 */
export const METRIC_PITCHES_MM: ReadonlyMap<number, readonly [coarse: number, ...fine: number[]]> = new Map([
  [1.6, [0.35, 0.2]],
  [2, [0.4, 0.25]],
  [2.5, [0.45, 0.35]],
  [3, [0.5, 0.35]],
  [3.5, [0.6, 0.35]],
  [4, [0.7, 0.5]],
  [4.5, [0.75, 0.5]],
  [5, [0.8, 0.5]],
  [6, [1, 0.75]],
  [7, [1, 0.75]],
  [8, [1.25, 1, 0.75]],
  [9, [1.25, 1, 0.75]],
  [10, [1.5, 1.25, 1, 0.75]],
  [11, [1.5, 1, 0.75]],
  [12, [1.75, 1.5, 1.25, 1]],
  [14, [2, 1.5, 1.25, 1]],
  [16, [2, 1.5, 1]],
  [18, [2.5, 2, 1.5, 1]],
  [20, [2.5, 2, 1.5, 1]],
  [22, [2.5, 2, 1.5, 1]],
  [24, [3, 2, 1.5, 1]],
  [27, [3, 2, 1.5, 1]],
  [30, [3.5, 3, 2, 1.5, 1]],
  [33, [3.5, 3, 2, 1.5]],
  [36, [4, 3, 2, 1.5]],
]);

/** Series of inch threads. */
export type UnifiedSeries = "UNC" | "UNF";

/**
 * Unified inch threads: size as written, major diameter in inches, threads per inch by series.
 *
 * Source: ASME B1.1 standard series as published thread charts show them (read 2026-11-26); the diameter of a
 * numbered size is 0.060 in + 0.013 in times the number.
 */
export const UNIFIED_SIZES: readonly (readonly [size: string, majorIn: number, unc: number, unf: number])[] = [
  ["4", 0.112, 40, 48],
  ["5", 0.125, 40, 44],
  ["6", 0.138, 32, 40],
  ["8", 0.164, 32, 36],
  ["10", 0.19, 24, 32],
  ["12", 0.216, 24, 28],
  ["1/4", 0.25, 20, 28],
  ["5/16", 0.3125, 18, 24],
  ["3/8", 0.375, 16, 24],
  ["7/16", 0.4375, 14, 20],
  ["1/2", 0.5, 13, 20],
  ["9/16", 0.5625, 12, 18],
  ["5/8", 0.625, 11, 18],
  ["3/4", 0.75, 10, 16],
];
