import { dimensionInWords } from "../../base/index.js";
import { CATALOGUE, plainWords } from "../../facts/index.js";
import { BASES, type Basis, type Rule, type Rulebook } from "../../rulebook/index.js";
import { unitName } from "./band-picture.js";
import { type Block, type Line, list, type Row, text } from "./block.js";
import type { BookShown } from "./book-shown.js";
import { definitionsUsed } from "./facts-used.js";

const TERMS: readonly (readonly [term: string, meaning: string])[] = [
  ["point", "a place on a machine where a sensor is to be mounted or was mounted; a row of a survey"],
  [
    "proposed, installed",
    "the two stages of a point: what is planned, and what was built. A rule names the stages in which it is asked",
  ],
  [
    "fact",
    "a named value of a point: read from a survey, stated for a site, taken from a sensor model or a table, gathered over a group, or computed",
  ],
  [
    "limit",
    "where the good values of the judged fact end. Where nothing else is said, the limit itself is a good value: “below 9 mm” is broken at 8.9 mm and kept at 9 mm",
  ],
  ["band", "the values on the bad side of a limit"],
  ["finding", "what one rule says of one point, with the facts, the limit, its source and what to do"],
  ["verdict", "what all rules together say of a point"],
  ["set", "rules that are applied together"],
  ["sensor model", "what the data sheet of a kind of sensor asks for, kept in a file with sources (annex B)"],
  ["table", "values that hang on a choice, such as the metal of the wall (annex C)"],
  ["group", "points that share a key, such as the supply (annex D)"],
  ["deviation", "a finding that somebody has accepted until a day"],
];

const BASIS_WORDS: Readonly<Record<Basis, string>> = {
  standard: "a published standard, named; a clause is given only where it was read",
  handbook: "a handbook or textbook, named",
  "data-set": "a published collection of figures, named",
  "maker-data": "a maker's data sheet or manual, named",
  "company-practice": "how the company does it",
  derivation: "computed or concluded from what else is known; the steps are given",
  "common-practice": "how the trade commonly does it, without one source that could be named",
  "from-memory": "remembered and not looked up; the weakest of all, to be checked before it is relied on",
};

/** Unit symbols in words; a test holds that none of the catalogue is missing. */
export const UNIT_WORDS: Readonly<Record<string, string>> = {
  kW: "kilowatt",
  "r/min": "revolutions per minute",
  s: "second",
  min: "minute",
  "%": "per cent",
  Hz: "hertz, cycles per second",
  "mm/s": "millimetre per second",
  mm: "millimetre",
  m: "metre",
  µm: "micrometre, 0.001 mm",
  deg: "degree of angle",
  kg: "kilogram",
  g: "gram",
  "°C": "degree Celsius; a difference of temperatures is in kelvin, K",
  N·m: "newton metre",
  MPa: "megapascal, newton per square millimetre",
  V: "volt",
  mA: "milliampere",
  "mm²": "square millimetre",
  "m/s²": "metre per second squared",
  "µg/√Hz": "millionth of standard gravity per root hertz",
  Ω: "ohm",
  "Ω/km": "ohm per kilometre",
};

/** Terms, kinds of sources, how pictures are read, and units. */
export function termsPart(book: BookShown): readonly Block[] {
  return [
    { is: "heading", level: 2, id: "terms", line: ["3 Terms, sources, units"] },
    { is: "heading", level: 3, id: "terms-words", line: ["3.1 Terms"] },
    ...list(TERMS.map(([term, meaning]): Line => [{ strong: term }, `: ${meaning}`])),
    text("Every fact is listed in annex A, and annex G says in which rules it is used."),
    { is: "heading", level: 3, id: "sources", line: ["3.2 What sources are worth"] },
    text("Each limit, value and table names its source, and each source says what kind it is:"),
    sourcesTable(book),
    { is: "heading", level: 3, id: "pictures", line: ["3.3 How pictures of bands are read"] },
    text(
      "A picture shows all values of the judged fact from low on the left to high on the right, not to scale. Zones that fail " +
        "are hatched crosswise, zones that warn slantwise, zones that pass are plain; mark and word stand above. The " +
        "words below them say on which side the limit itself lies. A limit that is a fact is named; where " +
        `the model ${book.rulebook.baselineModel} or a table has a value for it, that stands below in brackets.`,
    ),
    { is: "heading", level: 3, id: "units", line: ["3.4 Units"] },
    text(
      "Numbers of a survey may come in other units of the same quantity; they are converted once, on reading, to these:",
    ),
    unitsTable(book),
  ];
}

function sourcesTable({ rules, rulebook }: BookShown): Block {
  const counts = new Map<Basis, number>();
  for (const basis of basesOf(rules, rulebook)) counts.set(basis, (counts.get(basis) ?? 0) + 1);
  const rows = BASES.map((basis): Row => {
    return { cells: [[{ strong: plainWords(basis) }], [BASIS_WORDS[basis]], [String(counts.get(basis) ?? 0)]] };
  });
  return { is: "table", caption: "Kinds of sources", headings: ["kind", "what it is", "in this document"], rows };
}

function basesOf(rules: readonly Rule[], { models, tables, ways }: Rulebook): readonly Basis[] {
  const all = [...rules, ...models.values(), ...tables.values(), ...ways.values()];
  return all.flatMap(({ citations }) => [...citations.values()].map(({ basis }) => basis));
}

function unitsTable({ used }: BookShown): Block {
  const rows = new Map<string, Row>();
  for (const { dimension, unit } of definitionsUsed(CATALOGUE, used)) {
    if (dimension === undefined || unit === undefined) continue;
    const cells: readonly Line[] = [[dimensionInWords(dimension)], [unitName(unit)], [UNIT_WORDS[unit] ?? ""]];
    rows.set(`${dimension} ${unit}`, { cells });
  }
  const inOrder = [...rows].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, row]) => row);
  return { is: "table", caption: "Units", headings: ["quantity", "unit", "in words"], rows: inOrder };
}
