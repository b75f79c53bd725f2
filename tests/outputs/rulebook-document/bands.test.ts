import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type NumberBand, type Zones, zonesOf } from "../../../src/outputs/rulebook-document/bands.js";
import { zoneInWords } from "../../../src/outputs/rulebook-document/zone-words.js";

const number = (value: number): NumberBand["bounds"][number] => ({ value, fact: null, times: 1, plus: 0 });
const fact = (id: string, times = 1): NumberBand["bounds"][number] => ({ value: null, fact: id, times, plus: 0 });
const none = (): null => null;

/** What bands say of a value, worked out without any picture. */
function outcomeOf(value: number, bands: readonly NumberBand[]): string {
  const held = bands.filter(({ is, bounds }) => {
    const [low = 0, high = low] = bounds.map((bound) => bound.value ?? 0);
    if (is === "below") return value < low;
    if (is === "atOrBelow") return value <= low;
    if (is === "above") return value > low;
    return is === "atOrAbove" ? value >= low : value < low || value > high;
  });
  if (held.some(({ outcome }) => outcome === "fail")) return "fail";
  return held.length > 0 ? "warn" : "pass";
}

function zoneAt(value: number, { zones, borders }: Zones): readonly string[] {
  const at = (border: number): number => Number.parseFloat(borders[border]?.words ?? "");
  return zones
    .filter(({ from, to }) => {
      const isFrom = from === null || (from.included ? value >= at(from.border) : value > at(from.border));
      return isFrom && (to === null || (to.included ? value <= at(to.border) : value < at(to.border)));
    })
    .map(({ outcome }) => outcome);
}

describe("zones of a limit", () => {
  const bound = fc.integer({ min: 0, max: 9 });
  const band = fc.oneof(
    fc.record({
      outcome: fc.constantFrom("fail" as const, "warn" as const),
      is: fc.constantFrom("below" as const, "above" as const, "atOrBelow" as const, "atOrAbove" as const),
      bounds: bound.map((value) => [number(value)]),
    }),
    fc.record({
      outcome: fc.constantFrom("fail" as const, "warn" as const),
      is: fc.constant("outside" as const),
      bounds: fc.tuple(bound, bound).map(([a, b]) => [number(Math.min(a, b)), number(Math.max(a, b))]),
    }),
  );

  it("hold every value once, with the outcome that the bands give it", () => {
    fc.assert(
      fc.property(fc.array(band, { minLength: 1, maxLength: 4 }), (bands) => {
        const zones = zonesOf(bands, null, none);
        for (let value = -0.5; value <= 9.5; value += 0.5) {
          expect(zoneAt(value, zones)).toEqual([outcomeOf(value, bands)]);
        }
        for (const [index, zone] of zones.zones.entries()) {
          expect(zone.outcome).not.toBe(zones.zones[index + 1]?.outcome);
        }
      }),
    );
  });

  it("name facts as limits, with what the baseline model gives them", () => {
    const bands: NumberBand[] = [
      { outcome: "warn", is: "below", bounds: [fact("model.seat_diameter_min", 1.1)] },
      { outcome: "fail", is: "below", bounds: [fact("model.seat_diameter_min")] },
    ];
    const zones = zonesOf(bands, "mm", () => ({ by: "baseline", lowest: 30, highest: 30 }));
    expect(zones.borders).toEqual([
      { words: "seat diameter the model needs", value: { by: "baseline", words: "30 mm" } },
      { words: "1.1 × the seat diameter the model needs", value: { by: "baseline", words: "33 mm" } },
    ]);
    expect(zones.zones.map((zone) => [zone.outcome, zoneInWords(zone, zones.borders)])).toEqual([
      ["fail", "below seat diameter the model needs"],
      ["warn", "seat diameter the model needs to below 1.1 × the seat diameter the model needs"],
      ["pass", "1.1 × the seat diameter the model needs and more"],
    ]);
    expect(zonesOf(bands, "mm", none)).toEqual({
      ...zones,
      borders: zones.borders.map((one) => ({ ...one, value: null })),
    });
  });

  it("say for which order they are drawn where nobody knows it", () => {
    const bands: NumberBand[] = [
      { outcome: "warn", is: "above", bounds: [fact("table.preload_share_max")] },
      { outcome: "fail", is: "above", bounds: [number(100)] },
    ];
    const { zones, drawnFor } = zonesOf(bands, "%", none);
    expect(zones.map(({ outcome }) => outcome)).toEqual(["pass", "warn", "fail"]);
    expect(drawnFor).toBe("drawn for the case that share of the proof load up to which bolts are tightened < 100 %");
  });

  it("name a single value and both ends", () => {
    const bands: NumberBand[] = [{ outcome: "fail", is: "outside", bounds: [number(5), number(5)] }];
    const { zones, borders } = zonesOf(bands, "V", none);
    expect(zones.map((zone) => zoneInWords(zone, borders))).toEqual(["below 5 V", "just 5 V", "above 5 V"]);
    const open = zonesOf([{ outcome: "warn", is: "atOrAbove", bounds: [number(2)] }], null, none);
    expect(open.zones.map((zone) => zoneInWords(zone, open.borders))).toEqual(["below 2", "2 and more"]);
  });
});
