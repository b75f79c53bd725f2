import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { FactState } from "../../src/facts/index.js";
import { placesIn } from "../../src/moving/index.js";
import { GOOD_POINT, known, surveyOf, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";
import { inputOf, movedIn, moveIn } from "./moved.js";

/** A number known to an accuracy. */
function within(value: number, accuracy: number): FactState {
  return { ...known(value), value: { lowest: value - accuracy, highest: value + accuracy }, accuracy };
}

async function cureOf(times: readonly FactState[]) {
  const bonded = { ...GOOD_POINT, mounting_method: known("adhesive-pad") };
  const rows = times.map((time, i) => ({ ...bonded, point_id: known(`P${i}`), cure_time: time }));
  return inputOf(await shippedRulebook(), {}, [surveyOf(rows)]);
}

describe("moving a limit", () => {
  it("tells exactly where counts move, and which end belongs to which side", async () => {
    const input = await cureOf([known(10), known(20), within(30, 2), unknown("missing")]);
    const { stretches } = movedIn(input, "adhesive-cure", { from: 5, to: 40 });
    expect(
      stretches.map(({ from, fromIncluded, to, toIncluded, counted: { rule, points } }) => [
        `${fromIncluded ? "[" : "("}${from}, ${to}${toIncluded ? "]" : ")"}`,
        rule.fail,
        rule.undecided,
        rule.pass,
        points,
      ]),
    ).toEqual([
      ["[5, 10]", 0, 1, 3, { pass: 3, warn: 1, fail: 0 }],
      ["(10, 20]", 1, 1, 2, { pass: 2, warn: 1, fail: 1 }],
      ["(20, 28]", 2, 1, 1, { pass: 1, warn: 1, fail: 2 }],
      ["(28, 32]", 2, 2, 0, { pass: 0, warn: 2, fail: 2 }],
      ["(32, 40]", 3, 1, 0, { pass: 0, warn: 1, fail: 3 }],
    ]);
  });

  it("holds at the value itself and at the next number on both sides, for any times", async () => {
    const time = fc.integer({ min: 1, max: 60 });
    await fc.assert(
      fc.asyncProperty(fc.array(time, { minLength: 1, maxLength: 8 }), async (times) => {
        const input = await cureOf(times.map((one) => known(one)));
        const { stretches } = movedIn(input, "adhesive-cure", { from: 0.5, to: 61 });
        const failing = (limit: number) => times.filter((one) => one < limit).length;
        expect(stretches.map(({ from, fromIncluded }) => [from, fromIncluded])).toEqual([
          [0.5, true],
          ...[...new Set(times)].sort((a, b) => a - b).map((one) => [one, false]),
        ]);
        for (const { to, counted } of stretches) expect(counted.rule.fail).toBe(failing(to));
      }),
      { numRuns: 30 },
    );
  });

  it("marks the value in force, and the steps at which a count moves", async () => {
    const input = await cureOf([known(12), known(18)]);
    const { steps } = movedIn(input, "adhesive-cure", { from: 10, to: 20, step: 4 });
    expect(steps.map(({ value, inForce, changes, rule }) => [value, inForce, changes, rule.fail])).toEqual([
      [10, false, false, 0],
      [14, false, true, 1],
      [15, true, false, 1],
      [18, false, false, 1],
      [20, false, true, 2],
    ]);
  });

  it("looks by itself at what lies around the limit, and says for how many points more changes", async () => {
    const input = await cureOf([known(2), known(12), known(24), known(600), known(700)]);
    const moved = movedIn(input, "adhesive-cure");
    expect(moved.from).toBeLessThanOrEqual(12);
    expect(moved.to).toBeGreaterThanOrEqual(24);
    expect(moved.to).toBeLessThan(60);
    expect([moved.below, moved.above, moved.points]).toEqual([1, 2, 5]);
    expect(moved.steps.some(({ inForce }) => inForce)).toBe(true);
  });

  it("moves every rule that rests on the value of a model", async () => {
    const moved = movedIn(await inputOf(await shippedRulebook(), { set: "full" }), "seat-diameter", {
      model: "baseline",
    });
    expect(moved.alsoMoved).toContain("flat-margin");
    expect(moved.alsoMoved).not.toContain("thread-depth");
    expect(moved.inForce).toBe(30);
  });

  it("moves no limit of rules that judge groups of rows", async () => {
    const input = await inputOf(await shippedRulebook(), { set: "full" });
    const ofGroups = input.rulebook.rules.filter(
      (rule) => rule.group !== null && (placesIn(rule, input.options)?.places ?? []).length > 0,
    );
    expect(ofGroups.length).toBeGreaterThan(0);
    for (const { id } of ofGroups)
      expect(moveIn(input, id, { model: "baseline" })).toMatch(/groups of rows|rows share/);
  });

  it("names every number of a rule", async () => {
    const { rules } = await shippedRulebook();
    const namesOf = (id: string) => {
      const rule = rules.find((one) => one.id === id);
      return rule && placesIn(rule, { stage: "proposed", asOf: "2026-06-01" })?.places.map(({ name }) => name);
    };
    expect(namesOf("adhesive-cure")).toEqual(["fail below"]);
    expect(namesOf("flat-margin")).toEqual(["warn below", "warn below, shift", "warn below, model value"]);
    expect(namesOf("distance-to-bearing")).toEqual([
      "fail when distance_to_bearing greaterThan",
      "fail when highest_frequency greaterThan",
      "warn above",
    ]);
  });

  it("refuses what cannot be meant, in one sentence", async () => {
    const input = await inputOf(await shippedRulebook());
    expect(moveIn(input, "seat-diameter")).toMatch(/^--model: the surveys name baseline, .*example/);
    expect(moveIn(input, "seat-diameter", { model: "none" })).toContain('no sensor model "none"');
    expect(moveIn(input, "adhesive-cure", { from: 20, to: 10 })).toContain("--from 20 does not lie below --to 10");
    expect(moveIn(input, "adhesive-cure", { from: 1, to: 10, step: 1e-4 })).toContain("at most 1000");
    expect(moveIn(input, "adhesive-cure", { step: 0 })).toContain("--step");
    expect(moveIn(input, "supply-voltage", { model: "baseline", from: 20, to: 29 })).toContain("other end");
  });
});
