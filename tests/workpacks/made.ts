import type { FactState } from "../../src/facts/index.js";
import type { Rulebook } from "../../src/rulebook/index.js";
import type { ScreeningOptions } from "../../src/screening/index.js";
import { type PointOfRun, releasedPoints, type WorkPacks, workPacks } from "../../src/workpacks/index.js";
import { GOOD_POINT, known, surveyOf } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";
import { screenWith, type Written } from "../tools/with-deviations.js";

/** A row as tests write it. */
export type Row = Readonly<Record<string, FactState>>;

/** All that the rules marked `releases: never` ask of a tapped hole, answered so that they pass. */
export const SAFE: Row = {
  isolation_possible: known(true),
  turns_by_itself: known(false),
  rotor_blockable: known(true),
  hot_work_allowed: known("allowed"),
  hazardous_area: known("none"),
  sensor_certified: known(false),
  certified_enclosure: known(false),
  behind_wall: known("solid"),
  supply_separation: known("selv"),
};

/** A proposal that passes all rules asked of it. */
export function safePoint(id: string, facts: Row = {}): Row {
  const row = { ...GOOD_POINT, ...SAFE, ...facts };
  return id === "" ? row : { point_id: known(id), ...row };
}

/** A row without some facts. */
export function without(row: Row, ...facts: readonly string[]): Row {
  return Object.fromEntries(Object.entries(row).filter(([fact]) => !facts.includes(fact)));
}

/** Screens rows by the full set and says of each whether it is released. */
export function releases(
  rulebook: Rulebook,
  rows: readonly Row[],
  deviations: readonly Written[] = [],
  options: Partial<ScreeningOptions> = {},
): readonly PointOfRun[] {
  const { screening } = screenWith(rulebook, [surveyOf(rows)], deviations, { set: "full", ...options });
  return [...releasedPoints(screening, rulebook)];
}

/** Why a point is held back, as tests write it. */
export function heldBecause(point: PointOfRun | undefined): readonly string[] {
  return (point?.release.reasons ?? []).map(({ cause, rule }) => (rule === null ? cause : `${cause} ${rule}`));
}

/** The work packs of made-up rows by the full set, with the shipped rulebook. */
export async function packsOf(
  rows: readonly Row[],
  deviations: readonly Written[] = [],
  options: Partial<ScreeningOptions> = {},
): Promise<WorkPacks> {
  const rulebook = await shippedRulebook();
  const { screening } = screenWith(rulebook, [surveyOf(rows)], deviations, { set: "full", ...options });
  return workPacks(screening, rulebook);
}
