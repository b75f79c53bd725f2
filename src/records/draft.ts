import { foldText } from "../base/index.js";
import { type ColumnWord, type DecimalSign, factOf, type Language } from "../facts/index.js";
import { givenKey, wordForColumn } from "./headings/guide.js";
import type { ColumnUnderstood, SheetUnderstood, SurveyUnderstood } from "./understanding.js";

/** A column as a draft of a column file writes it. */
export interface DraftColumn {
  readonly column: ColumnUnderstood;
  /** What is said of it; null where that is left to the person who fills the draft in. */
  readonly word: Omit<ColumnWord, "by"> | null;
  /** It is said already, of a column above with the same heading. */
  readonly again?: boolean;
}

/** A sheet as a draft of a column file writes it. */
export interface DraftSheet {
  readonly sheet: SheetUnderstood;
  /** False where a column file cannot name the sheet, or nothing is to be said of it. */
  readonly named: boolean;
  readonly language: Language | null;
  readonly decimalSign: DecimalSign | null;
  readonly headingRows: readonly number[];
  readonly columns: readonly DraftColumn[];
}

/** What a column file would have to say so that the survey is understood as it is now, sheet by sheet. */
export function draftOf({ sheets }: SurveyUnderstood): readonly DraftSheet[] {
  const names = sheets.map(({ sheet }) => (sheet === null ? null : foldText(sheet)));
  return sheets.map((sheet, i) => {
    const alone = names.indexOf(names[i] ?? null) === names.lastIndexOf(names[i] ?? null);
    return draftSheet(sheet, alone && (sheet.sheet === null || isWritable(sheet.sheet)));
  });
}

/** Whether a column file can hold the text: one line of characters that can be seen. */
function isWritable(text: string): boolean {
  return text.trim() !== "" && !/[\p{Cc}\p{Cf}\p{Co}\p{Cs}\p{Zl}\p{Zp}]/u.test(text) && !UNSAID.has(text);
}

/** Keys that no file of ours may hold. */
const UNSAID: ReadonlySet<string> = new Set(["__proto__", "constructor", "prototype", "<<"]);
/** Longer headings are named by the letters of their column. */
const LONGEST_HEADING = 300;

function draftSheet(sheet: SheetUnderstood, named: boolean): DraftSheet {
  const columns = sheet.tables.flatMap((table) => table.columns.map((column) => ({ column, read: table.read })));
  const read = columns.filter(({ column }) => column.facts.length > 0).map(({ column }) => column);
  const decimalSign = commonSign(read);
  const drafted = columns
    .filter((one) => one.read)
    .map(({ column }) => ({ column, word: wordOf(column, sheet.language, decimalSign) }));
  return {
    sheet,
    named,
    language: sheet.language,
    decimalSign,
    headingRows: sheet.tables.map(({ headingRow }) => headingRow),
    columns: toldApart(
      drafted,
      columns.map(({ column }) => column),
    ),
  };
}

function wordOf(
  column: ColumnUnderstood,
  language: Language | null,
  decimalSign: DecimalSign | null,
): Omit<ColumnWord, "by"> | null {
  const [fact = null] = column.facts;
  if (fact === null && !column.ignored) return null;
  const heading = headingWritten(column.heading);
  const named = { heading, letters: heading === null ? column.letters : null };
  if (fact === null) return { ...named, fact, unit: null, language: null, decimalSign: null, values: new Map() };
  return {
    ...named,
    fact,
    unit: column.unit,
    language: column.language === language ? null : column.language,
    decimalSign: decimalSign === null && column.numbers ? column.decimalSign : null,
    values: column.ownWords,
    // A column for the kind of supply may hold voltages too; of those only the heading can speak.
    accuracy: factOf(fact).kind === "quantity" ? (column.accuracy?.stated ?? null) : null,
  };
}

function headingWritten(heading: string): string | null {
  const written = heading.replace(/\s+/g, " ").trim();
  if (written.length > LONGEST_HEADING || !isWritable(written)) return null;
  return givenKey(written) === givenKey(heading) ? written : null;
}

/** The decimal sign of every column that holds numbers; null where one of them has none, or another. */
function commonSign(read: readonly ColumnUnderstood[]): DecimalSign | null {
  const signs = new Set(read.filter(({ numbers }) => numbers).map(({ decimalSign }) => decimalSign));
  const [sign = null] = signs;
  return signs.size === 1 ? sign : null;
}

/** Adds letters where a heading alone would mean another column too; what even they do not tell apart is left open. */
function toldApart(drafted: readonly DraftColumn[], all: readonly ColumnUnderstood[]): readonly DraftColumn[] {
  const misses = (columns: readonly DraftColumn[]): ReadonlySet<DraftColumn["word"]> => {
    const words = columns.flatMap(({ word }) => (word ? [{ ...word, by: "" }] : []));
    const guide = { leftOut: null, language: null, decimalSign: null, headingRows: null, columns: [words] };
    const wrong = new Set<string>();
    for (const column of all) {
      const found = wordForColumn(guide, column);
      const meant = columns.find((one) => one.column === column)?.word ?? null;
      if (found && !isSameWord(found, meant)) wrong.add(JSON.stringify([found.heading, found.letters]));
    }
    return new Set(
      columns.flatMap(({ word }) => (word && wrong.has(JSON.stringify([word.heading, word.letters])) ? [word] : [])),
    );
  };
  const once = misses(drafted);
  const lettered = drafted.map(({ column, word }) => ({
    column,
    word: word && once.has(word) ? { ...word, letters: column.letters } : word,
  }));
  const twice = misses(lettered);
  const said = new Set<string>();
  return lettered.map(({ column, word }) => {
    if (!word || twice.has(word)) return { column, word: null };
    const key = JSON.stringify([word.heading === null ? null : givenKey(word.heading), word.letters]);
    const again = said.has(key);
    said.add(key);
    return { column, word, again };
  });
}

function isSameWord(a: Omit<ColumnWord, "by">, b: Omit<ColumnWord, "by"> | null): boolean {
  if (b === null) return false;
  const values = (word: Omit<ColumnWord, "by">): string => JSON.stringify([...word.values]);
  return (
    a.fact === b.fact &&
    a.unit === b.unit &&
    a.language === b.language &&
    a.decimalSign === b.decimalSign &&
    a.accuracy?.written === b.accuracy?.written &&
    values(a) === values(b)
  );
}
