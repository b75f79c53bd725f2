import { METRIC_PITCHES_MM, UNIFIED_SIZES, type UnifiedSeries } from "./tables/thread-sizes.js";

/** A 60 degree screw thread by its basic size. */
export interface Thread {
  readonly system: "metric" | "unified";
  /** As the trade writes it: "M6", "M8x1", "1/4-28 UNF". */
  readonly designation: string;
  readonly majorMm: number;
  readonly pitchMm: number;
  readonly series: "coarse" | "fine";
}

/** Millimetres in an inch, by definition. */
export const MM_PER_INCH = 25.4;

const TOLERANCE = "(?:-(?:[4-8][GH]){1,2}|-(?:[3-9][efgh]){1,2})?";
const METRIC = new RegExp(`^M(\\d{1,2}(?:\\.\\d)?)(?:[x*-](\\d?(?:\\.\\d{1,3})?))?${TOLERANCE}$`, "i");
const UNIFIED =
  /^(UN[CF])?-?(?:#|No\.?)?(\d{1,2}(?:\/\d{1,2})?)(?:"|in\.?)?(?:[-x](\d{2}))?-?(UN[CF])?(?:-[123][AB])?$/i;

/**
 * Reads the designation of a thread: metric coarse and fine, UNC and UNF.
 *
 * Takes "M6", "M 6 x 1,0", "M8×1", "M8-1.25", "M6-6H", "1/4-28 UNF", "1/4"-28", "#10-32", "UNF 1/4". A metric thread
 * without a pitch is the coarse one (ISO 261). Valid for M1.6 to M36 and number 4 to 3/4 in.
 *
 * @returns the thread, or null where the text is none of these, leaves the pitch open (1/4) or contradicts itself
 *   (1/4-28 UNC, M6x20)
 */
export function threadDesignated(text: string): Thread | null {
  const tidy = text
    .normalize("NFKC")
    .replace(/\s+/gu, "")
    .replace(/,/g, ".")
    .replace(/[×✕]/gu, "x")
    .replace(/[\u2010-\u2015\u2212]/gu, "-")
    .replace(/\u2044/gu, "/")
    .replace(/[\u201c\u201d\u2033]/gu, '"');
  return metricThread(tidy) ?? unifiedThread(tidy);
}

function metricThread(tidy: string): Thread | null {
  const match = METRIC.exec(tidy);
  if (!match) return null;
  const majorMm = Number(match[1]);
  const pitches = METRIC_PITCHES_MM.get(majorMm);
  if (!pitches) return null;
  const pitchMm = match[2] === undefined ? pitches[0] : Number(match[2]);
  if (!pitches.includes(pitchMm)) return null;
  const coarse = pitchMm === pitches[0];
  return {
    system: "metric",
    designation: coarse ? `M${majorMm}` : `M${majorMm}x${pitchMm}`,
    majorMm,
    pitchMm,
    series: coarse ? "coarse" : "fine",
  };
}

function unifiedThread(tidy: string): Thread | null {
  const match = UNIFIED.exec(tidy);
  if (!match) return null;
  const [, before, size, perInch, after] = match;
  const named = (before ?? after)?.toUpperCase();
  if (before !== undefined && after !== undefined && after.toUpperCase() !== named) return null;
  const row = UNIFIED_SIZES.find(([name]) => name === size);
  if (!row) return null;
  const [name, majorIn, unc, unf] = row;
  const series = (["UNC", "UNF"] as const).filter(
    (one: UnifiedSeries) =>
      (named === undefined || named === one) &&
      (perInch === undefined || Number(perInch) === (one === "UNC" ? unc : unf)),
  );
  const [only] = series;
  if (series.length !== 1 || only === undefined) return null;
  const threadsPerInch = only === "UNC" ? unc : unf;
  return {
    system: "unified",
    designation: `${name}-${threadsPerInch} ${only}`,
    majorMm: majorIn * MM_PER_INCH,
    pitchMm: MM_PER_INCH / threadsPerInch,
    series: only === "UNC" ? "coarse" : "fine",
  };
}
