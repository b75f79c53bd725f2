/** The smallest double above x; x finite and not 0. */
export function nextAbove(x: number): number {
  const bits = new BigInt64Array(new Float64Array([x]).buffer);
  bits[0] = (bits[0] ?? 0n) + (x > 0 ? 1n : -1n);
  return new Float64Array(bits.buffer)[0] ?? x;
}

/** The largest double below x; x finite and not 0. */
export function nextBelow(x: number): number {
  return -nextAbove(-x);
}
