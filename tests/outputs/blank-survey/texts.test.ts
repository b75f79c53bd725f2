import { describe, expect, it } from "vitest";
import { LANGUAGES } from "../../../src/facts/index.js";
import { BLANK_TEXTS } from "../../../src/outputs/blank-survey/texts/by-language.js";
import { CAUTIONS } from "../../../src/screening/cautions.js";
import { shippedRulebook } from "../../tools/shipped.js";
import { blank } from "./reading.js";

describe("the texts of a blank survey", () => {
  it("say the cautions that go with every output; their translations are as many", () => {
    expect(BLANK_TEXTS.en.cautions).toEqual(CAUTIONS);
    for (const language of LANGUAGES) expect(BLANK_TEXTS[language].cautions).toHaveLength(CAUTIONS.length);
  });

  it.each(LANGUAGES)("take their words from the word lists: %s", async (language) => {
    const { words } = await shippedRulebook();
    const { columns } = await blank(language, "installed");
    const offered = new Map(columns.map(({ fact, words: list }) => [fact, list]));
    for (const [fact, byChoice] of Object.entries(BLANK_TEXTS[language].words)) {
      for (const [choice, word] of Object.entries(byChoice)) {
        const listed = words.fields.get(fact)?.choices?.[choice]?.map((text) => text.toLowerCase());
        expect(listed, `${fact}: ${choice}`).toContain(word.toLowerCase());
        expect(offered.get(fact), `${fact}: ${choice}`).toContain(word);
      }
    }
  });

  it("give advice on the same fields in every language", () => {
    for (const language of LANGUAGES) {
      expect(Object.keys(BLANK_TEXTS[language].advice)).toEqual(Object.keys(BLANK_TEXTS.en.advice));
    }
  });
});
