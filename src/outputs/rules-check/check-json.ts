import { jsonText } from "../json/json-text.js";
import type { RulesCheck } from "./rules-check.js";

/** The check as one JSON document that ends in a line break; `null` for what was not asked for or could not be done. */
export function checkJson({ rulebook, mistakes, cases, reviewsDue, coverage, alterations }: RulesCheck): string {
  return `${jsonText({ rulebook, mistakes, cases, reviewsDue, coverage, alterations })}\n`;
}
