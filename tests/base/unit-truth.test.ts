import { describe, expect, it } from "vitest";
import { convert, type Dimension } from "../../src/base/index.js";
import { agrees, truthOf } from "../tools/truth.js";

const truth = truthOf("unit-conversions");

/** Each entry of the outside table that is a conversion of ours: value, from, to, dimension. */
const CONVERSIONS: readonly (readonly [id: string, value: number, from: string, to: string, dimension: Dimension])[] = [
  ["unit-lbfin-nm", 1, "in·lbf", "N·m", "torque"],
  ["unit-in-mm", 1, "in", "mm", "length"],
  ["unit-lbfft-nm", 1, "ft·lbf", "N·m", "torque"],
  ["unit-ozin-nm", 1, "ozf·in", "N·m", "torque"],
  ["unit-hp-kw", 1, "HP", "kW", "power"],
  ["unit-kw-hp", 1, "kW", "HP", "power"],
  ["unit-kw-hp-5", 1, "kW", "HP", "power"],
  ["unit-awg10-area", 10, "AWG", "mm²", "area"],
  ["unit-awg12-area", 12, "AWG", "mm²", "area"],
  ["unit-awg16-area", 16, "AWG", "mm²", "area"],
  ["unit-awg18-area", 18, "AWG", "mm²", "area"],
  ["unit-awg22-area", 22, "AWG", "mm²", "area"],
  ["unit-awg24-area", 24, "AWG", "mm²", "area"],
  ["unit-f-c-250", 250, "°F", "°C", "temperature"],
  ["unit-f-c-32", 32, "°F", "°C", "temperature"],
  ["unit-c-f-121", 121, "°C", "°F", "temperature"],
  ["unit-delta-f-c", 54, "°F", "K", "temperature-difference"],
  ["unit-hz-rpm", 29.5, "Hz", "r/min", "rotational-speed"],
  ["unit-cpm-hz", 120_000, "cpm", "Hz", "frequency"],
  ["unit-lbfft-5", 5, "ft·lbf", "N·m", "torque"],
  ["unit-lbfft-2_5", 2.5, "ft·lbf", "N·m", "torque"],
  ["unit-lbfin-30", 30, "in·lbf", "N·m", "torque"],
  ["unit-lbfin-18", 18, "in·lbf", "N·m", "torque"],
  ["unit-1_4in", 0.25, "in", "mm", "length"],
  ["unit-thou", 0.0003, "in", "µm", "length"],
  ["unit-hp-75", 75, "HP", "kW", "power"],
];

/** Entries about things that are no conversion of units here: a force, a wire's resistance, peak and rms. */
const NOT_OURS = [
  "unit-lbf-n",
  "unit-hp-ftlbf",
  "unit-awg18-resistance",
  "unit-awg22-resistance",
  "unit-awg16-resistance",
  "unit-ips-mms",
];

describe("unit conversions against published tables and definitions", () => {
  it.each(CONVERSIONS)("%s", (id, value, from, to, dimension) => {
    const entry = truth.get(id);
    if (!entry) throw new Error(`no entry ${id}`);
    const ours = convert(value, from, to, dimension);
    const source = `${entry.source.title} (${entry.basis})`;
    expect(agrees(ours, Number(entry.expected), entry.tolerance), `${ours} against ${entry.expected}: ${source}`).toBe(
      true,
    );
  });

  it("gives the area of 26 AWG by its definition (ASTM B258)", () => {
    const entry = truth.get("unit-awg-diameter-26");
    const { area_mm2: area, diameter_mm: diameter } = (entry?.expected ?? {}) as {
      area_mm2: number;
      diameter_mm: number;
    };
    const ours = convert(26, "AWG", "mm²", "area");
    expect(Math.abs(ours / area - 1)).toBeLessThan(1e-5);
    expect(Math.abs(Math.sqrt((4 * ours) / Math.PI) / diameter - 1)).toBeLessThan(1e-5);
  });

  it("looks at every entry of the table", () => {
    const seen = new Set([...CONVERSIONS.map(([id]) => id), ...NOT_OURS, "unit-awg-diameter-26"]);
    expect([...truth.keys()].filter((id) => !seen.has(id))).toEqual([]);
  });
});
