import type { WordLists } from "../../facts/index.js";
import { type Survey, surveyReader } from "../../records/index.js";
import { sheetOfTexts } from "../../workbook/index.js";

/** Says how the importer would understand what a blank survey is about to say. */
export interface ReadingBack {
  /** The one field, and the unit of bare numbers, that a heading is read as; null where it names none or several. */
  readonly heading: (heading: string) => { readonly fact: string; readonly unit: string | null } | null;
  /**
   * What a word is read as in a row of the survey where nothing else is filled in but the name of the point; null
   * where it is not read, not without a remark, or as something else besides.
   */
  readonly word: (column: number, word: string) => string | boolean | null;
}

/** What the importer is asked about: the headings of a whole survey with the facts that they stand for. */
export interface AskedHeadings {
  readonly headings: readonly string[];
  readonly facts: readonly string[];
}

/** Asks the importer itself, by small surveys made for the purpose; words only once the headings are settled. */
export function readingBack(words: WordLists): {
  readonly heading: ReadingBack["heading"];
  readonly under: (asked: AskedHeadings) => ReadingBack["word"];
} {
  const reader = surveyReader(words, null);
  const survey = (...rows: readonly (readonly string[])[]): Survey | null => {
    const sheet = sheetOfTexts("asked", rows);
    const reading = reader.read({ kind: "xlsx", sheets: [sheet], dateSystem: 1900, remarks: [] }, "asked", "");
    return reading.ok ? reading.survey : null;
  };
  return {
    heading: (heading) => {
      const [column] = survey([heading])?.columns ?? [];
      // Further facts of a column are those that people write into it beside its own.
      const [fact] = column?.facts ?? [];
      return column && fact !== undefined ? { fact, unit: column.unit } : null;
    },
    under:
      ({ headings, facts }) =>
      (column, word) => {
        const named = facts.indexOf("point_id");
        const row = headings.map((_, i) => (i === column ? word : i === named ? "P-1" : ""));
        const asked = survey(headings, row);
        const said = [...(asked?.records[0]?.facts ?? [])].filter(([, one]) => one.known || one.reason !== "missing");
        // A word that also speaks of the field of another column could contradict what stands there.
        const others = said.filter(([fact]) => fact !== facts[column] && fact !== facts[named]);
        const state = asked?.records[0]?.facts.get(facts[column] ?? "");
        if (others.length > 0 || asked?.problems.length !== 0) return null;
        return state?.known && typeof state.value !== "object" ? state.value : null;
      },
  };
}
