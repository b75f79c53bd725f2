import type { Facts } from "../facts/index.js";
import type { Finding, PointWithFacts } from "../screening/index.js";
import type { Release } from "../workpacks/index.js";
import type { Filter } from "./mapping.js";

/**
 * Whether a target takes a point. A fact that is not known has none of the values asked for.
 *
 * @param release - null where nothing of the mapping asks for it
 */
export function isTaken({ point, facts }: PointWithFacts, release: Release | null, filter: Filter): boolean {
  const { verdicts, released, rulesSay, rulesDoNotSay } = filter;
  if (released && release?.released !== true) return false;
  if (verdicts !== null && !verdicts.includes(point.verdict)) return false;
  for (const [rule, outcomes] of rulesSay) if (!says(point.findings, rule, outcomes)) return false;
  for (const [rule, outcomes] of rulesDoNotSay) if (says(point.findings, rule, outcomes)) return false;
  return hasFacts(facts, filter);
}

function says(findings: readonly Finding[], rule: string, outcomes: readonly string[]): boolean {
  return findings.some((finding) => finding.rule === rule && outcomes.includes(finding.outcome));
}

function hasFacts(all: Facts, { facts }: Filter): boolean {
  for (const [id, values] of facts) {
    const state = all.get(id);
    if (!state?.known || !values.some((value) => value === state.value)) return false;
  }
  return true;
}
