import { columnLetters, foldText, type Unit, unitOf } from "../../base/index.js";
import { type ColumnWord, type FactDefinition, factOf, type Language } from "../../facts/index.js";
import type { CellValue } from "../../workbook/index.js";
import type { UnitRead } from "../cells/cell-unit.js";
import type { Grid } from "../cells/grid.js";
import { readCell } from "../cells/read-cell.js";
import type { Vocabulary } from "../words/vocabulary.js";
import { type SheetGuide, wordForColumn } from "./guide.js";
import { fieldNotMeant, givenMatch, type HeadingMatch, matchHeading, namesIn, readUnitBelow } from "./heading.js";
import type { ColumnAccuracy } from "./heading-accuracy.js";
import {
  decimalSigns,
  givenStyle,
  type SettledStyle,
  type SheetLanguage,
  settleStyle,
  textsOfColumn,
} from "./languages.js";
import type { Table, TableHeading } from "./tables.js";

/** What a column of a table is read for. */
export interface ColumnPlan {
  readonly column: number;
  readonly heading: string;
  /** The field of the column; null where the heading is not known. */
  readonly field: FactDefinition | null;
  /** Further fields that its phrases may speak of. */
  readonly also: readonly FactDefinition[];
  /** Fields that people write into the same column, but that have a column of their own: their words are known. */
  readonly beside: readonly FactDefinition[];
  readonly unit: Unit | null;
  /** The heading speaks of a unit, but not so that a bare number below it can be read. */
  readonly unsettledUnit: boolean;
  /** Why the unit that would be assumed is doubted, and what to do. */
  readonly unitDoubt?: string;
  /** Digits of the codes, where they are written with leading zeros. */
  readonly codeWidth?: number;
  /** How accurate its numbers are that do not say so themselves; left out where nobody says. */
  readonly accuracy?: ColumnAccuracy;
  readonly supply: "dc" | "ac" | null;
  readonly language: Language | null;
  readonly style: SettledStyle;
  readonly why: string;
  /** The ways in which a person may name the column, the fullest first. */
  readonly names: readonly string[];
  /** What a person says of the column; null where it is understood as usual. */
  readonly word: ColumnWord | null;
  /** Words of its own, folded, each with what it stands for; only whole cells count. */
  readonly ownWords: ReadonlyMap<string, string | boolean>;
}

/** Fields that people write into one column; each may be read from a column of any of the others. */
const TOGETHER: readonly (readonly string[])[] = [
  ["mounted_on", "surface_material", "surface_finish"],
  ["bearing_position", "direction", "component"],
  ["supply_voltage", "supply_kind"],
];

/** Values looked at where a heading may mean several fields. */
const VALUES_LOOKED_AT = 40;

interface Named {
  readonly column: number;
  readonly heading: TableHeading;
  readonly candidates: readonly HeadingMatch[];
}

/** The headings of a table with the fields that each may name. */
export function nameColumns(table: Table, vocabulary: Vocabulary): readonly Named[] {
  return [...table.headings].map(([column, heading]) => ({
    column,
    heading,
    candidates: candidatesOf(heading, vocabulary),
  }));
}

function candidatesOf(heading: TableHeading, vocabulary: Vocabulary): readonly HeadingMatch[] {
  const both = `${heading.above} ${heading.own}`.trim();
  const whole = heading.above === "" ? [] : matchHeading(both, vocabulary).filter((match) => match.how === "listed");
  if (whole.length > 0) return whole;
  const own = heading.own === "" ? [] : matchHeading(heading.own, vocabulary);
  if (heading.divided) return own.filter((match) => match.how === "listed");
  return own.length > 0 ? own : matchHeading(both, vocabulary);
}

