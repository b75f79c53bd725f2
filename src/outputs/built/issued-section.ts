import type { IssuedShown } from "../../built/index.js";
import { plainWords } from "../../facts/index.js";
import { paragraph } from "../terminal/layout.js";
import { countOf } from "../wording/numbers.js";

/** Points named; the rest are counted. */
const MOST_NAMED = 10;

/** The result under which orders were issued, and what has changed since. */
export function issuedSection(issued: IssuedShown | null): readonly string[] {
  if (issued === null) return [];
  const { file, asOf, set, rulebook, rulebookChanged, surveys, gone, run } = issued;
  const lines = [
    ...paragraph(`Orders were issued under ${file}`),
    ...paragraph(`rulebook ${rulebook.name} ${rulebook.version}, set ${set}, limits as of ${asOf}, run ${run}`, "  "),
  ];
  if (rulebookChanged) lines.push(...paragraph("the rulebook has changed since", "  - "));
  for (const survey of surveys) {
    if (survey.now === survey.digest) continue;
    const what = survey.now === null ? "is not among the proposed surveys" : "has changed since";
    lines.push(...paragraph(`${survey.file} ${what}`, "  - "));
  }
  if (gone.length === 0) return lines;
  lines.push(...paragraph(`the proposal no longer holds ${countOf(gone.length, "point")} of it:`, "  - "));
  for (const { id, point, verdict } of gone.slice(0, MOST_NAMED)) {
    lines.push(...paragraph(`${point ?? id} (${plainWords(verdict)})`, "    - "));
  }
  if (gone.length > MOST_NAMED) lines.push(`    - and ${gone.length - MOST_NAMED} more`);
  return lines;
}
