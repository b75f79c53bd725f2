import { factName } from "../../facts/index.js";
import type { ResultHead } from "../../screening/index.js";
import { countOf } from "../wording/numbers.js";
import { paragraph } from "./layout.js";

/**
 * The rules that could not be asked, each once with the columns that would let it be; a survey is named only where
 * not every survey lacks them.
 */
export function notAskedSection({ surveys }: Pick<ResultHead, "surveys">): readonly string[] {
  const lacking = new Map<string, string[]>();
  for (const { file, notAsked } of surveys) {
    for (const { rule, facts } of notAsked) {
      const what = `${rule}: ${facts.map(factName).join(", ")}`;
      lacking.set(what, [...(lacking.get(what) ?? []), file]);
    }
  }
  if (lacking.size === 0) return [];
  const head = `Rules not asked: ${countOf(lacking.size, "rule")} for lack of a column for what they need, and the site states nothing`;
  const lines = [...lacking].flatMap(([what, files]) =>
    paragraph(files.length < surveys.length ? `${what} (${files.join(", ")})` : what, "  - "),
  );
  return [...paragraph(head, ""), ...lines];
}
