import { didYouMean, showText } from "../base/index.js";
import { plainWords } from "../facts/index.js";
import { below, type Report } from "../rulebook/index.js";
import { choicesOf } from "./choices.js";
import type { Column, Target } from "./mapping.js";
import type { RawTarget } from "./raw.js";
import { writeColumn } from "./write-value.js";

/** Whether a row that is gone can be told in the way that a target says: in a column of its own, by a word of its own. */
export function checkWithdrawn(
  { withdrawn, columns: raw }: Pick<RawTarget, "withdrawn" | "columns">,
  { columns, form }: Pick<Target, "columns" | "form">,
  pointer: string,
  report: Report,
): void {
  if (withdrawn === undefined) return;
  const at = (key: string): string => below(pointer, "withdrawn", key);
  const headings = raw.map(({ heading }) => heading);
  if (!headings.includes(withdrawn.column)) {
    const near =
      didYouMean(withdrawn.column, headings) || `; it has ${headings.map((one) => showText(one)).join(", ")}`;
    const text = `the target has no column "${showText(withdrawn.column)}"${near}`;
    report.atValue(at("column"), "unknown-column", text);
    return;
  }
  const column = columns.find(({ heading }) => heading === withdrawn.column);
  // A column with a mistake has its own findings.
  if (column === undefined) return;
  if (column.key) {
    const text = "a key names the row, and stays as it is when the row is gone; take a column that says how it stands";
    report.atValue(at("column"), "key-withdrawn", text);
    return;
  }
  const trouble = wordTrouble(withdrawn.value, column, form);
  if (trouble !== null) report.atValue(at("value"), "bad-withdrawn-word", trouble);
}

function wordTrouble(word: string, column: Column, form: Target["form"]): string | null {
  const shown = `"${showText(word)}"`;
  if (usualWords(column).includes(word)) {
    return `${shown} stands there in other rows, too, so that nobody could tell the two apart; take another word`;
  }
  if (typeof column.whenEmpty === "object" && column.whenEmpty.clear === word) {
    return `${shown} is the word that clears the field; take another`;
  }
  const nothing = () => ({ ok: true as const, found: null });
  const asConstant: Column = { ...column, source: { from: "constant", text: word }, values: null, references: null };
  const { value, refused } = writeColumn(asConstant, form, { row: nothing, points: [] });
  const [refusal] = refused;
  if (refusal !== undefined) return refusal.text;
  return value === word
    ? null
    : `${shown} would be written as "${showText(value ?? "")}"; take a word that stays as it is`;
}

/** The words that a column has in rows that are there: all of them, where its source has but a few. */
function usualWords({ source, values, type }: Column): readonly string[] {
  if (source.from === "constant") return [source.text];
  if (values !== null) return [...values.values()];
  if (source.from !== "name") return [];
  const choices = choicesOf(source.name) ?? [];
  return type === "code" ? choices : choices.map(plainWords);
}
