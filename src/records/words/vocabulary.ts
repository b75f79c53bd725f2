import { foldText } from "../../base/index.js";
import {
  type CommonWords,
  type FieldWords,
  LANGUAGES,
  type Language,
  type MeasuringWay,
  type MeasuringWays,
  type WordLists,
} from "../../facts/index.js";
import { notMeantOf, otherThingsOf } from "./other-things.js";
import { PhraseMatcher } from "./phrase-matcher.js";
import { spellingsOf, wordsOf } from "./tokens.js";

/** A listed heading: the field it names and the languages in which it does. */
export interface HeadingMeaning {
  readonly fact: string;
  readonly languages: readonly Language[];
}

/** The word lists of a rulebook made ready for reading; built once per run. */
export interface Vocabulary {
  readonly common: CommonWords;
  readonly isMissing: (folded: string) => boolean;
  readonly isDitto: (text: string) => boolean;
  readonly isYes: (folded: string) => boolean;
  readonly isNo: (folded: string) => boolean;
  readonly isAbout: (folded: string) => boolean;
  readonly isOr: (word: string) => boolean;
  readonly isNot: (word: string) => boolean;
  /** Says that an answer is not certain, or not known at all (probably, tbc). */
  readonly isDoubt: (words: string) => boolean;
  /** Maximum or minimum. */
  readonly isMostOrLeast: (word: string) => boolean;
  /** Opens a range: from, between. */
  readonly isFrom: (word: string) => boolean;
  /** Finds what stands between two numbers: in its groups the text before, a sign or word for a range, another sign, the rest. */
  readonly betweenNumbers: RegExp;
  readonly startsTotal: (folded: string) => boolean;
  /** Fields by heading, folded and stripped of punctuation; one heading may name several. */
  readonly headings: ReadonlyMap<string, readonly HeadingMeaning[]>;
  /** Words that stand in some heading of a field: they say nothing new in its cells. */
  readonly headingWords: ReadonlyMap<string, ReadonlySet<string>>;
  /** Choices of each field. */
  readonly choices: ReadonlyMap<string, PhraseMatcher<string>>;
  readonly marks: PhraseMatcher<Language>;
  readonly ways: MeasuringWays;
  /** Whether a text may hold the words of some way; asked of every row, so cheap. */
  readonly mentionsWay: (text: string) => boolean;
  /** The way of measuring that a text names, and nothing else; undefined where it names none. */
  readonly wayNamed: (text: string) => MeasuringWay | undefined;
  /** By field: words beside a number that change nothing in it. */
  readonly asides: ReadonlyMap<string, (words: string) => boolean>;
  /** By field: whether words beside a number say that it is not what the field asks for. */
  readonly notMeant: ReadonlyMap<string, (text: string) => boolean>;
  /** By field: whether a heading that is not listed whole is about another thing. */
  readonly otherThings: ReadonlyMap<string, (heading: string) => boolean>;
}

/** Stands among the choices for words that could mean several of them, or none (cover, next to). */
export const UNCLEAR = "(unclear)";

/** The form in which headings are looked up: words only, one blank between. */
export function headingKey(text: string): string {
  return wordsOf(text).join(" ");
}

