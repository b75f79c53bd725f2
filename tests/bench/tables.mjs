/** Figures as people read them, and tables of them. */

export const seconds = (ms) => `${(ms / 1000).toFixed(2)} s`;
export const mebibytes = (kib) => (Number.isFinite(kib) ? `${Math.round(kib / 1024)} MiB` : "");
export const times = (ratio) => (Number.isFinite(ratio) ? `${ratio.toFixed(ratio < 10 ? 1 : 0)}x` : "");
export const grouped = (count) => count.toLocaleString("en-US");

/**
 * Prints rows of texts in columns: the first to the left, the others to the right.
 *
 * @param {readonly (readonly string[])[]} rows - headings first
 */
export function table(rows) {
  const widths = rows[0].map((_, i) => Math.max(...rows.map((row) => (row[i] ?? "").length)));
  for (const row of rows) {
    console.log(row.map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i]))).join("   "));
  }
  console.log("");
}

/**
 * A measured run beside others.
 *
 * @param {string} name
 * @param {import("./measure.mjs").Measured} run
 * @param {readonly (import("./measure.mjs").Measured | undefined)[]} others - to whose times this one is set in ratio
 */
export function besides(name, run, others) {
  if (run.ended !== "ok") return [name, run.ended, "", mebibytes(run.peakKib), ...others.map(() => "")];
  const ratios = others.map((other) => (other?.ended === "ok" ? times(run.wall / other.wall) : ""));
  return [name, seconds(run.wall), seconds(run.processor), mebibytes(run.peakKib), ...ratios];
}
