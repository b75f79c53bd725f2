import { foldText } from "../../base/index.js";
import type { FieldWords } from "../../facts/index.js";
import { spellingsOf, stemOf, wordsOf } from "./tokens.js";
import { headingKey } from "./vocabulary.js";

/** Where a word stands: its fact, and the steps below it (headings, de, 3). */
export interface WordPlace {
  readonly fact: string;
  readonly steps: readonly (string | number)[];
}

/** An added word that already means something else. */
export interface WordClash {
  readonly word: string;
  readonly added: WordPlace;
  readonly known: WordPlace;
  /** What it contradicts stands among the added words themselves. */
  readonly within: boolean;
  /** What it means already, in words. */
  readonly meaning: string;
}

interface Meant extends WordPlace {
  readonly word: string;
  /** Words of one kind can contradict each other where they have the same form. */
  readonly kind: string;
  readonly form: string;
  readonly meaning: string;
}

/**
 * Added words that mean something else in the lists that are there: a heading of another fact, a word of another
 * choice of its fact, a word that is said to leave the choice open or to speak of another thing. A heading that the
 * lists give to several facts may be said again of any of them.
 */
export function wordClashes(
  known: ReadonlyMap<string, FieldWords>,
  added: ReadonlyMap<string, FieldWords>,
): readonly WordClash[] {
  const byForm = new Map<string, Meant[]>();
  for (const meant of meaningsOf(known)) {
    const key = `${meant.kind}\n${meant.form}`;
    byForm.set(key, [...(byForm.get(key) ?? []), meant]);
  }
  const before = new Map<string, Meant>();
  return [...meaningsOf(added)].flatMap((meant): WordClash[] => {
    const key = `${meant.kind}\n${meant.form}`;
    const same = byForm.get(key) ?? [];
    const own = before.get(key);
    before.set(key, own ?? meant);
    const clash = { word: meant.word, added: meant };
    if (own && own.meaning !== meant.meaning) return [{ ...clash, known: own, meaning: own.meaning, within: true }];
    const other = same.find(({ meaning }) => meaning !== meant.meaning);
    if (!other || same.some(({ meaning }) => meaning === meant.meaning)) return [];
    return [{ ...clash, known: other, meaning: other.meaning, within: false }];
  });
}

function* meaningsOf(fields: ReadonlyMap<string, FieldWords>): Iterable<Meant> {
  for (const [fact, words] of fields) {
    for (const [language, headings] of Object.entries(words.headings)) {
      for (const [i, word] of headings.entries()) {
        const place = { fact, steps: ["headings", language, i], word, kind: "heading" };
        for (const form of spellingsOf(word).map((one) => headingKey(one) || foldText(one))) {
          yield { ...place, form, meaning: `a heading of ${fact}` };
        }
      }
    }
    for (const [choice, texts] of Object.entries(words.choices ?? {})) {
      yield* wordsMeant(fact, ["choices", choice], texts, "choice", `${choice} of ${fact}`);
    }
    yield* wordsMeant(fact, ["unclear"], words.unclear ?? [], "choice", `no certain choice of ${fact}`);
    yield* wordsMeant(fact, ["otherThings"], words.otherThings ?? [], "thing", `another thing than ${fact}`);
    yield* wordsMeant(fact, ["itsOwn"], words.itsOwn ?? [], "thing", `${fact} itself`);
    yield* wordsMeant(fact, ["notMeant"], words.notMeant ?? [], "remark", `that a number is not ${fact}`);
    yield* wordsMeant(fact, ["asides"], words.asides ?? [], "remark", `nothing beside a number of ${fact}`);
  }
}

function* wordsMeant(
  fact: string,
  steps: readonly (string | number)[],
  texts: readonly string[],
  kind: string,
  meaning: string,
): Iterable<Meant> {
  for (const [i, word] of texts.entries()) {
    for (const spelling of spellingsOf(word)) {
      const form = wordsOf(spelling).map(stemOf).join(" ") || foldText(spelling);
      yield { fact, steps: [...steps, i], word, kind: `${kind} of ${fact}`, form, meaning };
    }
  }
}
