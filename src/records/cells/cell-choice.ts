import { foldText, showText } from "../../base/index.js";
import type { FactDefinition } from "../../facts/index.js";
import { isDenied, type Phrase, phraseOf, type Span } from "../words/denial.js";
import { LONGEST_PHRASE, wordsOf } from "../words/tokens.js";
import { UNCLEAR, type Vocabulary } from "../words/vocabulary.js";
import { type CellReading, type CellTrouble, trouble } from "./cell-reading.js";
import { doubted, doubtedClauses, isDoubted, uncertain } from "./doubt.js";

/** Fields in which a word that no list knows spoils the answer: half an answer there is a wrong one. */
const NO_LOOSE_WORDS: ReadonlySet<string> = new Set(["variable_speed", "speed_reference"]);

/** Group, category and atmosphere of explosion-protected equipment (II 2G, II 3 D). */
const EQUIPMENT_MARKING = /\bI{1,2}\s?[123]\s?[GD]\b/i;

/** What the phrase of a cell says for each of the fields that its column is read for. */
export interface PhraseReading {
  /** By fact id; null where the phrase says nothing of that field. */
  readonly byFact: ReadonlyMap<string, CellReading | null>;
}

/**
 * Reads one phrase for one or several choice fields at once (cast iron, painted: material and finish).
 * A word taken by any of them is known to all.
 *
 * @param text - the cell's text, neither empty nor a word for missing
 * @param beside - fields that are not read here, but whose words are known
 */
export function readPhrase(
  text: string,
  fields: readonly FactDefinition[],
  vocabulary: Vocabulary,
  beside: readonly FactDefinition[] = [],
): PhraseReading {
  if (text.length > LONGEST_PHRASE) return sameForAll(fields, trouble("unknown-choice", "expected a word or two"));
  const [only] = fields;
  const whole = only && fields.length === 1 ? vocabulary.choices.get(only.id)?.whole(text) : undefined;
  if (only && whole !== undefined && whole !== UNCLEAR) return { byFact: new Map([[only.id, word(whole, [])]]) };
  const doubt = doubted(text);
  if (doubt) return sameForAll(fields, doubt);
  const phrase = phraseOf(text);
  const { words } = phrase;
  const found = withoutInner(
    fields.map((field) => ({ field, hits: vocabulary.choices.get(field.id)?.find(words) ?? [] })),
  );
  const taken = words.map(() => false);
  const known = beside.map((field) => ({ field, hits: vocabulary.choices.get(field.id)?.find(words) ?? [] }));
  for (const { field, hits } of [...found, ...known]) {
    for (const hit of hits) taken.fill(true, hit.from, hit.to);
    words.forEach((w, i) => {
      if (vocabulary.headingWords.get(field.id)?.has(w) && !vocabulary.isNot(w)) taken[i] = true;
    });
  }
  const byFact = new Map<string, CellReading | null>();
  const doubts = doubtedClauses(phrase, taken, vocabulary);
  const all = [...found, ...known].flatMap(({ hits }) => hits);
  for (const { field, hits } of found) {
    const reading = choiceOf(field, hits, { phrase, taken }, vocabulary);
    byFact.set(field.id, reading);
    if (doubts.size === 0 || (reading?.ok === false && reading.code !== "unknown-choice")) continue;
    const named = { own: headed(words, [field], vocabulary), any: headed(words, [...fields, ...beside], vocabulary) };
    if (isDoubted(doubts, phrase, hits, all, named)) byFact.set(field.id, uncertain());
  }
  return { byFact };
}

/** For each word, whether it stands in a heading of one of the fields. */
function headed(
  words: readonly string[],
  fields: readonly FactDefinition[],
  vocabulary: Vocabulary,
): readonly boolean[] {
  return words.map((w) => fields.some((field) => vocabulary.headingWords.get(field.id)?.has(w) ?? false));
}

/** A word inside a longer phrase of another field says nothing of its own (A-Seite, non-drive end). */
function withoutInner<T extends Span>(
  found: readonly { readonly field: FactDefinition; readonly hits: readonly T[] }[],
): readonly { readonly field: FactDefinition; readonly hits: readonly T[] }[] {
  const all = found.flatMap(({ hits }) => hits);
  const inner = (hit: T): boolean =>
    all.some((other) => other.from <= hit.from && other.to >= hit.to && other.to - other.from > hit.to - hit.from);
  return found.map(({ field, hits }) => ({ field, hits: hits.filter((hit) => !inner(hit)) }));
}

interface Hit extends Span {
  readonly meaning: string;
  readonly short: boolean;
}

interface TakenPhrase {
  readonly phrase: Phrase;
  /** For each word, whether some list knows it. */
  readonly taken: readonly boolean[];
}

