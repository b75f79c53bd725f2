import { sha256OfData, type TextFile } from "../../base/index.js";
import { type FieldWords, LANGUAGES, type WordLists } from "../../facts/index.js";
import type { FileFinding, PlaceOfWord } from "../book/rulebook.js";
import { checkChoices } from "../reading/word-reading.js";
import { WORDS_SCHEMA } from "../schemas/index.js";
import { checkSchema } from "../text/check-schema.js";
import { RULEBOOK_LIMITS } from "../text/file-limits.js";
import type { RawWords } from "../text/raw.js";
import { readYaml } from "../text/read-yaml.js";
import { below, Report } from "../text/source.js";

/** Words that a site adds to those of the rulebook. */
export interface AddedWords {
  readonly file: string;
  /** SHA-256 of the canonical JSON of the file's data. */
  readonly digest: string;
  readonly fields: ReadonlyMap<string, FieldWords>;
  readonly placeOfWord: PlaceOfWord;
}

/** A word file of a site, or what is wrong with it. */
export type WordFileReading =
  | { readonly ok: true; readonly words: AddedWords }
  | { readonly ok: false; readonly findings: readonly FileFinding[] };

/** Reads a word file of a site: it has the form of the rulebook's own, without common words and examples. */
export function readWordFile(file: TextFile): WordFileReading {
  const reading = readYaml(file, RULEBOOK_LIMITS);
  if (!reading.ok) return reading;
  const findings: FileFinding[] = [];
  const report = new Report(reading.source, findings);
  if (!checkSchema(reading.source, WORDS_SCHEMA, report)) return { ok: false, findings };
  const raw = reading.source.data as RawWords;
  if (raw.common) {
    const text = "the common words belong to the rulebook; a site adds headings and words of fields, so leave them out";
    report.atKey("/common", "not-for-sites", text);
  }
  const fields = new Map<string, FieldWords>();
  for (const [id, words] of Object.entries(raw.fields ?? {})) {
    checkChoices(id, words, below("/fields", id, "choices"), report);
    if (words.examples) {
      const text =
        "examples are run by the tests of the rulebook alone; leave them out, so that nobody thinks they were run";
      report.atKey(below("/fields", id, "examples"), "not-for-sites", text);
    }
    fields.set(id, { ...words, headings: words.headings ?? {} });
  }
  if (findings.length > 0) return { ok: false, findings };
  const placeOfWord: PlaceOfWord = (fact, steps) => report.placeOf(below("/fields", fact, ...steps));
  return { ok: true, words: { file: file.path, digest: sha256OfData(raw), fields, placeOfWord } };
}

/** The word lists with the words of a site added behind those of the rulebook. */
export function addWords(lists: WordLists, added: AddedWords): WordLists {
  const fields = new Map(lists.fields);
  for (const [id, words] of added.fields) {
    const known = fields.get(id);
    fields.set(id, known ? joined(known, words) : words);
  }
  return { common: lists.common, fields };
}

function joined(known: FieldWords, added: FieldWords): FieldWords {
  const both = (a: readonly string[] = [], b: readonly string[] = []): readonly string[] => [...new Set([...a, ...b])];
  const choices = new Set([...Object.keys(known.choices ?? {}), ...Object.keys(added.choices ?? {})]);
  return {
    ...known,
    headings: Object.fromEntries(LANGUAGES.map((l) => [l, both(known.headings[l], added.headings[l])])),
    ...(choices.size === 0
      ? {}
      : {
          choices: Object.fromEntries([...choices].map((id) => [id, both(known.choices?.[id], added.choices?.[id])])),
        }),
    unclear: both(known.unclear, added.unclear),
    otherThings: both(known.otherThings, added.otherThings),
    itsOwn: both(known.itsOwn, added.itsOwn),
    notMeant: both(known.notMeant, added.notMeant),
    asides: both(known.asides, added.asides),
  };
}
