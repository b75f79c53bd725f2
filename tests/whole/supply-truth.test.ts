import { describe, expect, it } from "vitest";
import { modelFactsOn } from "../../src/rulebook/index.js";
import { shippedRulebook } from "../tools/shipped.js";
import { truthOf } from "../tools/truth.js";

const truth = truthOf("supply-and-ip");

describe("the supply band of the baseline against IEC 61131-2 as manuals quote it", async () => {
  const rulebook = await shippedRulebook();
  const baseline = rulebook.models.get("baseline");
  if (!baseline) throw new Error("no baseline");
  const facts = modelFactsOn(baseline, "2026-11-25");
  const volts = (id: string): number => {
    const state = facts.get(id);
    return state?.known && typeof state.value === "object" ? state.value.lowest : Number.NaN;
  };

  it("is the lowest and highest average voltage of rated 24 V", () => {
    const limits = truth.get("sup-24v-limits")?.expected as { min_V: number; max_V: number };
    expect([volts("model.supply_voltage_min"), volts("model.supply_voltage_max")]).toEqual([
      limits.min_V,
      limits.max_V,
    ]);
  });

  it("is 15 per cent below and 20 per cent above it", () => {
    const band = truth.get("sup-24v-tolerance")?.expected as { minus_percent: number; plus_percent: number };
    expect(volts("model.supply_voltage_min")).toBeCloseTo(24 * (1 - band.minus_percent / 100), 9);
    expect(volts("model.supply_voltage_max")).toBeCloseTo(24 * (1 + band.plus_percent / 100), 9);
  });

  it("cites that standard, and no clause that nobody has read", () => {
    const cited = [...baseline.citations.values()].filter((citation) => citation.source?.includes("IEC 61131-2"));
    expect(cited).toHaveLength(1);
    expect(cited[0]?.clause).toBeUndefined();
  });
});
