import { type Dimension, dimensionsSpelled, otherQuantityOf, type Unit, unitSpelled } from "../../base/index.js";
import { type FactDefinition, factOf, type Language } from "../../facts/index.js";
import { readUnit, type UnitRead } from "../cells/cell-unit.js";
import { PhraseMatcher } from "../words/phrase-matcher.js";
import { type HeadingMeaning, headingKey, type Vocabulary } from "../words/vocabulary.js";
import { openHeading, withoutPlusMinus } from "./heading-accuracy.js";
import { type LooseUnit, looseUnit } from "./heading-unit.js";

/** Longest heading that is looked into; the cap also bounds the patterns below. */
const LONGEST_HEADING = 200;
/** Headings of one or two letters (n, z) count only as the whole heading. */
const SHORTEST_INSIDE = 3;

/** A field that a heading may name. */
export interface HeadingMatch {
  readonly field: FactDefinition;
  readonly languages: readonly Language[];
  readonly unit: Unit | null;
  /** The heading speaks of a unit, but not so that a bare number below it can be read. */
  readonly unsettledUnit: boolean;
  readonly supply: "dc" | "ac" | null;
  /** The whole heading is listed, or only words within it. */
  readonly how: "listed" | "words";
  /** Letters of the listed heading; longer ones say more. */
  readonly letters: number;
}

interface Split {
  readonly name: string;
  readonly unit: string | null;
  /** The unit stands in brackets or behind a comma, so it is meant as one. */
  readonly marked: boolean;
  /** The last word was taken off the name as a unit; right only if the field has such a unit (Machine tag, Tag = day). */
  readonly cut?: true;
}

/** Under a heading for millimetres it is the foot of the machine (thread depth of foot); feet are named in the plural. */
const MACHINE_FOOT = /^(?:foot|fu(?:ß|ss)|pie|pied)$/i;

const insideMatchers = new WeakMap<Vocabulary, PhraseMatcher<string>>();

function insideMatcher(vocabulary: Vocabulary): PhraseMatcher<string> {
  const known = insideMatchers.get(vocabulary);
  if (known) return known;
  const keys = [...vocabulary.headings.keys()].filter((key) => key.replace(/ /g, "").length >= SHORTEST_INSIDE);
  const matcher = new PhraseMatcher(keys.map((key) => [key, key] as const));
  insideMatchers.set(vocabulary, matcher);
  return matcher;
}

/** Whether the whole heading, or the heading without its unit, is listed; cheap enough to ask of every row. */
export function isListedHeading(text: string, vocabulary: Vocabulary): boolean {
  if (text.length > LONGEST_HEADING) return false;
  const isListed = (heading: string): boolean =>
    splitsOf(heading).some((split) => vocabulary.headings.has(headingKey(split.name)));
  if (isListed(text)) return true;
  const { rest } = openHeading(text, vocabulary);
  return rest !== text && isListed(rest);
}

/** Whether the text as it stands, with nothing taken off it, is a listed heading. */
export function isWholeHeading(text: string, vocabulary: Vocabulary): boolean {
  return text.length <= LONGEST_HEADING && vocabulary.headings.has(headingKey(text));
}

/**
 * The fields that a heading may name: those for which it is listed; else those of the listed headings found in it.
 * Empty where its words are unknown or its unit fits no field.
 */
export function matchHeading(text: string, vocabulary: Vocabulary): readonly HeadingMatch[] {
  if (text.length > LONGEST_HEADING) return [];
  const { rest, written } = openHeading(text, vocabulary);
  const whole = matchOpened(text, vocabulary);
  if (rest === text || (written === null && whole.some(({ how }) => how === "listed"))) return whole;
  // Only what is measured has an accuracy; a heading for anything else says something else by the same words.
  const opened = matchOpened(rest, vocabulary).filter(({ field }) => field.kind === "quantity");
  if (opened.length === 0) return whole;
  return opened.map((match) => {
    if (match.unit !== null || match.unsettledUnit || written === null) return match;
    // "Hole depth (±0.5 mm)" says nothing else of the unit.
    const { dimension } = match.field;
    const unit = dimension === undefined || written.unit === "%" ? null : unitSpelled(written.unit, dimension);
    return unit?.leads ? match : { ...match, unit };
  });
}

