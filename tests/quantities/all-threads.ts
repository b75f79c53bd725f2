import { METRIC_PITCHES_MM, UNIFIED_SIZES } from "../../src/quantities/tables/thread-sizes.js";
import { threadOf } from "./against-truth.js";

/** Every thread of the tables. */
export const ALL_THREADS = [
  ...[...METRIC_PITCHES_MM].flatMap(([major, pitches]) => pitches.map((pitch) => threadOf(`M${major}x${pitch}`))),
  ...UNIFIED_SIZES.flatMap(([size, , unc, unf]) => [threadOf(`${size}-${unc}`), threadOf(`${size}-${unf}`)]),
];

/** Those whose tolerances are in the tables. */
export const TOLERANCED_THREADS = ALL_THREADS.filter(
  ({ designation }) => designation !== "M1.6x0.2" && designation !== "M2x0.25",
);
