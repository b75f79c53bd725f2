import { didYouMean, foldText, showText } from "../../base/index.js";
import type { ColumnGuide, ColumnWord, DecimalSign, Language, Settled, SheetWord } from "../../facts/index.js";
import { headingKey } from "../words/vocabulary.js";

/** What a person has settled for one sheet, the narrower word first. */
export interface SheetGuide {
  /** Where it is said that nothing is read from the sheet; null if it is read. */
  readonly leftOut: string | null;
  readonly language: Settled<Language> | null;
  readonly decimalSign: Settled<DecimalSign> | null;
  readonly headingRows: Settled<readonly number[]> | null;
  /** What is said of columns: by options, for this sheet, for all sheets. */
  readonly columns: readonly (readonly ColumnWord[])[];
}

/** Nothing is settled; everything is understood as usual. */
export const NO_GUIDE: SheetGuide = {
  leftOut: null,
  language: null,
  decimalSign: null,
  headingRows: null,
  columns: [],
};

/** What a person has settled for the sheet with this name (null for CSV). */
export function guideOfSheet(guide: ColumnGuide | null, name: string | null): SheetGuide {
  if (guide === null) return NO_GUIDE;
  const { file } = guide;
  const sheet = sheetWordOf(guide, name);
  return {
    leftOut: sheet?.leftOut ? sheet.by : null,
    language: guide.language ?? sheet?.language ?? file?.language ?? null,
    decimalSign: guide.decimalSign ?? sheet?.decimalSign ?? file?.decimalSign ?? null,
    headingRows: sheet?.headingRows ?? file?.headingRows ?? null,
    columns: [guide.columns, sheet?.columns ?? [], file?.columns ?? []],
  };
}

function sheetWordOf({ file }: ColumnGuide, name: string | null): SheetWord | undefined {
  return name === null ? undefined : file?.sheets.find((sheet) => foldText(sheet.name) === foldText(name));
}

/** The form in which headings are compared with those that a person names. */
export function givenKey(heading: string): string {
  return headingKey(heading) || foldText(heading);
}

/** The ways in which the heading of a column may be named, the fullest first. */
export interface HeadingNames {
  readonly letters: string;
  /** As shown, in its parts, without its unit. */
  readonly names: readonly string[];
}

/** What is said of a column; null where nobody speaks of it. */
export function wordForColumn({ columns }: SheetGuide, { letters, names }: HeadingNames): ColumnWord | null {
  const keys = names.map(givenKey).filter((key) => key !== "");
  for (const words of columns) {
    const here = words.filter((word) => word.letters === letters);
    const bare = here.find((word) => word.heading === null) ?? null;
    for (const key of keys) {
      const named = (word: ColumnWord): boolean => word.heading !== null && givenKey(word.heading) === key;
      const found = here.find(named) ?? (bare ? null : words.find((word) => word.letters === null && named(word)));
      if (found) return found;
    }
    if (bare) return bare;
  }
  return null;
}

/** The headings that a person names, in the form in which headings are compared. */
export function givenHeadings({ columns }: SheetGuide): ReadonlySet<string> {
  return new Set(columns.flat().flatMap(({ heading }) => (heading === null ? [] : [givenKey(heading)])));
}

/** What a guide speaks of and the survey does not have, with the place where it says so. */
export interface NotInSurvey {
  readonly sheet: string | null;
  readonly text: string;
}

/** A sheet as far as a guide can miss something in it. */
export interface GuidedSheet {
  readonly name: string | null;
  readonly guide: SheetGuide;
  readonly columns: readonly (HeadingNames & { readonly heading: string })[];
  /** Rows of headings that are named and that the sheet does not have. */
  readonly rowsMissed: readonly number[];
}

/** Everything that a guide names and a survey does not have; what is misspelled would else go unnoticed. */
export function notInSurvey(guide: ColumnGuide, sheets: readonly GuidedSheet[]): readonly NotInSurvey[] {
  const all = sheets.flatMap(({ columns }) => columns);
  const missed = (word: ColumnWord, sheet: string | null, among: GuidedSheet["columns"]): readonly NotInSurvey[] => {
    // A narrower word may come before it; what counts is that the column is there.
    const alone = { ...NO_GUIDE, columns: [[word]] };
    if (among.some((column) => wordForColumn(alone, column) !== null)) return [];
    const where = sheet === null ? "the survey" : `the sheet "${showText(sheet)}"`;
    const headings = among.map(({ heading }) => heading).filter((heading) => heading !== "");
    const near = word.heading === null ? "" : didYouMean(word.heading, headings);
    return [{ sheet, text: `${word.by} names ${named(word)}, which ${where} does not have${near}` }];
  };
  const found: NotInSurvey[] = guide.columns.flatMap((word) => missed(word, null, all));
  for (const word of guide.file?.sheets ?? []) {
    const sheet = sheets.find(({ name }) => name !== null && foldText(name) === foldText(word.name));
    if (sheet) found.push(...word.columns.flatMap((column) => missed(column, sheet.name, sheet.columns)));
    else {
      const names = sheets.flatMap(({ name }) => (name === null ? [] : [name]));
      const near = didYouMean(word.name, names);
      found.push({
        sheet: null,
        text: `${word.by} names the sheet "${showText(word.name)}", which the survey does not have${near}`,
      });
    }
  }
  found.push(...(guide.file?.columns ?? []).flatMap((word) => missed(word, null, all)));
  for (const { name, guide: own, rowsMissed } of sheets) {
    for (const row of rowsMissed) {
      const text = `${own.headingRows?.by} names row ${row} as a row of headings, and nothing stands in it; headings are looked for as usual`;
      found.push({ sheet: name, text });
    }
  }
  return found;
}

function named({ heading, letters }: ColumnWord): string {
  const column = letters === null ? "" : `column ${letters}`;
  return [column, heading === null ? "" : `the heading "${showText(heading)}"`]
    .filter((part) => part !== "")
    .join(" with ");
}