function matchOpened(text: string, vocabulary: Vocabulary): readonly HeadingMatch[] {
  const found = matchAsWritten(text, vocabulary);
  if (found.length > 0 || !/[([{]/.test(text)) return found;
  // "Speed (min)" asks for the lowest speed; minutes are tried first, which only times can have.
  const opened = text.replace(/[([{]\s*([^()[\]{}]{1,20}?)\s*[)\]}]/g, (all, inside: string) =>
    vocabulary.isMostOrLeast(inside) ? ` ${inside} ` : all,
  );
  return opened === text ? found : matchAsWritten(opened, vocabulary);
}

function matchAsWritten(text: string, vocabulary: Vocabulary): readonly HeadingMatch[] {
  for (const split of splitsOf(text)) {
    const key = headingKey(split.name);
    const meanings = vocabulary.headings.get(key) ?? [];
    const matches = matchesOf(meanings, split, { text, how: "listed", letters: key.length }, vocabulary);
    if (matches.length > 0) return matches;
  }
  return insideMatches(text, vocabulary);
}

/** A field that a person says a heading names: with the unit that the heading states for it, if it states one. */
export function givenMatch(texts: readonly string[], field: FactDefinition, vocabulary: Vocabulary): HeadingMatch {
  const meanings: readonly HeadingMeaning[] = [{ fact: field.id, languages: [] }];
  const matches = texts
    .filter((text) => text.length <= LONGEST_HEADING)
    .flatMap((text) =>
      splitsOf(text).flatMap((split) => matchesOf(meanings, split, { text, how: "listed", letters: 0 }, vocabulary)),
    );
  const none = {
    field,
    languages: [],
    unit: null,
    unsettledUnit: false,
    supply: null,
    how: "listed",
    letters: 0,
  } as const;
  return (
    matches.find(({ unit }) => unit !== null) ?? matches.find((match) => match.unsettledUnit) ?? matches[0] ?? none
  );
}

/** The ways in which a heading, or the heading without its unit, is listed. */
export function listedNames(text: string, vocabulary: Vocabulary): readonly string[] {
  if (text.length > LONGEST_HEADING) return [];
  return splitsOf(text).flatMap(({ name }) => (vocabulary.headings.has(headingKey(name)) ? [name] : []));
}

/** A heading as it stands, and without the unit and the accuracy that it states. */
export function namesIn(text: string, vocabulary: Vocabulary): readonly string[] {
  if (text.length > LONGEST_HEADING) return [text];
  const { rest } = openHeading(text, vocabulary);
  return [text, rest].filter((one) => one !== "").flatMap((one) => splitsOf(one).map(({ name }) => name));
}

function insideMatches(text: string, vocabulary: Vocabulary): readonly HeadingMatch[] {
  const best = new Map<string, HeadingMatch>();
  for (const split of splitsOf(text)) {
    const words = headingKey(split.name).split(" ");
    for (const hit of insideMatcher(vocabulary).find(words)) {
      const meanings = vocabulary.headings.get(hit.meaning) ?? [];
      for (const match of matchesOf(meanings, split, { text, how: "words", letters: hit.meaning.length }, vocabulary)) {
        const known = best.get(match.field.id);
        if (!known || (known.unit === null && match.unit !== null)) best.set(match.field.id, match);
      }
    }
  }
  return [...best.values()].sort((a, b) => b.letters - a.letters);
}

/** The field that words of an unmatched heading name, though the heading is about another thing; null if none. */
export function fieldNotMeant(text: string, vocabulary: Vocabulary): FactDefinition | null {
  if (text.length > LONGEST_HEADING) return null;
  const hits = insideMatcher(vocabulary).find(headingKey(text).split(" "));
  const facts = hits.flatMap(({ meaning }) => (vocabulary.headings.get(meaning) ?? []).map(({ fact }) => fact));
  const fact = facts.find((one) => vocabulary.otherThings.get(one)?.(text) ?? false);
  return fact === undefined ? null : factOf(fact);
}

function matchesOf(
  meanings: readonly HeadingMeaning[],
  split: Split,
  { text, how, letters }: { readonly text: string; readonly how: "listed" | "words"; readonly letters: number },
  vocabulary: Vocabulary,
): readonly HeadingMatch[] {
  return meanings.flatMap(({ fact, languages }) => {
    const field = factOf(fact);
    const stated = statedUnit(field, split);
    if (stated === null) return [];
    // "Hole depth (required)": what stands in the brackets is no unit, so the heading is not listed as it stands.
    const more = split.marked && stated.unit === null && stated.supply === null && headingKey(text).length > letters;
    if ((how === "words" || more) && vocabulary.otherThings.get(fact)?.(text)) return [];
    const supply = stated.supply ?? (fact === "supply_voltage" ? supplyInWords(text) : null);
    if (stated.unit !== null || !field.dimension) {
      return [{ field, languages, unit: stated.unit, unsettledUnit: false, supply, how, letters }];
    }
    const loose: LooseUnit = looseUnit(text, field.dimension);
    if (loose.foreign && how === "words") return [];
    return [{ field, languages, unit: loose.unit, unsettledUnit: loose.unsettled, supply, how, letters }];
  });
}

/** Kind of supply among the words of a heading (Supply (AC), Supply voltage DC); null where it names none or both. */
function supplyInWords(text: string): "dc" | "ac" | null {
  const words = text.split(/[^\p{L}]+/u);
  const dc = words.some((word) => /^(?:V?DC|VCC|CC|Vcc)$/i.test(word));
  const ac = words.some((word) => /^(?:V?AC|VCA|CA)$/i.test(word));
  return dc === ac ? null : dc ? "dc" : "ac";
}

/** Unit and supply that the heading states for the field; null where a marked unit belongs to another quantity. */
function statedUnit(field: FactDefinition, split: Split): { unit: Unit | null; supply: "dc" | "ac" | null } | null {
  const none = { unit: null, supply: null };
  if (split.unit === null) return none;
  if (field.dimension === undefined) return split.cut ? null : none;
  if (field.dimension === "length" && field.unit !== "m" && MACHINE_FOOT.test(split.unit))
    return split.cut ? null : none;
  const read = readUnit(split.unit, field.dimension, false, field.id === "supply_voltage");
  if (read.ok) return { unit: read.unit, supply: read.supply };
  if (split.cut) return null;
  const loose = looseUnit(split.unit, field.dimension);
  return split.marked && isForeign(split.unit) && loose.unit === null && !loose.unsettled ? null : none;
}

function isForeign(unit: string): boolean {
  return (
    dimensionsSpelled(unit).length > 0 || otherQuantityOf(unit) !== null || /^\p{L}{1,6}\s?\/\s?\p{L}{1,6}$/u.test(unit)
  );
}

/** The ways in which a heading divides into name and unit, the fullest name first. */
function splitsOf(text: string): readonly Split[] {
  const tidy = text.replace(/\s+/g, " ").trim();
  const bracket = /^(.*?)\s*[([{]\s*([^()[\]{}]{1,20}?)\s*[)\]}]\s*(.*)$/.exec(tidy);
  const splits: Split[] = [];
  if (bracket) {
    const [, before = "", inside = "", after = ""] = bracket;
    splits.push({ name: tidy, unit: inside, marked: true });
    splits.push({ name: `${before} ${after}`.trim(), unit: inside, marked: true });
    return splits.filter((split) => split.name !== "");
  }
  const comma = /^(.+?)\s*[,;:]\s*(?:in\s+)?([^\s,;:]{1,12})$/.exec(tidy);
  const last = /^(.+?)\s+(?:in\s+)?([^\s]{1,12}|V (?:DC|AC))$/i.exec(tidy);
  splits.push({ name: tidy, unit: wholeUnit(tidy) ?? trailingUnit(last?.[2]), marked: false });
  if (comma) splits.push({ name: comma[1] ?? "", unit: comma[2] ?? null, marked: true });
  if (last && trailingUnit(last[2]) !== null)
    splits.push({ name: last[1] ?? "", unit: last[2] ?? null, marked: false, cut: true });
  return splits;
}

/** "RPM", "kW", "AWG", "V DC": the heading is nothing but a unit. */
function wholeUnit(text: string): string | null {
  return text.length <= 12 && (dimensionsSpelled(text).length > 0 || /^v\s?(?:dc|ac)$/i.test(text)) ? text : null;
}

// "Laufzeit min" and "run time min" speak of the shortest run, not of minutes; minutes need brackets or a comma.
function trailingUnit(word: string | undefined): string | null {
  if (word === undefined || /^mini?$/i.test(word)) return null;
  return dimensionsSpelled(word).some(isTrailing) || /^v\s?(?:dc|ac)$/i.test(word) ? word : null;
}

function isTrailing(dimension: Dimension): boolean {
  return dimension !== "temperature-difference";
}

/** The unit and the kind of supply that a cell of a row of units spells, or null. */
export function readUnitBelow(text: string, dimension: Dimension): UnitRead | null {
  const bare = unitAlone(text);
  if (bare === "" || bare.length > 12) return null;
  const read = readUnit(bare, dimension, false, true);
  return read.ok && (read.unit !== null || read.supply !== null) ? read : null;
}

/** Whether a text spells a unit of the dimension, as a row of units below the headings does. */
export function isUnitText(text: string, dimension: Dimension | undefined): boolean {
  const bare = unitAlone(text);
  if (bare === "" || bare.length > 12) return false;
  return dimension === undefined ? dimensionsSpelled(bare).length > 0 : unitSpelled(bare, dimension) !== null;
}

/** A unit without brackets and without the accuracy behind it (mm ± 0.5). */
function unitAlone(text: string): string {
  return withoutPlusMinus(text)
    .rest.trim()
    .replace(/^[([{]\s*|\s*[)\]}]$/g, "");
}
