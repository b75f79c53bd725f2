import { showText } from "../base/index.js";
import type { ImportProblem, Survey } from "../records/index.js";
import { saidOf } from "./said.js";

/** Headings named in a remark; the rest are counted. */
const MOST_NAMED = 8;

function remark(survey: Survey, code: ImportProblem["code"], fact: string | null, text: string): ImportProblem {
  return { code, file: survey.file, sheet: null, cell: null, heading: null, fact, found: null, text };
}

/** Said of a built survey whose rows do not all name their site, where the proposal's only one is taken for it. */
export function siteAssumed(survey: Survey, site: string): readonly ImportProblem[] {
  if (survey.records.every(({ facts }) => saidOf(facts, "site")?.known)) return [];
  const text = `rows that name no site are taken to be of the only one in the proposal, "${showText(site)}"; give --site if that is wrong`;
  return [remark(survey, "assumed", "site", text)];
}

/**
 * Said of a built survey with columns that nobody understands: what was built otherwise may stand there, and the
 * proposal's word would be taken for it.
 */
export function notUnderstood(survey: Survey): readonly ImportProblem[] {
  const headings = survey.problems
    .filter(({ code }) => code === "unknown-heading")
    .map(({ cell, heading }) => `"${showText(heading ?? "")}"${cell === null ? "" : ` (${cell})`}`);
  if (headings.length === 0) return [];
  const more = headings.length > MOST_NAMED ? ` and ${headings.length - MOST_NAMED} more` : "";
  const named = headings.slice(0, MOST_NAMED).join(", ") + more;
  const text = `not read, so that what stands there is not compared and the proposal's word is taken instead: ${named}; say what they are with --column or --built-columns, or that they are to be ignored`;
  return [remark(survey, "unknown-heading", null, text)];
}
