import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Interval } from "../../src/base/index.js";
import type { FactState } from "../../src/facts/index.js";
import { askedFor, between, derive } from "../tools/derived.js";
import { known, unknown } from "../tools/make-record.js";

function endsOf(state: FactState): Interval {
  if (!state.known || typeof state.value !== "object") throw new Error("not a known number");
  return state.value;
}

const RUN = {
  supply_voltage_min: known(22.8),
  supply_voltage: known(24),
  sensor_current: known(50),
  cable_length: known(100),
  conductor_size: known(0.5),
  conductor_class: known("flexible"),
  conductor_temperature: known(20),
};

describe("the lowest voltage at the point", () => {
  it("is that of a worked example", () => {
    // 100 m of 0.5 mm² flexible: bare copper 17.241/0.5 = 34.482 Ω/km, at most 40.1 Ω/km (coated), both ways
    // 6.8964 to 8.02 Ω; 50 mA lose 0.34482 to 0.401 V of 22.8 V.
    expect(endsOf(derive("voltage_at_point", RUN))).toEqual({ lowest: 22.399, highest: 22.45518 });
  });

  it("falls with the hottest copper, which follows the air where nothing else is said", () => {
    const hot = endsOf(derive("voltage_at_point", { ...RUN, conductor_temperature: known(70) }));
    // 40.1 Ω/km × (1 + 0.00393 × 50) = 47.97965 Ω/km: 0.4797965 V are lost.
    expect(hot.lowest).toBeCloseTo(22.3202035, 9);
    const { conductor_temperature: _, ...bare } = RUN;
    expect(endsOf(derive("voltage_at_point", { ...bare, ambient_max: known(70) }))).toEqual(hot);
    const anyHeat = endsOf(derive("voltage_at_point", bare));
    expect(anyHeat.lowest).toBeLessThan(hot.lowest);
    expect(anyHeat.highest).toBeGreaterThan(hot.highest);
  });

  it("reckons thin leads and wire gauges no better than makers' sheets, 79 and 57.5 Ω/km", () => {
    for (const [size, ohmPerKm] of [
      [0.25, 79],
      [0.34, 57.5],
    ] as const) {
      const ends = endsOf(derive("voltage_at_point", { ...RUN, conductor_size: known(size) }));
      const bySheet = 22.8 - (2 * 100 * ohmPerKm * 0.05) / 1000;
      expect(ends.lowest).toBeLessThanOrEqual(bySheet);
      expect(ends.highest).toBeGreaterThanOrEqual(bySheet);
    }
  });

  it.each(["supply_voltage_min", "sensor_current", "cable_length", "conductor_size"])(
    "is not known without %s",
    (id) => {
      for (const reason of ["missing", "unreadable"] as const) {
        const given = { ...RUN, [id]: unknown(reason) };
        expect(derive("voltage_at_point", given)).toMatchObject({ known: false, reason, origin: { kind: "derived" } });
        expect(askedFor("voltage_at_point", given)).toBe(id);
      }
    },
  );

  it("is not known for a number that might be 0", () => {
    expect(derive("voltage_at_point", { ...RUN, cable_length: between(0, 3) })).toMatchObject({
      known: false,
      reason: "too-close",
    });
  });

  it("names a fact that nobody was asked for before one that a row left blank", () => {
    const { sensor_current: _, ...unasked } = RUN;
    expect(askedFor("voltage_at_point", { ...unasked, cable_length: unknown("missing") })).toBe("sensor_current");
  });

  it("names first what would narrow it", () => {
    const { conductor_class: _, conductor_temperature: __, ...bare } = RUN;
    expect(derive("voltage_at_point", bare).origin).toMatchObject({
      from: expect.arrayContaining(["conductor_class", "ambient_max"]),
    });
    expect(derive("voltage_at_point", bare).origin).toMatchObject({ from: { 0: "conductor_class" } });
    expect(derive("voltage_at_point", RUN).origin).toMatchObject({ from: { 0: "supply_voltage_min" } });
  });

  it("holds the voltage at any completion", () => {
    const pair = (min: number, max: number) =>
      fc
        .tuple(fc.double({ min, max, noNaN: true }), fc.double({ min, max, noNaN: true }))
        .map(([a, b]) => [Math.min(a, b), Math.max(a, b)] as const);
    const size = fc.constantFrom(0.14, 0.25, 0.34, 0.5, 0.75, 1, 1.5, 2.5);
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    const inside = ([low, high]: readonly [number, number], at: number): number =>
      Math.min(high, low + (high - low) * at);
    fc.assert(
      fc.property(
        fc.record({ supply: pair(18, 30), length: pair(1, 500), current: pair(1, 400), heat: pair(-50, 150), size }),
        fc.option(fc.constantFrom("solid", "stranded", "flexible"), { nil: null }),
        fc.constantFrom("solid", "stranded", "flexible"),
        fc.tuple(share, share, share, share),
        ({ supply, length, current, heat, size: mm2 }, stated, real, [a, b, c, d]) => {
          const ofClass = (one: string | null): Record<string, FactState> =>
            one === null ? {} : { conductor_class: known(one) };
          const wide = endsOf(
            derive("voltage_at_point", {
              supply_voltage_min: between(...supply),
              cable_length: between(...length),
              sensor_current: between(...current),
              conductor_temperature: between(...heat),
              conductor_size: known(mm2),
              ...ofClass(stated),
            }),
          );
          const narrow = endsOf(
            derive("voltage_at_point", {
              supply_voltage_min: known(inside(supply, a)),
              cable_length: known(inside(length, b)),
              sensor_current: known(inside(current, c)),
              conductor_temperature: known(inside(heat, d)),
              conductor_size: known(mm2),
              ...ofClass(stated ?? real),
            }),
          );
          expect(narrow.lowest).toBeGreaterThanOrEqual(wide.lowest - 1e-9);
          expect(narrow.highest).toBeLessThanOrEqual(wide.highest + 1e-9);
        },
      ),
    );
  });
});

describe("the voltage to be expected", () => {
  it("begins at the stated supply, and the copper may be cold", () => {
    // Bare copper at −50 °C: 34.482 × (1 − 0.00393 × 70) = 24.9960018 Ω/km: 0.249960018 V are lost at least.
    const ends = endsOf(derive("expected_voltage", RUN));
    expect(ends.lowest).toBe(23.599);
    expect(ends.highest).toBeCloseTo(23.750039982, 9);
  });
});

describe("the load of a supply", () => {
  const LOAD = { sensors_on_supply: known(12), sensor_current: known(50), supply_rating: known(1000) };

  it("is that of a worked example", () => {
    // 12 × 50 mA = 600 mA of 1 A; at the start 12 × 250 mA = 3 A.
    expect(endsOf(derive("supply_load", LOAD))).toEqual({ lowest: 60, highest: 60 });
    expect(endsOf(derive("supply_starting_load", { ...LOAD, starting_current: known(250) }))).toEqual({
      lowest: 300,
      highest: 300,
    });
  });

  it("spans the ends of its parts", () => {
    const wide = { ...LOAD, sensor_current: between(40, 60), supply_rating: between(900, 1000) };
    expect(endsOf(derive("supply_load", wide))).toEqual({ lowest: 48, highest: 80 });
  });

  it.each(["sensors_on_supply", "supply_rating", "sensor_current"])("is not known without %s", (id) => {
    expect(derive("supply_load", { ...LOAD, [id]: unknown("doubtful") })).toMatchObject({
      known: false,
      reason: "doubtful",
    });
  });
});
