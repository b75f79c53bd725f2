import { factName } from "../../facts/index.js";
import type { ResultHead } from "../../screening/index.js";
import { countOf } from "../wording/numbers.js";
import { paragraph } from "./layout.js";

/**
 * The rules that could not be asked, each once with the columns that would let it be; a survey is named only where
 * not every survey lacks them.
 */
export function notAskedSection({ surveys }: Pick<ResultHead, "surveys">): readonly string[] {
  return [
    ...listed(
      surveys,
      (open) => open.model === null,
      "for lack of a column for what they need, and the site states nothing",
    ),
    ...listed(surveys, (open) => open.model !== null, "of points whose sensor model does not state what they need"),
  ];
}

function listed(
  surveys: ResultHead["surveys"],
  isMeant: (open: ResultHead["surveys"][number]["notAsked"][number]) => boolean,
  why: string,
): readonly string[] {
  const lacking = new Map<string, string[]>();
  for (const { file, notAsked } of surveys) {
    for (const { rule, model, facts } of notAsked.filter(isMeant)) {
      const what = `${rule}${model === null ? "" : `, ${model}`}: ${facts.map(factName).join(", ")}`;
      lacking.set(what, [...(lacking.get(what) ?? []), file]);
    }
  }
  if (lacking.size === 0) return [];
  const lines = [...lacking].flatMap(([what, files]) =>
    paragraph(files.length < surveys.length ? `${what} (${files.join(", ")})` : what, "  - "),
  );
  return [...paragraph(`Rules not asked: ${countOf(lacking.size, "rule")} ${why}`, ""), ...lines];
}
