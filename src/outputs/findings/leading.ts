import { isOpen } from "../../base/index.js";
import type { Finding } from "../../screening/index.js";
import type { RuleIndex } from "./rule-index.js";

const FAIL = 0;
const OPEN_AS_FAIL = 1;
const WARN = 2;
const OPEN = 3;
const SILENT = 4;

function severity(finding: Finding, rules: RuleIndex): number {
  if (finding.outcome === "fail") return FAIL;
  if (finding.outcome === "warn") return WARN;
  if (!isOpen(finding.outcome)) return SILENT;
  return rules.rule(finding.rule)?.undecided === "fail" ? OPEN_AS_FAIL : OPEN;
}

/**
 * Findings that keep a point from passing, the gravest first: fail, then open where that counts as a fail, warn,
 * open; within each in the order of the rulebook.
 */
export function gravestFirst(findings: readonly Finding[], rules: RuleIndex): readonly Finding[] {
  return findings
    .filter((finding) => severity(finding, rules) < SILENT)
    .sort((a, b) => severity(a, rules) - severity(b, rules) || rules.order(a.rule) - rules.order(b.rule));
}

/**
 * The finding that a person should read first; every output leads with the same one. Its outcome is the
 * severity of the point.
 *
 * @returns null where nothing keeps the point from passing
 */
export function leadingFinding(findings: readonly Finding[], rules: RuleIndex): Finding | null {
  return gravestFirst(findings, rules)[0] ?? null;
}
