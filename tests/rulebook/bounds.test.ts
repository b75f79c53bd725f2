import { describe, expect, it } from "vitest";
import { engineRules } from "../../src/rulebook/index.js";
import { bookWith, judge, limit } from "./made-rule.js";

describe("a scaled or shifted bound", () => {
  it("is converted to the unit of the judged fact, then scaled, then shifted", () => {
    const lines = `judges: paint_thickness\n${limit("fail: { above: { fact: thread_depth, times: 0.5, plus: 100 µm } }")}`;
    expect(judge(lines, { thread_depth: 2, paint_thickness: 1100 })).toMatchObject({
      outcome: "pass",
      limit: { is: "above", value: 1100, unit: "µm", fact: "thread_depth" },
      margin: { value: 0, fraction: 0 },
    });
    expect(judge(lines, { thread_depth: 2, paint_thickness: 1100.1 })).toMatchObject({
      outcome: "fail",
      margin: { value: -0.1, fraction: -0.0000909090909091 },
    });
  });

  it("is rounded to 12 digits, so that 24 V × 1.2 is 28.8 V", () => {
    const lines = `judges: voltage_at_sensor\n${limit("fail: { above: { fact: supply_voltage, times: 1.2 } }")}`;
    expect(judge(lines, { supply_voltage: 24, voltage_at_sensor: 28.8 }).outcome).toBe("pass");
  });

  it("shifts a temperature by a difference, in K or °F", () => {
    for (const shift of ["-10 K", "-18 °F"]) {
      const lines = `judges: surface_temperature\n${limit(`fail: { above: { fact: ambient_max, plus: "${shift}" } }`)}`;
      expect(judge(lines, { ambient_max: 50, surface_temperature: 40 })).toMatchObject({
        outcome: "pass",
        limit: { value: 40, unit: "°C" },
        margin: { value: 0, fraction: null },
      });
    }
  });

  it("turns an interval round when scaled below zero", () => {
    const lines = `judges: surface_temperature\n${limit("fail: { above: 60 °C }")}`;
    expect(judge(lines, { surface_temperature: { lowest: 50, highest: 59 } }).margin).toEqual({
      value: 1,
      fraction: null,
    });
    const scaled = `judges: hole_depth\n${limit("fail: { below: { fact: thread_depth, times: -1, plus: 20 mm } }")}`;
    const facts = { thread_depth: { lowest: 5, highest: 8 } };
    expect(judge(scaled, { ...facts, hole_depth: 15 })).toMatchObject({ outcome: "pass", limit: { value: 15 } });
    expect(judge(scaled, { ...facts, hole_depth: 13 })).toMatchObject({
      outcome: "undecided",
      open: [{ fact: "thread_depth", reason: "too-close" }],
    });
    expect(judge(scaled, { ...facts, hole_depth: 11.9 }).outcome).toBe("fail");
  });

  it("becomes a fact of its own for the reference engine", () => {
    const lines = `judges: paint_thickness\n${limit("fail: [{ above: { fact: thread_depth } }, { above: { fact: wall_thickness, times: 2 } }]")}`;
    const { rule, book } = bookWith(lines);
    const rules = engineRules(rule, book, { stage: "proposed", asOf: "2026-06-01" });
    expect(rules?.fail).toEqual({
      all: [
        {
          any: [
            { fact: "paint_thickness", operator: "greaterThan", value: { fact: "bound:made:1" } },
            { fact: "paint_thickness", operator: "greaterThan", value: { fact: "bound:made:2" } },
          ],
        },
      ],
    });
    const [stage, first, second] = rules?.computed ?? [];
    expect(stage?.compute([])).toBe("proposed");
    expect([first?.needs, first?.compute([9])]).toEqual([["thread_depth"], 9000]);
    expect([second?.needs, second?.compute([9])]).toEqual([["wall_thickness"], 18_000]);
  });
});

describe("two facts in a condition", () => {
  it("are compared in one unit", () => {
    const lines = limit(
      "fail: { when: { fact: paint_thickness, operator: greaterThanInclusive, value: { fact: thread_depth } } }",
    );
    expect(judge(lines, { paint_thickness: 9000, thread_depth: 9 }).outcome).toBe("fail");
    expect(judge(lines, { paint_thickness: 8999, thread_depth: 9 }).outcome).toBe("pass");
  });
});
