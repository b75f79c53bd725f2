import { describe, expect, it } from "vitest";
import { preloadPct, type Thread, threadDesignated, wallMetalOf } from "../../src/quantities/index.js";

function thread(designation: string): Thread {
  const found = threadDesignated(designation);
  if (!found) throw new Error(`no thread ${designation}`);
  return found;
}

describe("the preload of a torque, per cent of the proof load", () => {
  it.each([
    // 580 MPa × 20.123 mm² = 11,671 N of proof load; K 0.20, 0.15 and 0.12 for 6 mm.
    [10.5, "M6", 580, 0.2, 74.97],
    [7.9, "M6", 580, 0.15, 75.21],
    [6.3, "M6", 580, 0.12, 74.97],
    [10, "M6", 580, 0.12, 119.0],
    // 450 MPa × 20.123 mm² = 9,055 N.
    [10, "M6", 450, 0.3768, 48.84],
  ] as const)("%d N·m on %s, proof stress %d MPa, K %d: %d", (torqueNm, designation, proofMPa, factor, percent) => {
    expect(preloadPct(torqueNm, thread(designation), proofMPa, factor)).toBeCloseTo(percent, 1);
  });

  it("takes no torque below 0, and neither strength nor factor of nothing", () => {
    expect(() => preloadPct(-1, thread("M6"), 580, 0.2)).toThrow(RangeError);
    expect(() => preloadPct(10, thread("M6"), 0, 0.2)).toThrow(RangeError);
    expect(() => preloadPct(10, thread("M6"), 580, 0)).toThrow(RangeError);
  });
});

describe("the metal that a word names", () => {
  it("is open for sheet and for no word at all", () => {
    expect(["sheet-metal", "absent", "aluminium"].map(wallMetalOf)).toEqual([null, null, "aluminium"]);
  });
});
