import { didYouMean, showText } from "../../base/index.js";
import { type ColumnWord, findFact, SURVEY_FACTS } from "../../facts/index.js";
import { readAccuracy } from "../reading/accuracy-reading.js";
import { unitOfColumn } from "../reading/column-meaning.js";
import { IGNORE } from "../schemas/index.js";

/** What an option says of one column, or what is wrong with it. */
export type ColumnOption =
  | { readonly ok: true; readonly word: ColumnWord }
  | { readonly ok: false; readonly text: string };

const FORM = "write it as HEADING=fact, HEADING=fact unit, HEADING=fact unit ±0.5, or HEADING=ignore";

/**
 * Reads what an option says of one column: `Loch=hole_depth mm`, or `Loch=ignore`. A heading may hold equals signs;
 * the last one counts. Behind the unit may stand how accurate the numbers are: `Loch=hole_depth mm ±0.5`.
 */
export function columnOption(text: string): ColumnOption {
  const cut = text.lastIndexOf("=");
  const heading = text.slice(0, Math.max(cut, 0)).trim();
  const [fact = "", ...rest] = text
    .slice(cut + 1)
    .trim()
    .split(/\s+/);
  const refuse = (why: string): ColumnOption => ({ ok: false, text: `"${showText(text)}": ${why}` });
  if (cut < 0 || heading === "" || fact === "") return refuse(FORM);
  const word = { heading, letters: null, language: null, decimalSign: null, values: new Map(), by: "option --column" };
  const [written = "", plusMinus] = rest
    .join(" ")
    .split(/\s*(?:±|\+\/-)\s*/, 2)
    .map((part) => part.trim());
  if (fact === IGNORE) {
    return written === "" && plusMinus === undefined
      ? { ok: true, word: { ...word, fact: null, unit: null } }
      : refuse(FORM);
  }
  const definition = findFact(fact);
  if (definition?.source !== "survey") {
    const known = [IGNORE, ...SURVEY_FACTS.map(({ id }) => id)];
    return refuse(`"${showText(fact)}" is no fact that surveys hold${didYouMean(fact, known)}`);
  }
  const unit = written === "" ? null : unitOfColumn(written, definition);
  if (typeof unit === "object" && unit !== null) return refuse(unit.text);
  const accuracy = plusMinus === undefined ? null : readAccuracy(plusMinus, definition, unit);
  if (accuracy !== null && "code" in accuracy) return refuse(accuracy.text);
  return { ok: true, word: { ...word, fact: definition.id, unit, accuracy } };
}
