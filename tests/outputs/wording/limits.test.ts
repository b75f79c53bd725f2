import { describe, expect, it } from "vitest";
import {
  boundInWords,
  factValueInWords,
  limitInWords,
  marginInWords,
  whereBroken,
} from "../../../src/outputs/wording/facts.js";
import type { LimitSpoken } from "../../../src/rulebook/index.js";
import type { FactShown } from "../../../src/screening/index.js";

function limit(is: LimitSpoken["is"], value: LimitSpoken["value"], unit: string | null, fact: string | null = null) {
  const origin = { file: "rules/x.yaml", line: 1 };
  return { is, value, unit, from: "2026-01-01", fact, origin, cites: [] } satisfies LimitSpoken;
}

describe("a limit in words", () => {
  it.each<[LimitSpoken["is"], LimitSpoken["value"], string | null, string]>([
    ["below", 9, "mm", "not below 9 mm"],
    ["above", 10, "N·m", "not above 10 N·m"],
    // What fails at 600 r/min asks for more than that; what fails at 80 °C for less.
    ["atOrBelow", 600, "r/min", "above 600 r/min"],
    ["atOrAbove", 80, "°C", "below 80 °C"],
    ["outside", [20.4, 28.8], "V", "20.4 to 28.8 V"],
    ["oneOf", ["painted", "otherwise-coated"], null, "none of: painted, otherwise coated"],
    ["noneOf", ["solid"], null, "one of: solid"],
    ["when", null, null, "as the rule demands"],
    ["below", null, "mm", "not below a value that is not known"],
  ])("says what is asked for: %s %j %s", (is, value, unit, words) => {
    expect(limitInWords(limit(is, value, unit))).toBe(words);
  });

  it("names the fact that it is", () => {
    expect(limitInWords(limit("below", 30, "mm", "model.seat_diameter_min"))).toMatch(
      /^not below 30 mm \(.*model.*\)$/,
    );
  });

  it.each([
    [{ value: -2, fraction: -0.0666 }, "mm", "2 mm beyond the limit (6.66 %)"],
    [{ value: 3, fraction: 0.2 }, "mm", "3 mm to spare (20 %)"],
    [{ value: 0, fraction: 0 }, "mm", "on the limit"],
    // The difference of two temperatures is no temperature.
    [{ value: -5, fraction: null }, "°C", "5 K beyond the limit"],
  ])("says how far off a value lies: %j %s", (margin, unit, words) => {
    expect(marginInWords(margin, unit)).toBe(words);
  });

  it.each([
    [{ value: 9, fact: null, times: 1, plus: 0 }, "mm", "9 mm"],
    [{ value: null, fact: "hole_depth", times: 1, plus: 0 }, "mm", "the hole depth"],
    [{ value: null, fact: "hole_depth", times: 1.1, plus: 0 }, "mm", "1.1 × the hole depth"],
    [{ value: null, fact: "hole_depth", times: 1, plus: 2 }, "mm", "the hole depth + 2 mm"],
    [{ value: null, fact: "ambient_max", times: 1, plus: -10 }, "°C", /^the .* − 10 K$/],
  ])("says what a bound is: %j %s", (bound, unit, words) => {
    if (typeof words === "string") expect(boundInWords(bound, unit)).toBe(words);
    else expect(boundInWords(bound, unit)).toMatch(words);
  });

  it.each([
    ["below", "where it is below 9 mm"],
    ["above", "where it is above 9 mm"],
    ["atOrBelow", "where it is not above 9 mm"],
    ["atOrAbove", "where it is not below 9 mm"],
  ] as const)("says where it is broken: %s", (is, words) => {
    const bounds = [{ value: 9, fact: null, times: 1, plus: 0 }];
    expect(whereBroken({ outcome: "fail", is, bounds, unit: "mm", choices: [], condition: null }, "it")).toBe(words);
  });
});

describe("a value in words", () => {
  const fact = (parts: Partial<FactShown>): FactShown => ({
    ...{ fact: "nominal_speed", value: null, lowest: null, highest: null, unit: "r/min" },
    ...{ accuracy: null, assumed: null, cells: [], origin: null },
    ...parts,
  });

  it.each<[Partial<FactShown>, string]>([
    [{ value: 1480, lowest: 1480, highest: 1480 }, "1480 r/min"],
    [{ value: 1480, lowest: 1475, highest: 1485, accuracy: 5 }, "1480 r/min ± 5 r/min"],
    [{ lowest: 600, highest: 1480 }, "600 to 1480 r/min"],
    [{ highest: 1480 }, "at most 1480 r/min"],
    [{ lowest: 600 }, "at least 600 r/min"],
    [{}, "not known"],
    [{ fact: "variable_speed", value: true, unit: null }, "yes"],
    [{ fact: "mounting_method", value: "adhesive-pad", unit: null }, "adhesive pad"],
    [{ fact: "supply_name", value: "PSU-adhesive-1", unit: null }, "PSU-adhesive-1"],
  ])("%j", (parts, words) => {
    expect(factValueInWords(fact(parts))).toBe(words);
  });
});
