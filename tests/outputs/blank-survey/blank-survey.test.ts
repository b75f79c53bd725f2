import { describe, expect, it } from "vitest";
import { factOf, LANGUAGES } from "../../../src/facts/index.js";
import type { BlankSurvey } from "../../../src/outputs/index.js";
import type { Survey } from "../../../src/records/index.js";
import { shippedRulebook } from "../../tools/shipped.js";
import { plainFact } from "../../tools/survey-of.js";
import {
  blank,
  build,
  filledIn,
  filledWithTexts,
  headingRowOf,
  KINDS,
  opened,
  readBack,
  surveySheet,
} from "./reading.js";

/** A row in which nothing but the name of the point is sure. */
function named<Value>(i: number): Map<string, Value | string> {
  return new Map<string, Value | string>([["point_id", `P-${i + 1}`]]);
}

/** Every word of every list, each list from its start again when it ends, the first ones `shift` rows further on. */
function wordRows(survey: BlankSurvey, shift: number): Map<string, string>[] {
  const lists = survey.columns.filter(({ words }) => words.length > 0);
  const most = Math.max(...lists.map(({ words }) => words.length));
  return Array.from({ length: most }, (_, i) => {
    const row = named<string>(i);
    lists.forEach(({ fact, words }, n) => {
      row.set(fact, words[(i + n * shift) % words.length] ?? "");
    });
    return row;
  });
}

/** Something that fits the field: the ends and the middle of what is plausible, a day, or a text like a code. */
function typedValue(fact: string, i: number): string | number | Date {
  const { kind, plausible } = factOf(fact);
  if (plausible) {
    const { lowest, highest } = plausible;
    const middle = (lowest + highest) / 2;
    return [lowest, kind === "count" ? Math.round(middle) : middle, highest][i] ?? lowest;
  }
  if (fact.endsWith("thread")) return ["M6", "M8x1", "1/4-28 UNF"][i] ?? "M6";
  if (fact === "ip_rating") return `IP6${i + 5}`;
  return kind === "date" ? new Date(Date.UTC(2026, 2, 27 + i)) : `00${i}1-2`;
}

function recordValues(survey: Survey, fact: string): readonly unknown[] {
  return survey.records.map((record) => plainFact(record.facts.get(fact)));
}

