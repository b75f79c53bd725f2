import type { Language } from "../../../facts/index.js";
import type { BlankTexts, FieldTexts } from "./blank-texts.js";
import { ENGLISH } from "./english.js";
import { FRENCH } from "./french.js";
import { GERMAN } from "./german.js";
import { REACH_ENGLISH } from "./reach-english.js";
import { REACH_FRENCH } from "./reach-french.js";
import { REACH_GERMAN } from "./reach-german.js";
import { REACH_SPANISH } from "./reach-spanish.js";
import { RUNNING_ENGLISH } from "./running-english.js";
import { RUNNING_FRENCH } from "./running-french.js";
import { RUNNING_GERMAN } from "./running-german.js";
import { RUNNING_SPANISH } from "./running-spanish.js";
import { SPANISH } from "./spanish.js";

/** What a blank survey says, by language. */
export const BLANK_TEXTS: Readonly<Record<Language, BlankTexts>> = {
  en: withFields(ENGLISH, [RUNNING_ENGLISH, REACH_ENGLISH]),
  de: withFields(GERMAN, [RUNNING_GERMAN, REACH_GERMAN]),
  es: withFields(SPANISH, [RUNNING_SPANISH, REACH_SPANISH]),
  fr: withFields(FRENCH, [RUNNING_FRENCH, REACH_FRENCH]),
};

function withFields(texts: BlankTexts, more: readonly FieldTexts[]): BlankTexts {
  const all = [texts, ...more];
  return {
    ...texts,
    advice: Object.assign({}, ...all.map(({ advice }) => advice)),
    words: Object.assign({}, ...all.map(({ words }) => words)),
  };
}
