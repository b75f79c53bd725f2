import { describe, expect, it } from "vitest";
import { dayBefore } from "../../src/base/index.js";
import { shippedRulebook } from "./shipped.js";

interface Dated {
  readonly from: string;
  readonly until: string | null;
}

const { rules, models } = shippedRulebook();

const lines: readonly (readonly [string, readonly Dated[]])[] = [
  ...rules.map((rule) => [`limits of ${rule.id}`, rule.limits] as const),
  ...[...models.values()].flatMap((model) =>
    [...model.facts].map(([fact, values]) => [`${fact} of ${model.id}`, values] as const),
  ),
];

function holdOn(entries: readonly Dated[], day: string): number {
  return entries.filter(({ from, until }) => from <= day && (until === null || day < until)).length;
}

describe.each(lines)("%s", (_name, entries) => {
  it("has exactly one entry on every day of change and the day before, from the first day on", () => {
    const first = entries[0]?.from ?? "";
    const last = entries.at(-1)?.until ?? null;
    for (const day of entries.flatMap(({ from, until }) => (until === null ? [from] : [from, until]))) {
      for (const side of [dayBefore(day), day]) {
        const inside = side >= first && (last === null || side < last);
        expect(holdOn(entries, side), side).toBe(inside ? 1 : 0);
      }
    }
  });
});