/** Decides for every column of a table what it is read for, and says why. */
export function planColumns(
  grid: Grid,
  table: Table,
  named: readonly Named[],
  language: SheetLanguage,
  vocabulary: Vocabulary,
  guide: SheetGuide,
): readonly ColumnPlan[] {
  const chosen = onlyListed(
    named.map((column) => ({
      column,
      choice: chooseAsTold(column, guide, vocabulary) ?? choose(column, grid, table, vocabulary),
    })),
  );
  const owned = new Set(chosen.flatMap(({ choice }) => (choice.match ? [choice.match.field.id] : [])));
  const textsOf = new Map(
    chosen.flatMap(({ column: { column }, choice }) =>
      choice.match?.field.kind === "quantity" ? [[column, textsOfColumn(grid, table.rows, column)] as const] : [],
    ),
  );
  const signsOfSheet = decimalSigns([...textsOf.values()].flatMap((texts) => [...texts]));
  return chosen.map(({ column, choice: { match, why, word = null } }) => {
    const field = match?.field ?? null;
    const only = match?.languages.length === 1 ? match.languages[0] : undefined;
    const columnLanguage = word?.language ?? guide.language?.value ?? only ?? language.language;
    const signs = decimalSigns(textsOf.get(column.column) ?? []);
    const below = unitBelow(column.heading, field);
    const told = word?.unit && field?.dimension ? unitOf(word.unit, field.dimension) : null;
    return {
      column: column.column,
      heading: headingShown(column.heading),
      field,
      ...alongside(field, owned),
      unit: told ?? below?.unit ?? match?.unit ?? null,
      unsettledUnit: !told && !below?.unit && ((match?.unsettledUnit ?? false) || column.heading.unitOpen),
      supply: below?.supply ?? match?.supply ?? null,
      language: columnLanguage,
      style: givenStyle(word, guide.decimalSign) ?? settleStyle(columnLanguage, signs, signsOfSheet),
      why,
      names: namesOf(column.heading, vocabulary),
      word,
      ownWords: new Map([...(word?.values ?? [])].map(([text, value]) => [foldText(text), value])),
    };
  });
}

/**
 * A column found by some words of its heading gives way where another column is listed for the same field
 * (Impeller material beside Material): it speaks of something else.
 */
function onlyListed(
  chosen: readonly { readonly column: Named; readonly choice: Choice }[],
): readonly { readonly column: Named; readonly choice: Choice }[] {
  const listed = new Set(chosen.flatMap(({ choice: { match } }) => (match?.how === "listed" ? [match.field.id] : [])));
  return chosen.map(({ column, choice }) => {
    if (choice.match?.how !== "words" || !listed.has(choice.match.field.id)) return { column, choice };
    const why = `some words mean ${choice.match.field.name}, for which there is another column`;
    return { column, choice: { match: null, why } };
  });
}

function alongside(field: FactDefinition | null, owned: ReadonlySet<string>): Pick<ColumnPlan, "also" | "beside"> {
  const group = TOGETHER.find((fields) => field !== null && fields.includes(field.id)) ?? [];
  const seat = field?.group === "surface" || field?.id === "mounted_on";
  const others = group.filter((id) => id !== field?.id);
  // Parts of the seat are read wherever they are mentioned; of the others a column of its own is the only source.
  const also = others.filter((id) => seat || !owned.has(id));
  return { also: also.map(factOf), beside: others.filter((id) => !also.includes(id)).map(factOf) };
}

function headingShown(heading: TableHeading): string {
  return [heading.above, heading.own].filter((part) => part !== "").join(" / ");
}

function namesOf(heading: TableHeading, vocabulary: Vocabulary): readonly string[] {
  const texts = [headingShown(heading), heading.own];
  return [...new Set([...texts, ...texts.flatMap((text) => namesIn(text, vocabulary))])];
}

function unitBelow(heading: TableHeading, field: FactDefinition | null): UnitRead | null {
  return field?.dimension ? readUnitBelow(heading.unitBelow, field.dimension) : null;
}

interface Choice {
  readonly match: HeadingMatch | null;
  readonly why: string;
  readonly word?: ColumnWord;
}

