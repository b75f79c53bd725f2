import { describe, expect, it } from "vitest";
import { formatNumber } from "../../../src/base/index.js";
import { factName } from "../../../src/facts/index.js";
import {
  factValueInWords,
  limitInForceInWords,
  limitInWords,
  markedOutcome,
  pointInWords,
  rowInWords,
} from "../../../src/outputs/index.js";
import { COATED_SEAT, fact, point, SUPPLY_OUTSIDE, THREAD_TOO_SHORT } from "../fake-findings.js";
import { HEAD } from "../fake-head.js";

describe("formatNumber", () => {
  it.each([
    [7.5, "mm", "7.5 mm"],
    [-0, "V", "0 V"],
    [1480, "r/min", "1480 r/min"],
    [0.1 + 0.2, "mm", "0.3 mm"],
    [1234567.89, null, "1234570"],
    [12.5, "%", "12.5 %"],
    [90, "deg", "90°"],
    [1, "pitches", "1 pitch"],
    [2, "pitches", "2 pitches"],
    [1, "spectral lines", "1 spectral line"],
  ])("shows %d %s as %s", (value, unit, shown) => expect(formatNumber(value, unit)).toBe(shown));
});

describe("facts in words", () => {
  it("names facts as the catalogue does, others by their id", () => {
    expect([factName("thread_depth"), factName("table.tap_drill")]).toEqual(["depth of full thread", "tap drill"]);
  });

  it.each([
    [fact({ value: 7.5, unit: "mm", accuracy: 0.2 }), "7.5 mm ± 0.2 mm"],
    [fact({ lowest: 600, highest: 1480, unit: "r/min" }), "600 to 1480 r/min"],
    [fact({ highest: 1480, unit: "r/min" }), "at most 1480 r/min"],
    [fact({ lowest: 600, unit: "r/min" }), "at least 600 r/min"],
    [fact({ fact: "seat", value: "not-solid" }), "not solid"],
    [fact({ fact: "point_id", value: "P-1" }), "P-1"],
    [fact({ value: false }), "no"],
    [fact({}), "not known"],
  ])("says what was found (%#)", (shown, words) => expect(factValueInWords(shown)).toBe(words));

  it("says what the limits of the book are", () => {
    const rule = HEAD.rules[0];
    expect(rule?.limits.map((limit) => limitInForceInWords(limit, rule.judged))).toEqual([
      "fails where depth of full thread is below 1.1 × the full thread the bolt of the model needs − 0.5 mm; from 2026-01-01",
      "fails where depth of full thread is outside 9 mm to 12.5 mm; from 2026-01-01",
      "fails where depth of full thread is one of: not solid; from 2026-01-01",
      "warns where stage is proposed; from 2026-01-01 until 2027-01-01",
    ]);
  });

  it("says what limits ask for", () => {
    const limits = [THREAD_TOO_SHORT, SUPPLY_OUTSIDE, COATED_SEAT].map((f) => f.limit && limitInWords(f.limit));
    expect(limits).toEqual([
      "not below 9 mm (full thread the bolt of the model needs)",
      "20.4 to 28.8 V",
      "none of: coated",
    ]);
  });
});

describe("places in words", () => {
  it("says machine, bearing and direction where they are known", () => {
    expect(pointInWords(point(4, "pass", []))).toBe("cooling water pump 3, drive end, horizontal");
  });

  it("falls back on the point, then on the row", () => {
    const bare = { ...point(4, "pass", []), machine: null, component: null, bearingPosition: null, direction: null };
    expect(pointInWords(bare)).toBe("P-4");
    expect(pointInWords({ ...bare, point: null })).toBe("survey.xlsx > Pumps, row 4");
    expect(rowInWords({ file: "a.csv", sheet: null, row: 2 })).toBe("a.csv, line 2");
  });
});

it("marks outcomes by shape and word", () => {
  const marked = (["pass", "warn", "fail", "undecided"] as const).map(markedOutcome);
  expect(marked).toEqual(["● pass", "▲ warn", "■ fail", "◇ undecided"]);
  expect(new Set(marked.map((text) => text[0])).size).toBe(4);
});
