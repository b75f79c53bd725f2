import { isOpen, type Outcome } from "../../base/index.js";
import { factName } from "../../facts/index.js";
import type { PointRecord } from "../../records/index.js";
import type { Finding, PointResult } from "../../screening/index.js";
import { gravestFirst } from "../findings/leading.js";
import { sourceOf } from "../findings/reasons.js";
import type { RuleIndex } from "../findings/rule-index.js";
import { acceptedInWords, markedFinding } from "../wording/deviations.js";
import { factValueInWords, limitInWords, missingInWords } from "../wording/facts.js";

/** Why a survey cell is marked. */
export interface CellMark {
  readonly sheet: string | null;
  readonly cell: string;
  /** The gravest outcome that the cell gives cause for. */
  readonly outcome: Outcome;
  /** The gravest first. */
  readonly findings: readonly Finding[];
}

/**
 * The cells that findings of a point rest on: those of the judged fact; of an open finding the cells of what it
 * lacks, and only where those have no cell those of the judged fact.
 */
export function marksOf(point: PointResult, record: PointRecord | undefined, rules: RuleIndex): readonly CellMark[] {
  const marks = new Map<string, { sheet: string | null; cell: string; findings: Finding[] }>();
  for (const finding of gravestFirst(point.findings, rules)) {
    for (const place of placesOf(finding, record)) {
      const key = JSON.stringify([place.sheet, place.cell]);
      const mark = marks.get(key) ?? { sheet: place.sheet, cell: place.cell, findings: [] };
      mark.findings.push(finding);
      marks.set(key, mark);
    }
  }
  return [...marks.values()].map(({ sheet, cell, findings }) => ({
    sheet,
    cell,
    outcome: findings[0]?.outcome ?? "undecided",
    findings,
  }));
}

/** Why a cell is marked, in words: each finding with what was found, the limit, what is missing and the source. */
export function commentOn(mark: CellMark, rules: RuleIndex): string {
  return mark.findings.map((finding) => findingInWords(finding, rules)).join("\n\n");
}

/** The outcomes for which cells are marked, the gravest first. */
export const GRAVITY: readonly Outcome[] = ["fail", "warn", "undecided", "no-limit-in-force"];

/** How grave an outcome is, from 0 for the gravest. */
export function gravity(outcome: Outcome): number {
  return GRAVITY.indexOf(outcome);
}

function placesOf(finding: Finding, record: PointRecord | undefined) {
  const judged = finding.facts[0]?.cells ?? [];
  if (!isOpen(finding.outcome)) return judged;
  const lacking = finding.missing.flatMap(({ fact }) => {
    const state = record?.facts.get(fact);
    // What a group lacks may stand in this row and be missing in another one.
    if (finding.group !== null && state?.known && !isContradicted(finding, fact)) return [];
    const origin = state?.origin;
    return origin?.kind === "cells" ? origin.cells : [];
  });
  return lacking.length > 0 ? lacking : judged;
}

/** A value that other rows of the group contradict is in question in every row that states it. */
function isContradicted({ missing }: Finding, fact: string): boolean {
  return missing.some((one) => one.fact === fact && one.reason === "conflicting");
}

function findingInWords(finding: Finding, rules: RuleIndex): string {
  const judged = finding.facts[0];
  const missing = finding.missing.map(missingInWords).join(", ");
  const source = sourceOf(finding, rules);
  return [
    `${markedFinding(finding)}: ${rules.title(finding.rule)}`,
    ...(judged ? [`found: ${factName(judged.fact)} ${factValueInWords(judged)}`] : []),
    ...(finding.limit ? [`limit: ${limitInWords(finding.limit)}`] : []),
    ...(missing === "" ? [] : [`missing: ${missing}`]),
    ...(source === "" ? [] : [`source: ${source}`]),
    ...(finding.accepted === null ? [] : [acceptedInWords(finding.accepted)]),
  ].join("\n");
}
