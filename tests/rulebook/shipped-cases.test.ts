import { describe, expect, it } from "vitest";
import { runCase } from "../../src/rulebook/index.js";
import { shippedRulebook } from "./shipped.js";

const rulebook = shippedRulebook();

describe.each(rulebook.rules.map((rule) => [rule.id, rule] as const))("cases of %s", (_id, rule) => {
  it.each(rule.cases.map((ruleCase) => [ruleCase.name, ruleCase] as const))("%s", (_name, ruleCase) => {
    for (const run of runCase(rule, ruleCase, rulebook)) expect(run.difference, `stage ${run.stage}`).toBeNull();
  });

  it("has a name of its own for every case", () => {
    expect(new Set(rule.cases.map(({ name }) => name)).size).toBe(rule.cases.length);
  });
});