function choiceOf(
  field: FactDefinition,
  hits: readonly Hit[],
  { phrase, taken }: TakenPhrase,
  vocabulary: Vocabulary,
): CellReading | null {
  const { words } = phrase;
  const unclear = hits.find((hit) => hit.meaning === UNCLEAR);
  if (unclear) {
    const said = showText(words.slice(unclear.from, unclear.to).join(" "));
    return trouble("unknown-choice", `"${said}" leaves open which is meant; use ${listed(field)}`);
  }
  const loose = words.filter((_, i) => !taken[i]);
  // A word of one or two letters is not trusted beside words that nobody knows, but it does contradict.
  const sure = loose.length > 0 ? hits.filter((hit) => !hit.short) : hits;
  const [choice] = sure.map((hit) => hit.meaning);
  if (choice === undefined) return null;
  const choices = [...new Set(hits.map((hit) => hit.meaning))];
  if (choices.length > 1 || sure.some((hit) => besideOr(hit, words, vocabulary))) {
    return trouble("several-values", `expected one of ${listed(field)}; found words for ${choices.join(" and ")}`);
  }
  if (sure.some((hit) => isDenied(hit, phrase, taken, vocabulary)) || endsInNo(hits, phrase, vocabulary)) {
    return trouble("unknown-choice", `"${showText(words.join(" "))}" denies ${choice}; write what it is instead`);
  }
  if (loose.length > 0 && NO_LOOSE_WORDS.has(field.id)) {
    return trouble("unknown-choice", `"${showText(loose.join(" "))}" is no word known here; use ${listed(field)}`);
  }
  return word(choice, loose);
}

/** "Fixed: no", "DOL - nein": an answer behind a word, even where "no" alone is one of the choices. */
function endsInNo(hits: readonly Hit[], { words, clauses }: Phrase, vocabulary: Vocabulary): boolean {
  return hits.some((hit, i) => {
    const before = hits[i - 1];
    const alone = hit.to - hit.from === 1 && vocabulary.isNo(words[hit.from] ?? "");
    return alone && before !== undefined && clauses[before.from] === clauses[hit.from];
  });
}

function besideOr(hit: Hit, words: readonly string[], vocabulary: Vocabulary): boolean {
  const before = words[hit.from - 1];
  const after = words[hit.to];
  const opens = before !== undefined && hit.from > 1 && vocabulary.isOr(before);
  const closes = after !== undefined && hit.to < words.length - 1 && vocabulary.isOr(after);
  return opens || closes;
}

/** What is wrong with a phrase in which no listed word was found. */
export function noChoice(text: string, field: FactDefinition, vocabulary: Vocabulary): CellTrouble {
  const words = wordsOf(text);
  if (field.id === "direction" && words.some((w) => /^[xyz]$/.test(w))) {
    return trouble(
      "ambiguous-choice",
      "x, y and z mean other directions on other sites; write horizontal, vertical or axial",
    );
  }
  if (field.id === "bearing_position" && words.length > 0 && words.every((w) => /^\d{1,2}$/.test(w))) {
    return trouble(
      "ambiguous-choice",
      "bearing numbers run differently on other sites; write drive end or non-drive end",
    );
  }
  if (field.id === "hazardous_area" && EQUIPMENT_MARKING.test(text)) {
    return trouble("doubtful", "this marks equipment, not the place; write the zone of the place");
  }
  if (words.some((w, i) => i > 0 && i < words.length - 1 && vocabulary.isOr(w))) {
    return trouble("several-values", `expected one of ${listed(field)}`);
  }
  return trouble("unknown-choice", `"${showText(text)}" is no word known here; use ${listed(field)}`);
}

/** Reads a yes-no field: nothing but a word for yes or a word for no. */
export function readYesNo(text: string, field: FactDefinition, vocabulary: Vocabulary): CellReading {
  const listedWord = vocabulary.choices.get(field.id)?.whole(text);
  if (listedWord === "yes" || listedWord === "no") return word(listedWord === "yes", []);
  if (vocabulary.isYes(foldText(text))) return word(true, []);
  if (vocabulary.isNo(foldText(text))) return word(false, []);
  const doubt = doubted(text);
  if (doubt) return doubt;
  const words = wordsOf(text);
  const known = words.map((w) => (vocabulary.isYes(w) ? true : vocabulary.isNo(w) ? false : null));
  if (words.length === 0 || known.includes(null)) {
    return trouble("unknown-choice", `"${showText(text)}" is neither yes nor no; write one of the two`);
  }
  const answers = new Set(known);
  if (answers.size > 1) return trouble("several-values", "found yes and no; leave one");
  return word(answers.has(true), []);
}

function word(value: string | boolean, loose: readonly string[]): CellReading {
  return { ok: true, kind: "word", value, remarks: loose.length > 0 ? [loose.join(" ")] : [] };
}

function listed(field: FactDefinition): string {
  return (field.choices ?? []).filter((choice) => choice !== "absent").join(", ");
}

function sameForAll(fields: readonly FactDefinition[], reading: CellTrouble): PhraseReading {
  return { byFact: new Map(fields.map((field) => [field.id, reading])) };
}
