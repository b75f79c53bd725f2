import type { TextPlace } from "../../base/index.js";
import { jsonText } from "../json/json-text.js";
import type { RulesCheck } from "./rules-check.js";

interface SarifResult {
  readonly ruleId: string;
  readonly level: "error" | "warning";
  readonly message: { readonly text: string };
  readonly locations: readonly unknown[];
}

/**
 * The check as SARIF 2.1.0 (OASIS, Static Analysis Results Interchange Format), which code hosts show beside the
 * lines of a change: mistakes and wrong cases as errors, what the cases do not show or notice as warnings.
 */
export function checkSarif(check: RulesCheck, program: { readonly name: string; readonly version: string }): string {
  const { mistakes, cases, reviewsDue, coverage, alterations } = check;
  const results: readonly SarifResult[] = [
    ...mistakes.map(({ code, text, lineText, ...at }) => result(code, "error", text, at, lineText)),
    ...(cases?.wrong ?? []).map(({ name, stage, difference, at }) =>
      result("case", "error", `case "${name}" (${stage}): ${difference}`, at),
    ),
    ...reviewsDue.map(({ reviewBy, at }) =>
      result("review-due", "warning", `the limit was to be reviewed by ${reviewBy}; it still holds`, at),
    ),
    ...(coverage?.items ?? [])
      .filter(({ isShown }) => !isShown)
      .map(({ what, at, suggestion }) =>
        result("not-shown", "warning", `no case shows: ${what}${add(suggestion)}`, at),
      ),
    ...(alterations?.unnoticed ?? [])
      .filter(({ suggestion }) => suggestion !== null)
      .map(({ alteration: { what, at }, suggestion }) =>
        result("not-noticed", "warning", `no case would notice if ${what}${add(suggestion)}`, at),
      ),
  ];
  const rules = [...new Set(results.map(({ ruleId }) => ruleId))].sort().map((id) => ({ id }));
  const run = { tool: { driver: { ...program, rules } }, columnKind: "utf16CodeUnits", results };
  return `${jsonText({ $schema: "https://json.schemastore.org/sarif-2.1.0.json", version: "2.1.0", runs: [run] })}\n`;
}

function add(suggestion: { readonly yaml: string } | null): string {
  return suggestion === null ? "" : `; add ${suggestion.yaml.trim()}`;
}

function result(
  ruleId: string,
  level: SarifResult["level"],
  text: string,
  { file, line, column }: TextPlace,
  lineText: string | null = null,
): SarifResult {
  const region = {
    startLine: line,
    startColumn: column,
    ...(lineText === null ? {} : { snippet: { text: lineText } }),
  };
  const uri = file.split("/").map(encodeURIComponent).join("/");
  return { ruleId, level, message: { text }, locations: [{ physicalLocation: { artifactLocation: { uri }, region } }] };
}
