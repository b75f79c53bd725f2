import { type Dimension, foldText, readQuantity, showText } from "../../base/index.js";
import {
  type CommonWords,
  factOf,
  LANGUAGES,
  type MeasuringWay,
  type MeasuringWays,
  SURVEY_FACTS,
} from "../../facts/index.js";
import type { DatedAccuracy, WayOfMeasuring } from "../book/rulebook.js";
import { measureInWords } from "../text/kind-words.js";
import type { RawWay, RawWayAccuracy } from "../text/raw.js";
import { below, type Report } from "../text/source.js";
import { checkCites, checkDates, inForce, readCitations } from "./dated.js";

/** A way file with its report. */
export interface WayFile {
  readonly raw: RawWay;
  readonly report: Report;
}

/** More than this is no accuracy of anything that is measured. */
const MOST_PERCENT = 100;

/**
 * Checks what the ways of measuring of a rulebook mean, their form being checked already. A word names one way, and
 * none that means something else beside every number (about, to be confirmed).
 *
 * @returns the ways by id; of use only if nothing was reported
 */
export function readWays(files: readonly WayFile[], common: CommonWords): ReadonlyMap<string, WayOfMeasuring> {
  const taken = new Map<string, string>();
  for (const key of ["missing", "about", "doubt", "most", "least", "yes", "no"] as const) {
    for (const word of common[key]) taken.set(foldText(word), `it stands among the common words (${key})`);
  }
  return new Map(
    files.map(({ raw, report }) => {
      checkWords(raw, taken, report);
      return [raw.id, readWay(raw, report)];
    }),
  );
}

function checkWords({ id, words = {} }: RawWay, taken: Map<string, string>, report: Report): void {
  const own = new Set<string>();
  for (const language of LANGUAGES) {
    for (const [index, word] of (words[language] ?? []).entries()) {
      const folded = foldText(word);
      const why = taken.get(folded);
      if (why !== undefined) {
        const text = `"${showText(word)}" means something else already: ${why}; a word means one thing`;
        report.atValue(below("/words", language, index), "word-twice", text);
      }
      own.add(folded);
    }
  }
  // A word that two languages share is written in both.
  for (const folded of own) if (!taken.has(folded)) taken.set(folded, `it names the way "${id}"`);
}

function readWay(raw: RawWay, report: Report): WayOfMeasuring {
  const uses: { pointer: string; cites: readonly string[] }[] = [];
  const accuracies = new Map<Dimension, readonly DatedAccuracy[]>();
  for (const [name, entries] of Object.entries(raw.measures)) {
    const dimension = name as Dimension;
    const pointer = below("/measures", name);
    checkDates(entries, pointer, report);
    for (const [index, { cites }] of entries.entries()) uses.push({ pointer: below(pointer, index, "cites"), cites });
    accuracies.set(
      dimension,
      entries.map((entry, index) => ({
        from: entry.from,
        until: entry.until,
        ...readAccuracy(entry, dimension, below(pointer, index), report),
      })),
    );
  }
  for (const [index, fact] of (raw.only ?? []).entries()) {
    const { dimension } = factOf(fact);
    if (dimension !== undefined && accuracies.has(dimension)) continue;
    const text = `"${fact}" is ${measureInWords(factOf(fact))}, which is not among the quantities that it measures; add that to measures, or leave the fact out`;
    report.atValue(below("/only", index), "way-does-not-fit", text);
  }
  checkCites(raw.citations, uses, report);
  const { id, title, words = {}, citations } = raw;
  return {
    id,
    title,
    words: [...new Set(LANGUAGES.flatMap((language) => words[language] ?? []))],
    only: raw.only ?? null,
    accuracies,
    citations: readCitations(citations),
  };
}

/** The unit in which surveys hold most of a quantity; differences of temperature are in kelvin. */
function unitFor(dimension: Dimension): string {
  if (dimension === "temperature") return "K";
  return SURVEY_FACTS.find((fact) => fact.dimension === dimension)?.unit ?? "";
}

function readAccuracy(
  { plusMinus, percent = 0 }: RawWayAccuracy,
  dimension: Dimension,
  pointer: string,
  report: Report,
): { readonly plusMinus: number; readonly unit: string; readonly percent: number } {
  const unit = unitFor(dimension);
  if (plusMinus === undefined && percent === 0) {
    const text = `the accuracy has neither plusMinus nor percent; write plusMinus: 0.5 ${unit}, percent: 2, or both`;
    report.atValue(pointer, "no-accuracy", text);
  }
  if (typeof percent !== "number" || percent < 0 || percent > MOST_PERCENT) {
    const text = `found ${showText(String(percent))}; percent of the value is a number from 0 to ${MOST_PERCENT}, without a sign or quotes`;
    report.atValue(below(pointer, "percent"), "bad-accuracy", text);
  } else if (percent > 0 && dimension === "temperature") {
    report.atValue(below(pointer, "percent"), "bad-accuracy", "a temperature has no percent; write plusMinus in K");
  }
  const share = typeof percent === "number" ? percent : 0;
  if (plusMinus === undefined) return { plusMinus: 0, unit, percent: share };
  const read =
    typeof plusMinus === "number"
      ? {
          code: "no-unit",
          text: `the number ${plusMinus} has no unit; write it with one, such as ${plusMinus} ${unit}`,
        }
      : readQuantity(plusMinus, dimension === "temperature" ? "temperature-difference" : dimension, unit);
  if (typeof read !== "number") report.atValue(below(pointer, "plusMinus"), read.code, read.text);
  else if (read < 0) {
    const text = `${showText(String(plusMinus))} is below 0; an accuracy holds to both sides and is written without a sign`;
    report.atValue(below(pointer, "plusMinus"), "bad-accuracy", text);
  }
  return { plusMinus: typeof read === "number" ? read : 0, unit, percent: share };
}

/** The ways of measuring of a rulebook with the accuracies that are in force on a day. */
export function waysOn(ways: ReadonlyMap<string, WayOfMeasuring>, day: string): MeasuringWays {
  return new Map(
    [...ways].map(([id, { title, words, only, accuracies }]): readonly [string, MeasuringWay] => [
      id,
      {
        id,
        title,
        words,
        only,
        accuracies: new Map(
          [...accuracies].map(([dimension, dated]) => [dimension, dated.find((one) => inForce(one, day)) ?? null]),
        ),
      },
    ]),
  );
}
