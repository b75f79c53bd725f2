import { describe, expect, it } from "vitest";
import { type FieldWords, factOf, SURVEY_FACTS } from "../../../src/facts/index.js";
import { blankSurvey } from "../../../src/outputs/index.js";
import type { Rulebook } from "../../../src/rulebook/index.js";
import { shippedRulebook } from "../../tools/shipped.js";
import { filledWithTexts, headingRowOf, opened, readBack, surveySheet } from "./reading.js";

const PROGRAM = { name: "spotface", version: "0.0.0" };

/** A rulebook with a rule that speaks of every field there is, below a named condition. */
async function demandingBook(): Promise<Rulebook> {
  const book = await shippedRulebook();
  const parts = SURVEY_FACTS.map(({ id }) => ({ kind: "comparison", fact: id, operator: "equal", value: 1 }) as const);
  const [rule] = book.rules;
  if (!rule) throw new Error("no rule");
  return {
    ...book,
    conditions: new Map([["everything", { kind: "any", parts } as const]]),
    rules: [{ ...rule, appliesWhen: { kind: "not", part: { kind: "named", name: "everything" } } }],
  };
}

async function bookWith(fact: string, words: FieldWords): Promise<Rulebook> {
  const book = await shippedRulebook();
  return { ...book, words: { ...book.words, fields: new Map([...book.words.fields, [fact, words]]) } };
}

describe("a blank survey of another rulebook", () => {
  it("has a column for every field, each read back as itself, also where no advice is written", async () => {
    const rulebook = await demandingBook();
    const survey = await blankSurvey({ rulebook, language: "de", stage: "installed", program: PROGRAM });
    expect(survey.leftOut).toEqual([]);
    expect(survey.columns.map(({ fact }) => fact)).toEqual(SURVEY_FACTS.map(({ id }) => id));
    const { columns, problems } = await readBack(survey.bytes);
    expect(problems).toEqual([]);
    expect(columns.map(({ facts }) => facts[0])).toEqual(SURVEY_FACTS.map(({ id }) => id));
    const rows = ["ja", "nein"].map(
      (answer, i) =>
        new Map(
          survey.columns.map(({ fact, words }) => [
            fact,
            fact === "point_id" ? `P-${i}` : words.length > 0 ? answer : "",
          ]),
        ),
    );
    const yesNo = new Set(survey.columns.map(({ fact }) => fact).filter((fact) => factOf(fact).kind === "yes-no"));
    expect(yesNo.size).toBeGreaterThan(3);
    const answers = rows.map((row) => new Map([...row].filter(([fact]) => fact === "point_id" || yesNo.has(fact))));
    const filled = await filledWithTexts(survey, answers);
    expect(filled.problems).toEqual([]);
    for (const fact of yesNo) {
      const values = filled.records.map((record) => record.facts.get(fact));
      expect(
        values.map((state) => state?.known && state.value),
        fact,
      ).toEqual([true, false]);
    }
    const sheet = surveySheet(await opened(survey.bytes));
    const teeth = survey.columns.findIndex(({ fact }) => fact === "gear_teeth");
    const check = sheet.getCell(headingRowOf(sheet) + 1, teeth + 1).dataValidation;
    expect(String(check.formulae[0])).toContain("INT(");
  });

  it("takes the next heading or word where the first one means something else", async () => {
    const rulebook = await bookWith("mounting_method", {
      headings: { en: ["Direction", "Fixing of the sensor"] },
      choices: { magnet: ["band"], clamp: ["band", "clip"] },
    });
    const survey = await blankSurvey({ rulebook, language: "en", stage: "proposed", program: PROGRAM });
    const column = survey.columns.find(({ fact }) => fact === "mounting_method");
    expect(column).toEqual({
      fact: "mounting_method",
      heading: "Fixing of the sensor",
      words: ["band", "clip"],
    });
  });

  it("says which field no heading names", async () => {
    const rulebook = await bookWith("hole_depth", { headings: {} });
    const survey = await blankSurvey({ rulebook, language: "fr", stage: "proposed", program: PROGRAM });
    expect(survey.leftOut).toEqual([factOf("hole_depth").name]);
    expect(survey.columns.map(({ fact }) => fact)).not.toContain("hole_depth");
  });
});
