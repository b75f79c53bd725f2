/**
 * A computed number as it becomes a fact or a bound: 12 significant digits, so that 24 × 1.2 is 28.8
 * and a comparison at the limit is exact. Infinite ends of a bound stay as they are.
 */
export function round12(value: number): number {
  if (!Number.isFinite(value) || value === 0) return value === 0 ? 0 : value;
  return Number(value.toPrecision(12));
}
