import { foldText } from "../../base/index.js";
import { type ColumnWord, type DecimalSign, LANGUAGES, type Language, type Settled } from "../../facts/index.js";
import type { Grid } from "../cells/grid.js";
import {
  decimalSignShown,
  type NumberStyle,
  styleOfDecimalSign,
  styleOfLocale,
  UNSETTLED,
} from "../cells/number-style.js";
import { wordsOf } from "../words/tokens.js";
import type { Vocabulary } from "../words/vocabulary.js";

/** Rows of a sheet that are looked into for words that give the language away. */
const ROWS_LOOKED_AT = 80;

/** A heading of one language counts two, a word that gives it away one. */
const FEWEST_SIGNS = 2;

/** The language of a sheet and how it was found. */
export interface SheetLanguage {
  readonly language: Language | null;
  readonly why: string;
}

/**
 * The language of a sheet: that of the most headings listed in one language alone, and of the words that
 * give a language away. A tie leaves it open.
 *
 * @param headingLanguages - for each column, the languages in which its heading is listed
 */
export function sheetLanguage(
  grid: Grid,
  headingLanguages: readonly (readonly Language[])[],
  vocabulary: Vocabulary,
): SheetLanguage {
  const votes = new Map<Language, number>(LANGUAGES.map((language) => [language, 0]));
  const add = (language: Language, weight: number): void => {
    votes.set(language, (votes.get(language) ?? 0) + weight);
  };
  for (const languages of headingLanguages) {
    const [only] = languages;
    if (only !== undefined && languages.length === 1) add(only, 2);
  }
  const seen = new Set<string>();
  // A mark counts once, however many cells repeat it: a hundred speeds in rpm make no English sheet.
  const marked = new Set<string>();
  const mark = (words: string, language: Language): void => {
    if (!marked.has(words)) add(language, 1);
    marked.add(words);
  };
  for (const row of grid.rows.slice(0, ROWS_LOOKED_AT)) {
    for (const value of grid.filled(row.row).values()) {
      if (value.kind !== "text" || seen.has(value.text)) continue;
      seen.add(value.text);
      const whole = vocabulary.marks.whole(value.text);
      if (whole !== undefined) {
        mark(foldText(value.text), whole);
        continue;
      }
      const words = wordsOf(value.text);
      for (const hit of vocabulary.marks.find(words)) mark(words.slice(hit.from, hit.to).join(" "), hit.meaning);
    }
  }
  return decide(votes);
}

function decide(votes: ReadonlyMap<Language, number>): SheetLanguage {
  const ranked = [...votes].sort((a, b) => b[1] - a[1]);
  const [first, second] = ranked;
  if (!first || first[1] === 0) return { language: null, why: "no heading or word tells the language" };
  if (first[1] < FEWEST_SIGNS) return { language: null, why: "one word alone does not tell the language" };
  if (second && second[1] === first[1]) {
    return { language: null, why: `headings and words speak for ${first[0]} and ${second[0]} alike` };
  }
  return {
    language: first[0],
    why: `${first[1]} signs in headings and words, next ${second?.[0]} with ${second?.[1]}`,
  };
}

/**
 * Which decimal sign the numbers of some cells give away: one, both, or none. Both, too, where each of them stands
 * before three digits and nothing else settles what they mean (1.485 beside 1,485).
 */
export function decimalSigns(texts: Iterable<string>): ReadonlySet<"." | ","> {
  const signs = new Set<"." | ",">();
  const open = new Set<"." | ",">();
  for (const text of texts) {
    if (text.length > 60 || !/[.,]/.test(text)) continue;
    for (const digits of text.match(/\d[\d.,'’ \u00a0\u202f]*\d/g) ?? []) {
      const sign = decimalSignShown(digits.trim());
      if (sign) signs.add(sign);
      else if (/[.,]/.test(digits)) open.add(digits.includes(".") ? "." : ",");
    }
  }
  return signs.size === 0 && open.size === 2 ? open : signs;
}

/** How the numbers of a column are written, and what settles it. */
export interface SettledStyle {
  readonly style: NumberStyle;
  readonly why: string;
  /** A person says so; the values are not asked any more. */
  readonly told?: true;
}

/**
 * Settles how numbers are written in a column: language and the numbers themselves must not contradict each
 * other. Where they do, or where the numbers of the column are written both ways, a number with two readings
 * stays ambiguous.
 */
export function settleStyle(
  language: Language | null,
  ofColumn: ReadonlySet<"." | ",">,
  ofSheet: ReadonlySet<"." | ",">,
): SettledStyle {
  if (ofColumn.size === 2) return { style: UNSETTLED, why: "numbers of the column are written both ways" };
  const shown = ofColumn.size === 1 ? ofColumn : ofSheet.size === 1 ? ofSheet : new Set<"." | ",">();
  const [sign] = shown;
  const byLanguage = styleOfLocale(language);
  if (sign === undefined)
    return { style: byLanguage, why: language === null ? "nothing settles it" : `language ${language}` };
  const name = sign === "." ? "decimal point" : "decimal comma";
  if (language === null) return { style: styleOfDecimalSign(sign), why: `other numbers have a ${name}` };
  const meaning = sign === "." ? byLanguage.point : byLanguage.comma;
  // In Mexico and its neighbours Spanish is written with decimal points; a point before three digits stays open.
  if (meaning === "group" && language === "es")
    return { style: SPANISH_WITH_POINTS, why: "language es with decimal points" };
  if (meaning === "group") return { style: UNSETTLED, why: `language ${language}, but other numbers have a ${name}` };
  return { style: byLanguage, why: `language ${language}, and other numbers have a ${name}` };
}

const SPANISH_WITH_POINTS: NumberStyle = { point: null, comma: "group" };

/** How numbers are written in a column where a person says so; null where nobody does. */
export function givenStyle(word: ColumnWord | null, ofSheet: Settled<DecimalSign> | null): SettledStyle | null {
  const told = word?.decimalSign ? { value: word.decimalSign, by: word.by } : ofSheet;
  if (!told) return null;
  const style = styleOfDecimalSign(told.value === "point" ? "." : ",");
  return { style, why: `decimal ${told.value} by ${told.by}`, told: true };
}

/** The different texts of a column, for the evidence of its numbers. */
export function textsOfColumn(grid: Grid, rows: readonly number[], column: number): ReadonlySet<string> {
  const texts = new Set<string>();
  for (const row of rows) {
    const text = grid.ownText(row, column);
    if (text !== undefined) texts.add(text);
  }
  return texts;
}

/** Whether a heading asks for paint or another coating, so that "none" under it means a bare surface. */
export function saysCoating(heading: string): boolean {
  const folded = foldText(heading);
  // "Paint removed: no" is a painted surface.
  return (
    /paint|coat|lack|anstrich|beschicht|farbe|pintad|pintur|recubr|peint|revet/.test(folded) &&
    !/remov|entfern|quitar|quitad|retirad|enlev/.test(folded)
  );
}

/** Whether a heading asks for paint, so that "yes" under it means a painted surface. */
export function saysPaint(heading: string): boolean {
  return saysCoating(heading) && /paint|lack|anstrich|pintad|pintur|peint/.test(foldText(heading));
}

/** Whether a heading says that its speed is that of the shaft; only then is Hz surely turns per second. */
export function saysShaft(heading: string): boolean {
  return /shaft|running|welle|\beje|giro|arbre|rotation/.test(foldText(heading));
}
