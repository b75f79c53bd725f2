import { describe, expect, it } from "vitest";
import { convert } from "../../src/base/index.js";
import { findFact } from "../../src/facts/index.js";
import { readIpCode, STEPS, threadDesignated } from "../../src/quantities/index.js";
import { METRIC_PITCHES_MM } from "../../src/quantities/tables/thread-sizes.js";

describe("what can be changed, and in which steps", () => {
  it.each([...STEPS])("%s is a fact of the survey of which the steps can be said", (id, steps) => {
    const fact = findFact(id);
    expect(fact?.source).toBe("survey");
    if (steps.by === "step" || steps.by === "sizes") expect(fact?.plausible).toBeDefined();
    if (steps.by === "step") expect(steps.step).toBeGreaterThan(0);
    if (steps.by === "sizes") {
      for (const series of steps.series) {
        expect(series.length).toBeGreaterThan(5);
        expect([...series].sort((a, b) => a - b)).toEqual(series);
        expect(series[0]).toBeGreaterThanOrEqual(fact?.plausible?.lowest ?? 0);
        expect(series.at(-1)).toBeLessThanOrEqual(fact?.plausible?.highest ?? 0);
      }
    }
    if (steps.by === "choice" && fact?.choices) {
      const inOrder = fact.choices.filter((choice) => steps.words.includes(choice));
      expect(inOrder).toEqual(steps.words);
      for (const word of ["absent", "unknown", "unspecified", "none", "magnet", "clamp"]) {
        expect(steps.words).not.toContain(word);
      }
    }
  });

  it.each(["thread", "bolt_class"])("%s has every word in its place, rising within a series", (id) => {
    const steps = STEPS.get(id);
    if (steps?.by !== "words-in-order") throw new Error(`${id} has no order`);
    for (const [index, words] of steps.series.entries()) {
      const places = words.map((word) => steps.sizeOf(word));
      expect(places.every((place) => place?.series === index)).toBe(true);
      const ordered = places.map((place) => place?.size ?? 0);
      expect([...ordered].sort((a, b) => a - b)).toEqual(ordered);
      expect(new Set(ordered).size).toBe(words.length);
    }
    expect(steps.sizeOf("no such word")).toBeNull();
  });

  it("has every bolt class of the survey, and threads as their designation is written", () => {
    const classes = STEPS.get("bolt_class");
    const threads = STEPS.get("thread");
    if (classes?.by !== "words-in-order" || threads?.by !== "words-in-order") throw new Error("no order");
    expect(classes.series.flat()).toEqual(findFact("bolt_class")?.choices);
    for (const word of threads.series.flat()) expect(threadDesignated(word)?.designation).toBe(word);
    for (const word of threads.series[0] ?? []) expect(METRIC_PITCHES_MM.has(Number(word.slice(1)))).toBe(true);
    expect(threads.sizeOf("M 8 x 1")).toEqual({ series: 0, size: 8 });
  });

  it("has wire gauges by their definition, and degrees of protection that can be read", () => {
    const conductors = STEPS.get("conductor_size");
    const ratings = STEPS.get("ip_rating");
    if (conductors?.by !== "sizes" || ratings?.by !== "choice") throw new Error("other steps");
    const gauges = conductors.series[1]?.map((area) => convert(area, "mm²", "AWG", "area")) ?? [];
    expect(gauges.map((gauge) => Math.round(gauge * 1e6) / 1e6)).toEqual([26, 24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4]);
    for (const rating of ratings.words) expect(readIpCode(rating)).not.toBeNull();
  });
});
