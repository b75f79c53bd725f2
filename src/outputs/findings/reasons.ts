import { isOpen } from "../../base/index.js";
import { plainWords } from "../../facts/index.js";
import type { Finding } from "../../screening/index.js";
import { missingInWords } from "../wording/facts.js";
import { sourceInWords } from "../wording/sources.js";
import type { RuleIndex } from "./rule-index.js";

/** Why a finding is what it is: its message, or for an open one without a message what would have to be known. */
export function reasonOf(finding: Finding, rules: RuleIndex): string {
  if (finding.message !== null) return finding.message;
  const title = rules.title(finding.rule);
  if (finding.outcome === "no-limit-in-force") return `${title}: no limit is in force on this day`;
  if (!isOpen(finding.outcome)) return title;
  const missing = missingOf([finding]);
  return missing === "" ? `${title}: not settled` : `${title}: not settled without ${missing}`;
}

/** What to do: the remedy of the finding; for an open one without any, what to find out. */
export function remedyOf(finding: Finding, rules: RuleIndex): string {
  if (finding.remedy !== null) return finding.remedy;
  if (!isOpen(finding.outcome)) return rules.rule(finding.rule)?.remedy ?? "";
  const missing = missingOf([finding]);
  return missing === "" ? "" : `find out: ${missing}`;
}

/** Every fact that some finding lacks, each said once, in words. */
export function missingOf(findings: readonly Finding[]): string {
  return [...new Set(findings.flatMap((finding) => finding.missing).map(missingInWords))].join(", ");
}

/** Sources of a finding in words. */
export function sourceOf(finding: Finding, rules: RuleIndex): string {
  return rules.sourcesOf(finding).map(sourceInWords).join("; ");
}

/** How well the sources of a finding are founded, each word once ("standard, derivation"). */
export function basesOf(finding: Finding, rules: RuleIndex): string {
  return [...new Set(rules.sourcesOf(finding).map(({ basis }) => plainWords(basis)))].join(", ");
}
