import { describe, expect, it } from "vitest";
import { GOOD_POINT, known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";

/** The turns of the shaft in one record rest on the lines of the spectrum and on its highest frequency. */
const RULE = "turns-in-record";

async function rulesOf(rows: Parameters<typeof surveyOf>[0]) {
  const { screening, points } = screenRows(await shippedRulebook(), [surveyOf(rows)], { set: "full" });
  const notAsked = screening.head.surveys.flatMap((survey) => survey.notAsked);
  return {
    notAsked: notAsked.find(({ rule }) => rule === RULE)?.facts ?? null,
    outcomes: points.map(({ findings }) => findings.find(({ rule }) => rule === RULE)?.outcome ?? null),
  };
}

describe("a rule that needs two facts of which one has no column", () => {
  const lines = known(1600);
  // Lowest and highest speed need no column where a single speed is stated; they would help, too.

  it("is not asked, also where a row leaves the other one blank", async () => {
    const rows = [
      { ...GOOD_POINT, spectrum_lines: unknown("missing") },
      { ...GOOD_POINT, spectrum_lines: lines },
    ];
    const found = { notAsked: ["lowest_speed", "highest_frequency"], outcomes: [null, null] };
    expect(await rulesOf(rows)).toEqual(found);
    expect(await rulesOf([...rows].reverse())).toEqual(found);
  });

  it("is asked as soon as the column is there, and then open on the rows that leave it blank", async () => {
    const rows = [
      { ...GOOD_POINT, spectrum_lines: lines, highest_frequency: unknown("missing") },
      { ...GOOD_POINT, spectrum_lines: unknown("missing"), highest_frequency: known(1000) },
    ];
    expect(await rulesOf(rows)).toEqual({ notAsked: null, outcomes: ["undecided", "undecided"] });
  });
});