/** Makes the word lists ready. */
export function vocabularyOf(lists: WordLists): Vocabulary {
  const { common, ways = new Map() } = lists;
  const headings = new Map<string, HeadingMeaning[]>();
  const headingWords = new Map<string, Set<string>>();
  const choices = new Map<string, PhraseMatcher<string>>();
  for (const [fact, words] of lists.fields) {
    const own = new Set<string>();
    headingWords.set(fact, own);
    for (const language of LANGUAGES) {
      for (const heading of words.headings[language] ?? []) {
        for (const spelling of spellingsOf(heading)) {
          for (const word of wordsOf(spelling)) own.add(word);
          addHeading(headings, headingKey(spelling) || foldText(spelling), fact, language);
        }
      }
    }
    const listed = listedChoices(words);
    if (listed.length > 0) choices.set(fact, new PhraseMatcher(listed));
  }
  return {
    common,
    isMissing: memberOf(common.missing),
    isDitto: memberOf(common.ditto),
    isYes: memberOf(common.yes),
    isNo: memberOf(common.no),
    isAbout: memberOf(common.about),
    isOr: memberOf(common.or),
    isNot: memberOf(common.not.flatMap((word) => [word, headingKey(word)])),
    isDoubt: memberOf(
      [...common.doubt, ...common.missing]
        .filter((word) => word.match(/\p{L}/gu)?.length !== 1)
        .flatMap((word) => [word, headingKey(word)]),
    ),
    isMostOrLeast: memberOf([...common.most, ...common.least]),
    isFrom: memberOf(common.from),
    betweenNumbers: betweenNumbers(common.to),
    startsTotal: startOf(common.total),
    headings,
    headingWords,
    choices,
    asides: new Map([...lists.fields].map(([fact, words]) => [fact, memberOf(words.asides ?? [])])),
    notMeant: new Map([...lists.fields].map(([fact, words]) => [fact, notMeantOf(words)])),
    otherThings: new Map([...lists.fields].map(([fact, words]) => [fact, otherThingsOf(words)])),
    ways,
    mentionsWay: mentionedBy(ways),
    wayNamed: wayNamedBy(ways),
    marks: new PhraseMatcher(LANGUAGES.flatMap((l) => (common.marks[l] ?? []).map((mark) => [mark, l] as const))),
  };
}

/** By the longest word of each phrase, as listed and folded; no word of a way holds a sign that patterns know. */
function mentionedBy(ways: MeasuringWays): Vocabulary["mentionsWay"] {
  const telling = [...ways.values()].flatMap((way) =>
    way.words.flatMap((phrase) => {
      const longest = (words: readonly string[]): string => words.reduce((a, b) => (b.length > a.length ? b : a), "");
      return [longest(phrase.match(/\p{L}+/gu) ?? []), longest(wordsOf(phrase))].filter((word) => word !== "");
    }),
  );
  if (telling.length === 0) return () => false;
  const pattern = new RegExp([...new Set(telling)].join("|"), "iu");
  return (text) => pattern.test(text);
}

function wayNamedBy(ways: MeasuringWays): Vocabulary["wayNamed"] {
  const byWord = new Map(
    [...ways.values()].flatMap((way) => way.words.flatMap(spellingsOf).map((word) => [headingKey(word), way] as const)),
  );
  return (text) => byWord.get(headingKey(text));
}

function listedChoices(words: FieldWords): readonly (readonly [text: string, choice: string])[] {
  const meanings = [...Object.entries(words.choices ?? {}), [UNCLEAR, words.unclear ?? []] as const];
  return meanings.flatMap(([choice, texts]) => texts.flatMap(spellingsOf).map((text) => [text, choice] as const));
}

function addHeading(headings: Map<string, HeadingMeaning[]>, key: string, fact: string, language: Language): void {
  const known = headings.get(key) ?? [];
  const same = known.find((meaning) => meaning.fact === fact);
  const others = known.filter((meaning) => meaning !== same);
  headings.set(key, [...others, { fact, languages: [...(same?.languages ?? []), language] }]);
}

function betweenNumbers(to: readonly string[]): RegExp {
  const words = to.map((word) => word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&")).join("|");
  return new RegExp(
    `^(.*?)\\s*(?:(-|–|—|−|…|\\.{2,3}|÷|(?<![\\p{L}])(?:${words})(?![\\p{L}]))|([x×*+/;,&]|(?<=\\s)\\p{L}+))\\s*(?=[+-]?[\\d.,])(.*)$`,
    "iu",
  );
}

function memberOf(list: readonly string[]): (text: string) => boolean {
  const folded = new Set(list.flatMap(spellingsOf).map(foldText));
  // A text so much longer than every word of the list is none of them, whatever blanks it holds; folding is dear.
  const longest = 2 * Math.max(0, ...list.map((word) => word.length)) + 40;
  return (text) => (text.length <= longest || text.trim().length <= longest) && folded.has(foldText(text));
}

/** Whether a text begins with a listed word as a person writes it: alone, or with a blank or a colon behind it (not SUM-12). */
function startOf(list: readonly string[]): (text: string) => boolean {
  const starts = list.map(foldText);
  return (text) => {
    const folded = foldText(text);
    return starts.some((start) => folded.startsWith(start) && /^(?:$|[\s:：])/.test(folded.slice(start.length)));
  };
}
