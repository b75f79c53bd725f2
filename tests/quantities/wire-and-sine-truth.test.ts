import { describe, expect, it } from "vitest";
import { convert } from "../../src/base/index.js";
import { copperResistanceOhmPerKm, restateSine } from "../../src/quantities/index.js";
import { agrees, truthOf } from "../tools/truth.js";

const truth = truthOf("unit-conversions");

describe("entries of the unit table that are no plain conversion", () => {
  it.each(["unit-awg16-resistance", "unit-awg18-resistance", "unit-awg22-resistance"])("%s", (id) => {
    const entry = truth.get(id);
    if (!entry) throw new Error(`no entry ${id}`);
    const areaMm2 = convert(Number(entry.inputs.awg), "AWG", "mm²", "area");
    const printed = entry.expected as { diameter_in: number; resistance_ohm_per_km: number };
    const diameterIn = Math.sqrt((4 * areaMm2) / Math.PI) / 25.4;
    expect(agrees(diameterIn, printed.diameter_in, entry.tolerance)).toBe(true);
    expect(agrees(copperResistanceOhmPerKm(areaMm2), printed.resistance_ohm_per_km, entry.tolerance)).toBe(true);
  });

  it("unit-ips-mms", () => {
    const entry = truth.get("unit-ips-mms");
    if (!entry) throw new Error("no entry unit-ips-mms");
    const peak = convert(Number(entry.inputs.velocity_in_per_s_peak), "in/s", "mm/s", "vibration-velocity");
    expect(agrees(restateSine(peak, "peak", "rms"), Number(entry.expected), entry.tolerance)).toBe(true);
  });
});
