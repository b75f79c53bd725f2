import { describe, expect, it } from "vitest";
import { highestPreloadPct, type Thread, threadDesignated, wallMetalOf } from "../../src/quantities/index.js";

function thread(designation: string): Thread {
  const found = threadDesignated(designation);
  if (!found) throw new Error(`no thread ${designation}`);
  return found;
}

describe("the highest preload of a torque, per cent of the proof load", () => {
  it.each([
    // 580 MPa × 20.123 mm² = 11,671 N of proof load; K 0.20, 0.15 and 0.12 for 6 mm.
    [10.5, "M6", "8.8", "dry", 74.97],
    [7.9, "M6", "8.8", "oiled", 75.21],
    [6.3, "M6", "8.8", "greased", 74.97],
    [10, "M6", "8.8", "greased", 119.0],
    // Friction 0.30: (0.16 × 1 + 0.58 × 5.350 × 0.30 + 0.30 × 7.8 / 2) / 6 = 0.3768; 450 MPa × 20.123 mm² = 9,055 N.
    [10, "M6", "A2-70", "dry", 48.84],
  ] as const)("%d N·m on %s, class %s, %s: %d", (torqueNm, designation, propertyClass, state, percent) => {
    expect(highestPreloadPct(torqueNm, thread(designation), propertyClass, state)).toBeCloseTo(percent, 1);
  });

  it("is not known for a diameter that the class does not have, and takes no torque below 0", () => {
    expect(highestPreloadPct(10, thread("M20"), "9.8", "dry")).toBeNull();
    expect(() => highestPreloadPct(-1, thread("M6"), "8.8", "dry")).toThrow(RangeError);
  });
});

describe("the metal that a word names", () => {
  it("is open for sheet and for no word at all", () => {
    expect(["sheet-metal", "absent", "aluminium"].map(wallMetalOf)).toEqual([null, null, "aluminium"]);
  });
});
