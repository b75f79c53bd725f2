import { single } from "../../src/base/index.js";
import type { FactState, Facts, KnownFact, SiteStatements } from "../../src/facts/index.js";
import type { Survey } from "../../src/records/index.js";
import type { Rulebook } from "../../src/rulebook/index.js";
import { type PointResult, type Screening, type ScreeningOptions, screen } from "../../src/screening/index.js";

/** A fact known from a cell; numbers become single values. */
export function known(value: number | string | boolean, cell = "A1"): KnownFact {
  const kept = typeof value === "number" ? single(value) : value;
  return { known: true, value: kept, origin: { kind: "cells", cells: [{ sheet: "S", cell }] } };
}

/** A fact that a cell does not give. */
export function unknown(reason: "missing" | "doubtful" | "unreadable" | "conflicting"): FactState {
  return { known: false, reason, origin: { kind: "cells", cells: [{ sheet: "S", cell: "Z9" }] } };
}

/** A point on which every core rule passes or does not apply. */
export const GOOD_POINT: Readonly<Record<string, FactState>> = {
  nominal_speed: known(1485),
  variable_speed: known("no"),
  speed_reference: known("none"),
  mounted_on: known("bearing-housing"),
  surface_material: known("grey-cast-iron"),
  surface_finish: known("bare-machined"),
  flat_diameter: known(35),
  mounting_method: known("tapped-hole"),
  hole_depth: known(16),
  thread_depth: known(10),
  target_torque: known(8),
  supply_voltage: known(24),
  supply_kind: known("dc"),
};

/** A survey of the given rows; every fact of any row counts as asked. */
export function surveyOf(rows: readonly Readonly<Record<string, FactState>>[], file = "made.xlsx"): Survey {
  const records = rows.map((row, i) => ({
    file,
    sheet: "S",
    row: i + 2,
    facts: new Map(Object.entries(row)) as Facts,
  }));
  return {
    file,
    digest: "0".repeat(64),
    sheets: [],
    columns: [],
    records,
    problems: [],
    factsAsked: new Set(rows.flatMap((row) => Object.keys(row))),
  };
}

/** Screens made-up rows. */
export function screenRows(
  rulebook: Rulebook,
  surveys: readonly Survey[],
  options: Partial<ScreeningOptions> = {},
  site: SiteStatements | null = null,
): { readonly screening: Screening; readonly points: readonly PointResult[] } {
  const screening = screen({
    program: { name: "spotface", version: "test" },
    rulebook,
    surveys,
    skipped: [],
    site,
    options: { set: "core", stage: "proposed", asOf: "2026-11-25", siteName: null, allFindings: false, ...options },
  });
  return { screening, points: [...screening.points()] };
}
