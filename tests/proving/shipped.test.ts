import { describe, expect, it } from "vitest";
import { alterBook, coverageOf } from "../../src/proving/index.js";
import { shippedRulebook } from "../tools/shipped.js";

describe("the shipped rulebook", () => {
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