describe.each(KINDS)("a blank survey, %s, %s", (language, stage) => {
  it("is read as a survey without points and without any remark", async () => {
    const { bytes, columns, leftOut } = await blank(language, stage);
    const survey = await readBack(bytes);
    expect(survey.problems).toEqual([]);
    expect(survey.records).toEqual([]);
    expect(survey.sheets.map(({ used, language: found }) => [used, found])).toEqual([
      [true, language],
      [false, null],
      [false, null],
    ]);
    expect(survey.columns.map(({ heading, facts }) => [heading, facts[0]])).toEqual(
      columns.map(({ heading, fact }) => [heading, fact]),
    );
    for (const { facts, unit } of survey.columns) expect(unit).toBe(factOf(facts[0] ?? "").unit ?? null);
    expect(leftOut).toEqual([]);
  });

  it("has a word for every choice that the lists know", async () => {
    const { words } = await shippedRulebook();
    for (const { fact, words: offered } of (await blank(language, stage)).columns) {
      if (factOf(fact).kind !== "choice") continue;
      const known = Object.entries(words.fields.get(fact)?.choices ?? {}).filter(([, texts]) => texts.length > 0);
      expect(offered.length, fact).toBe(known.length);
      expect(new Set(offered).size, fact).toBe(offered.length);
    }
  });

  it("reads every word of every list back as its choice, whatever stands beside it", async () => {
    const blankOne = await blank(language, stage);
    const { words } = await shippedRulebook();
    const rows = [0, 1, 3].flatMap((shift) => wordRows(blankOne, shift));
    const survey = await filledWithTexts(blankOne, rows);
    expect(survey.problems).toEqual([]);
    expect(survey.records).toHaveLength(rows.length);
    for (const { fact, words: offered } of blankOne.columns) {
      if (offered.length === 0 || factOf(fact).kind !== "choice") continue;
      const choices = words.fields.get(fact)?.choices ?? {};
      const values = recordValues(survey, fact);
      rows.forEach((row, i) => {
        const typed = String(row.get(fact)).toLowerCase();
        const choice = String(values[i]);
        expect(choices[choice]?.map((text) => text.toLowerCase()) ?? [], `${fact}: ${typed}`).toContain(typed);
      });
      // One choice each: two words that fell together would show here.
      expect(new Set(values).size, fact).toBe(offered.length);
    }
  });

  it("reads numbers, days and texts exactly, and takes no unit for granted", async () => {
    const blankOne = await blank(language, stage);
    const typed = blankOne.columns.filter(({ words }) => words.length === 0);
    const rows = [0, 1, 2].map((i) => {
      const row = named<string | number | Date>(i);
      for (const { fact } of typed) row.set(fact, typedValue(fact, i));
      return row;
    });
    const survey = await filledIn(blankOne, rows);
    expect(survey.problems).toEqual([]);
    for (const { fact } of typed) {
      const wanted = rows.map((row) => row.get(fact));
      const plain = wanted.map((value) => (value instanceof Date ? value.toISOString().slice(0, 10) : value));
      expect(recordValues(survey, fact), fact).toEqual(plain);
    }
    for (const record of survey.records)
      for (const [fact, state] of record.facts) expect(state.known && state.assumed, fact).toBeFalsy();
  });

  it('leaves open what is empty, "-" or "tbc", without a remark', async () => {
    const blankOne = await blank(language, stage);
    const rows = ["-", "tbc"].map((nothing, i) => {
      const row = named<string>(i);
      for (const { fact } of blankOne.columns) if (fact !== "point_id") row.set(fact, nothing);
      return row;
    });
    const survey = await filledWithTexts(blankOne, [
      ...rows,
      new Map([
        ["point_id", "P-9"],
        ["asset_tag", "P-9"],
      ]),
    ]);
    expect(survey.problems).toEqual([]);
    expect(survey.records).toHaveLength(3);
    for (const { fact } of blankOne.columns) {
      if (fact === "point_id" || fact === "asset_tag") continue;
      expect(new Set(recordValues(survey, fact)), fact).toEqual(new Set(["(missing)"]));
    }
  });

  it("gives the same bytes again", async () => {
    const [one, other] = [await blank(language, stage), await build(language, stage)];
    expect(Buffer.from(one.bytes).equals(Buffer.from(other.bytes))).toBe(true);
  });

  it("checks and explains every cell of 500 rows", async () => {
    const blankOne = await blank(language, stage);
    const workbook = await opened(blankOne.bytes);
    const sheet = surveySheet(workbook);
    const first = headingRowOf(sheet) + 1;
    blankOne.columns.forEach(({ fact, words }, i) => {
      const check = sheet.getCell(first, i + 1).dataValidation;
      expect(sheet.getCell(first + 499, i + 1).dataValidation, fact).toEqual(check);
      expect(sheet.getCell(first + 500, i + 1).dataValidation, fact).toBeUndefined();
      for (const text of [check.prompt, check.error ?? ""]) expect(text?.length, text).toBeLessThanOrEqual(255);
      for (const text of [check.promptTitle, check.errorTitle ?? ""])
        expect(text?.length, text).toBeLessThanOrEqual(32);
      expect(check.prompt, fact).not.toMatch(/[{}…]/);
      expect(check.error ?? "", fact).not.toMatch(/[{}…]/);
      const { plausible } = factOf(fact);
      if (plausible) {
        const at = sheet.getCell(first, i + 1).address;
        expect(check.formulae[0]).toContain(`${at}>=${plausible.lowest},${at}<=${plausible.highest}`);
      }
      if (words.length > 0) {
        expect(check.type).toBe("list");
        const [name = "", from, to] = String(check.formulae[0])
          .split(/!?\$A\$|:/)
          .filter((part) => part !== "");
        const lists = workbook.getWorksheet(name);
        const stored = words.map((_, n) => lists?.getCell(Number(from) + n, 1).value);
        expect(stored).toEqual(words);
        expect(Number(to) - Number(from) + 1).toBe(words.length);
      }
    });
  });
});

describe("the words of blank surveys", () => {
  it("ask at both stages what the rules need then", async () => {
    const facts = async (stage: "proposed" | "installed") => (await blank("en", stage)).columns.map(({ fact }) => fact);
    const proposed = await facts("proposed");
    for (const fact of ["lowest_speed", "mounted_on", "flat_diameter", "hole_depth", "target_torque", "supply_kind"])
      expect(proposed).toContain(fact);
    expect(proposed).not.toContain("applied_torque");
    const installed = await facts("installed");
    for (const fact of [...proposed, "applied_torque", "voltage_at_sensor", "sensor_serial", "baseline_velocity"])
      expect(installed).toContain(fact);
  });

  it("are the same in number and kind in every language", async () => {
    const all = await Promise.all(LANGUAGES.map((language) => blank(language, "installed")));
    for (const { columns } of all)
      expect(columns.map(({ fact, words }) => [fact, words.length])).toEqual(
        all[0]?.columns.map(({ fact, words }) => [fact, words.length]),
      );
  });
});
