import { describe, expect, it } from "vitest";
import { alterBook, coverageOf } from "../../src/proving/index.js";
import { loadRulebook, runCase } from "../../src/rulebook/index.js";
import { shippedFiles, shippedRulebook } from "../tools/shipped.js";
import { leastWork } from "../tools/work.js";

describe("the shipped rulebook", () => {
  it("is checked, its cases run and what they show told within three seconds of work", async () => {
    const files = await shippedFiles();
    const { seconds } = await leastWork(3, () => {
      const loading = loadRulebook(files, { root: "rules" });
      if (!loading.ok) throw new Error("it does not load");
      const { rulebook } = loading;
      for (const rule of rulebook.rules) for (const one of rule.cases) runCase(rule, one, rulebook);
      coverageOf(rulebook);
    });
    expect(seconds).toBeLessThan(3);
  });

  it("has a case for every outcome, limit, missing fact, date and citation", async () => {
    const { items } = coverageOf(await shippedRulebook());
    expect(items.filter(({ isShown }) => !isShown).map(({ rule, what }) => `${rule}: ${what}`)).toEqual([]);
  });

  it("has cases that notice every alteration that changes an outcome", { timeout: 120_000 }, async () => {
    const { counts, unnoticed } = alterBook(await shippedRulebook());
    const blind = unnoticed.filter(({ suggestion }) => suggestion !== null);
    expect(blind.map(({ rule, alteration }) => `${rule}: ${alteration.what}`)).toEqual([]);
    for (const { kind, altered } of counts) expect(altered, kind).toBeGreaterThan(200);
  });
});
