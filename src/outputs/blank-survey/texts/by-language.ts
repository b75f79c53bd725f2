import type { Language } from "../../../facts/index.js";
import type { BlankTexts } from "./blank-texts.js";
import { ENGLISH } from "./english.js";
import { FRENCH } from "./french.js";
import { GERMAN } from "./german.js";
import { SPANISH } from "./spanish.js";

/** What a blank survey says, by language. */
export const BLANK_TEXTS: Readonly<Record<Language, BlankTexts>> = {
  en: ENGLISH,
  de: GERMAN,
  es: SPANISH,
  fr: FRENCH,
};
