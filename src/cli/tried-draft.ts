import type { WordLists } from "../facts/index.js";
import { columnFileDraft } from "../outputs/index.js";
import { type SurveyReader, type SurveyReading, type SurveyUnderstood, surveyReader } from "../records/index.js";
import { readColumnFile } from "../rulebook/index.js";

/** A draft of a column file, and whether it gives the reading that it was made from. */
export interface TriedDraft {
  readonly text: string;
  readonly same: boolean;
}

/**
 * A draft that has been tried out. Rows of headings stand in a comment, since the next survey may have a row more;
 * they are fixed only where the reading would else be another.
 *
 * @param again - reads the survey once more
 */
export function triedDraft(
  understood: SurveyUnderstood,
  words: WordLists,
  again: (reader: SurveyReader) => SurveyReading,
): TriedDraft {
  const isSame = (text: string): boolean => {
    const columns = readColumnFile({ path: "draft", text }, words.ways);
    if (!columns.ok) return false;
    const guide = { file: columns.columns, language: null, decimalSign: null, columns: [] };
    return readsAlike(again(surveyReader(words, null, guide)), understood.reading);
  };
  const loose = columnFileDraft(understood, { fixRows: false });
  if (isSame(loose)) return { text: loose, same: true };
  const fixed = columnFileDraft(understood, { fixRows: true });
  return { text: fixed, same: isSame(fixed) };
}

/** Whether two readings of one survey give the same points, from the same columns in the same units. */
function readsAlike(a: SurveyReading, b: SurveyReading): boolean {
  if (!a.ok || !b.ok) return a.ok === b.ok;
  return shown(a) === shown(b);
}

function shown({ survey }: SurveyReading & { readonly ok: true }): string {
  const records = survey.records.map(({ sheet, row, facts }) => [
    sheet,
    row,
    [...facts].sort(([one], [other]) => (one < other ? -1 : 1)),
  ]);
  const columns = survey.columns.map(({ sheet, column, facts, unit }) => [sheet, column, facts, unit]);
  // JSON has no infinity, and a value with one bound must not look like one with none.
  return JSON.stringify([records, columns], (_, value: unknown) =>
    value === Number.POSITIVE_INFINITY || value === Number.NEGATIVE_INFINITY ? String(value) : value,
  );
}
