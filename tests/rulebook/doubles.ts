/** The smallest double above x; x finite. */
export function nextAbove(x: number): number {
  if (x === 0) return Number.MIN_VALUE;
  const bits = new BigInt64Array(new Float64Array([x]).buffer);
  bits[0] = (bits[0] ?? 0n) + (x > 0 ? 1n : -1n);
  return new Float64Array(bits.buffer)[0] ?? x;
}

/** The largest double below x; x finite. */
export function nextBelow(x: number): number {
  return -nextAbove(-x);
}
