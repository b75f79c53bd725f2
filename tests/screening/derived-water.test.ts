import { describe, expect, it } from "vitest";
import { type FactState, factOf } from "../../src/facts/index.js";
import { readIpCode, waterDigitIncludes } from "../../src/quantities/index.js";
import { DERIVED } from "../../src/screening/derive.js";
import { known, unknown } from "../tools/make-record.js";

function protection(rating: FactState | null, wetting: FactState | null): string {
  const facts = new Map<string, FactState>();
  if (rating) facts.set("ip_rating", rating);
  if (wetting) facts.set("wetting", wetting);
  const state = DERIVED.get("water_protection")?.(facts);
  if (!state) throw new Error("not derived");
  if (state.known) return String(state.value);
  return `${state.reason}: ${state.origin.kind === "derived" ? state.origin.from[0] : "?"}`;
}

describe("the protection against water", () => {
  it.each([
    ["IP20", "splash", "lacks"],
    ["IP43", "splash", "lacks"],
    ["IP54", "splash", "covers"],
    ["IP67", "splash", "covers"],
    ["IP54", "jets", "lacks"],
    ["IP65", "jets", "covers"],
    ["IP66", "jets", "covers"],
    ["IP67", "jets", "lacks"],
    ["IP68", "jets", "lacks"],
    ["IP69", "jets", "partly"],
    ["IP66/IP67", "jets", "covers"],
    ["IP65", "hot-high-pressure", "partly"],
    ["IP67", "hot-high-pressure", "lacks"],
    ["IP67/IP69K", "hot-high-pressure", "covers"],
    ["IP66", "submerged", "lacks"],
    ["IP67", "submerged", "partly"],
    ["IP66/IP67", "submerged", "partly"],
    ["IP69", "submerged", "lacks"],
    ["IP68", "submerged", "covers"],
    ["IP66/IP68", "submerged", "covers"],
  ])("of %s against %s: %s", (rating, wetting, expected) => {
    expect(protection(known(rating), known(wetting))).toBe(expected);
  });

  it("is asked for by rating or place, whichever lacks", () => {
    expect(protection(null, known("dry"))).toBe("covers");
    expect(protection(null, known("jets"))).toBe("missing: ip_rating");
    expect(protection(known("IP67"), null)).toBe("missing: wetting");
    expect(protection(null, unknown("missing"))).toBe("missing: ip_rating");
    expect(protection(unknown("missing"), unknown("doubtful"))).toBe("doubtful: wetting");
    expect(protection(unknown("unreadable"), known("jets"))).toBe("unreadable: ip_rating");
    expect(protection(known("IP6X"), known("jets"))).toBe("too-close: ip_rating");
  });

  it("never gets worse by a second marking, and knows every exposure of the catalogue", () => {
    const rank = ["lacks", "partly", "covers"];
    const digits = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9];
    for (const wetting of factOf("wetting").choices ?? []) {
      for (const one of digits) {
        const alone = rank.indexOf(protection(known(`IP6${one}`), known(wetting)));
        expect(alone, `${wetting} ${one}`).toBeGreaterThanOrEqual(0);
        for (const other of digits) {
          const both = protection(known(`IP6${one}/IP6${other}`), known(wetting));
          expect(rank.indexOf(both), `${wetting} ${one} ${other}`).toBeGreaterThanOrEqual(alone);
        }
      }
    }
  });

  it("follows the digits where they speak", () => {
    for (const digit of [0, 1, 2, 3, 4, 5, 6]) {
      expect(readIpCode(`IP6${digit}`)?.water).toEqual([digit]);
      expect(protection(known(`IP6${digit}`), known("splash")) === "covers").toBe(waterDigitIncludes(digit, 4));
    }
  });
});
