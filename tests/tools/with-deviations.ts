import type { SiteStatements } from "../../src/facts/index.js";
import type { Survey } from "../../src/records/index.js";
import type { Deviations, Rulebook } from "../../src/rulebook/index.js";
import {
  type DeviationShown,
  type PointResult,
  readDeviations,
  type Screening,
  type ScreeningOptions,
  screen,
} from "../../src/screening/index.js";

/** A deviation as its file writes it; from 2026-01-01 until 2027-01-01 and from a fail unless said otherwise. */
export interface Written {
  readonly point: string;
  readonly rule: string;
  readonly outcome?: string;
  readonly limit?: string | readonly string[];
  readonly value?: string;
  readonly reason?: string;
  readonly acceptedBy?: string;
  readonly from?: string;
  readonly until?: string;
}

/** The deviations of a file with one per line, from line 2 on. */
export function deviationsOf(rulebook: Rulebook, entries: readonly Written[]): Deviations {
  const usual = {
    outcome: "fail",
    reason: "a trial",
    acceptedBy: "N. Nemo, lead engineer",
    from: "2026-01-01",
    until: "2027-01-01",
  };
  const lines = entries.map((entry) => `  - ${JSON.stringify({ ...usual, ...entry })}\n`);
  const reading = readDeviations(
    { path: "deviations.yaml", text: lines.length === 0 ? "deviations: []\n" : `deviations:\n${lines.join("")}` },
    rulebook,
  );
  if (!reading.ok) throw new Error(reading.findings.map(({ line, text }) => `${line}: ${text}`).join("\n"));
  return reading.deviations;
}

/** Screens made-up surveys with accepted deviations. */
export function screenWith(
  rulebook: Rulebook,
  surveys: readonly Survey[],
  entries: readonly Written[] | null,
  options: Partial<ScreeningOptions> = {},
  site: SiteStatements | null = null,
): {
  readonly screening: Screening;
  readonly points: readonly PointResult[];
  readonly list: readonly DeviationShown[];
} {
  const screening = screen({
    program: { name: "spotface", version: "test" },
    rulebook,
    surveys,
    skipped: [],
    site,
    deviations: entries && deviationsOf(rulebook, entries),
    options: { set: "core", stage: "proposed", asOf: "2026-11-25", siteName: null, allFindings: false, ...options },
  });
  return { screening, points: [...screening.points()], list: screening.head.deviations?.list ?? [] };
}