/** What a person says that the column is read for; null where nobody says anything. */
function chooseAsTold(
  { column, heading, candidates }: Named,
  guide: SheetGuide,
  vocabulary: Vocabulary,
): Choice | null {
  const word = wordForColumn(guide, { letters: columnLetters(column), names: namesOf(heading, vocabulary) });
  if (!word) return null;
  if (word.fact === null) return { match: null, why: `left out by ${word.by}`, word };
  const field = factOf(word.fact);
  const known = candidates.find((match) => match.field.id === field.id);
  const match: HeadingMatch = known
    ? { ...known, how: "listed" }
    : givenMatch([heading.own, `${heading.above} ${heading.own}`.trim()], field, vocabulary);
  return { match, why: word.by, word };
}

function choose(named: Named, grid: Grid, table: Table, vocabulary: Vocabulary): Choice {
  const [first, ...others] = named.candidates;
  if (!first) return { match: null, why: whyUnknown(named.heading, vocabulary) };
  const said = first.how === "listed" ? "heading listed" : "words of the heading";
  if (others.length === 0) return { match: first, why: said };
  const ranked = named.candidates
    .map((match) => ({ match, share: shareRead(match, named.column, grid, table, vocabulary) }))
    .filter(({ share }) => share !== null)
    .map(({ match, share }) => ({ match, share: share ?? 0 }))
    .sort((a, b) => b.share - a.share);
  const names = named.candidates.map((match) => match.field.name).join(", ");
  const [best, next] = ranked;
  // Fields that people write into one column are read together, whichever of them the heading is put down to.
  if (best && TOGETHER.some((group) => named.candidates.every((match) => group.includes(match.field.id)))) {
    return { match: best.match, why: `heading may mean ${names}; the column is read for all of them` };
  }
  if (!best) return { match: null, why: `heading may mean ${names}, and no value decides` };
  if (best.share >= 0.5 && (!next || best.share - next.share >= 0.2)) {
    return { match: best.match, why: `heading may mean ${names}; the values speak for ${best.match.field.name}` };
  }
  return { match: null, why: `heading may mean ${names}, and the values do not decide` };
}

function whyUnknown({ above, own }: TableHeading, vocabulary: Vocabulary): string {
  const field = fieldNotMeant(`${above} ${own}`.trim(), vocabulary);
  if (field === null) return "heading not known";
  return `some words mean ${field.name}, but the heading asks for something else, or for what is demanded`;
}

/**
 * How well a cell speaks for a field: a phrase that is listed as a whole says more than a word found in it (direct on
 * line is a way of starting; direct is a transmission).
 */
function worthOf(
  reading: ReturnType<typeof readCell>,
  value: CellValue | undefined,
  { field }: HeadingMatch,
  vocabulary: Vocabulary,
): number {
  if (!reading.ok) return 0;
  if (field.kind !== "choice" || value?.kind !== "text") return 1;
  if (vocabulary.choices.get(field.id)?.whole(value.text) !== undefined) return 1;
  return reading.remarks.length === 0 ? 0.7 : 0.5;
}

function firstValues(grid: Grid, rows: readonly number[], column: number): readonly CellValue[] {
  const values: CellValue[] = [];
  for (const row of rows) {
    const value = grid.own(row, column);
    if (value !== undefined) values.push(value);
    if (values.length === VALUES_LOOKED_AT) break;
  }
  return values;
}

/** Share of the filled cells that can be read as the field; free text proves nothing and counts little. */
function shareRead(
  match: HeadingMatch,
  column: number,
  grid: Grid,
  table: Table,
  vocabulary: Vocabulary,
): number | null {
  const values = firstValues(grid, table.rows, column);
  const read = values.map((value) =>
    readCell(value, {
      field: match.field,
      style: settleStyle(match.languages[0] ?? null, new Set(), new Set()).style,
      locale: match.languages[0] ?? null,
      headingUnit: match.unit,
      headingSupply: match.supply,
      headingUnsettled: match.unsettledUnit,
      vocabulary,
      dateSystem: 1900,
    }),
  );
  const telling = read.filter((reading) => reading.ok || reading.code !== "missing");
  if (telling.length === 0) return null;
  const good =
    read.reduce((sum, reading, i) => sum + worthOf(reading, values[i], match, vocabulary), 0) / telling.length;
  return match.field.kind === "text" || match.field.kind === "identifier" ? good * 0.4 : good;
}
