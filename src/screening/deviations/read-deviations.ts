import type { TextFile } from "../../base/index.js";
import { type DeviationsReading, type Rulebook, readDeviationFile } from "../../rulebook/index.js";
import { METHOD_ALLOWED_SHOWN } from "../methods/method-allowed.js";
import { POINT_TWICE_SHOWN } from "../point-twice.js";

/** Rules that are in no rulebook; deviations can name them all the same. */
const BUILT_IN = [POINT_TWICE_SHOWN, METHOD_ALLOWED_SHOWN].map(({ id, releases, judged }) => ({
  id,
  releases,
  judges: { proposed: judged, installed: judged },
}));

/** Ids of the rules that are in no rulebook, and that results name all the same. */
export const BUILT_IN_RULES: readonly string[] = BUILT_IN.map(({ id }) => id);

/**
 * Reads a file of accepted deviations from the rules of a rulebook.
 *
 * @returns the deviations, or every mistake in the file with its place; whether the points are there only a run can tell
 */
export function readDeviations(
  file: TextFile,
  { rules, switchedOff = [] }: Pick<Rulebook, "rules"> & Partial<Pick<Rulebook, "switchedOff">>,
): DeviationsReading {
  return readDeviationFile(file, [...rules, ...BUILT_IN], switchedOff);
}
