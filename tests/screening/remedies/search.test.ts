import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convert } from "../../../src/base/index.js";
import { factOf } from "../../../src/facts/index.js";
import { STEPS } from "../../../src/quantities/index.js";
import { laddersOf } from "../../../src/screening/remedies/ladder.js";
import { type Answer, nearestThatHelps } from "../../../src/screening/remedies/nearest.js";

/** Answers about stretches of steps of which each helps, does not, or cannot be told. */
function asking(steps: readonly Answer[]) {
  return (from: number, to: number): Answer => {
    const some = new Set(steps.slice(from, to + 1));
    return some.size === 1 ? ([...some][0] ?? "no") : "open";
  };
}

describe("the nearest step that helps", () => {
  it("is found wherever help and no help lie", () => {
    const steps = fc.array(fc.constantFrom<Answer>("helps", "no", "no", "no", "open"), { maxLength: 60 });
    fc.assert(
      fc.property(steps, (answers) => {
        const first = answers.indexOf("helps");
        expect(nearestThatHelps(answers.length, asking(answers))).toBe(first < 0 ? null : first);
      }),
    );
  });

  it("takes few questions on a long ladder", () => {
    let asked = 0;
    const ask = (from: number, to: number): Answer => {
      asked += 1;
      return to < 41_234 ? "no" : from >= 41_234 ? "helps" : "open";
    };
    expect(nearestThatHelps(60_000, ask)).toBe(41_234);
    expect(asked).toBeLessThan(60);
  });

  it("is given up where nothing is ever settled", () => {
    let asked = 0;
    const never = (): Answer => {
      asked += 1;
      return "open";
    };
    expect(nearestThatHelps(1_000_000, never)).toBeNull();
    expect(asked).toBeLessThan(1000);
  });
});

const GAUGE_18_MM2 = convert(18, "AWG", "mm²", "area");

describe("the steps to both sides of a number", () => {
  const around = (fact: string, lowest: number, highest: number) => {
    const steps = STEPS.get(fact);
    if (steps?.by !== "step" && steps?.by !== "sizes") throw new Error("no numbers");
    const { more, less } = laddersOf(steps, factOf(fact), { lowest, highest });
    const all = ({ count, at }: typeof more) => Array.from({ length: count }, (_, i) => at(i));
    return { more: all(more), less: all(less) };
  };

  it("lie on round numbers within what is plausible, the nearest first", () => {
    const { more, less } = around("hole_depth", 14.2, 14.2);
    expect([more[0], more[1], more.at(-1)]).toEqual([14.5, 15, 150]);
    expect([less[0], less[1], less.at(-1)]).toEqual([14, 13.5, 1]);
    expect(around("hole_depth", 14, 15).more[0]).toBe(15.5);
    expect(around("hole_depth", 14, 15).less[0]).toBe(13.5);
    expect(around("install_temperature", -3.5, -3.5).less.slice(0, 2)).toEqual([-4, -5]);
  });

  it("are written as people write them", () => {
    for (const value of around("drill_diameter", 5, 5).more) expect(String(value).length).toBeLessThanOrEqual(4);
    expect(around("drill_diameter", 5, 5).more.slice(0, 3)).toEqual([5.1, 5.2, 5.3]);
  });

  it("are not there where the number has no end, or stands at the last step", () => {
    expect(around("hole_depth", Number.NEGATIVE_INFINITY, 12).less).toEqual([]);
    expect(around("hole_depth", 150, 150).more).toEqual([]);
    expect(around("hole_depth", 1, 1).less).toEqual([]);
  });

  it("stay in the series of a size that stands in one", () => {
    expect(around("conductor_size", 1.5, 1.5).more.slice(0, 2)).toEqual([2.5, 4]);
    expect(around("conductor_size", 0.34, 0.34)).toMatchObject({ less: [] });
    const gauge18 = around("conductor_size", GAUGE_18_MM2, GAUGE_18_MM2);
    expect(gauge18.more[0]).toBeCloseTo(1.309, 3);
    expect(gauge18.less[0]).toBeCloseTo(0.518, 3);
  });
});
