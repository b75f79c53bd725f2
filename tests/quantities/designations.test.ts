import { describe, expect, it } from "vitest";
import { threadDesignated } from "../../src/quantities/index.js";

describe("the designation of a thread", () => {
  it.each([
    ["M6", "M6", 6, 1],
    ["m6", "M6", 6, 1],
    ["M 6 x 1,0", "M6", 6, 1],
    ["M6×1", "M6", 6, 1],
    ["M6-6H", "M6", 6, 1],
    ["M8-1.25", "M8", 8, 1.25],
    ["M8x1", "M8x1", 8, 1],
    ["M8x1.250", "M8", 8, 1.25],
    ["M8x.75", "M8x0.75", 8, 0.75],
    ["M8 × 1 - 6g", "M8x1", 8, 1],
    ["M10x1.25-4g6g", "M10x1.25", 10, 1.25],
    ["M2.5", "M2.5", 2.5, 0.45],
    ["1/4-28 UNF", "1/4-28 UNF", 6.35, 25.4 / 28],
    ['1/4"-28', "1/4-28 UNF", 6.35, 25.4 / 28],
    ["1⁄4–28 unf-2B", "1/4-28 UNF", 6.35, 25.4 / 28],
    ["UNF 1/4", "1/4-28 UNF", 6.35, 25.4 / 28],
    ["1/4 UNC", "1/4-20 UNC", 6.35, 1.27],
    ["10-32", "10-32 UNF", 4.826, 25.4 / 32],
    ["#10-24", "10-24 UNC", 4.826, 25.4 / 24],
    ["No. 8-32 UNC", "8-32 UNC", 0.164 * 25.4, 25.4 / 32],
  ])("%s is read as %s", (text, designation, majorMm, pitchMm) => {
    const thread = threadDesignated(text);
    expect(thread?.designation).toBe(designation);
    expect(thread?.majorMm).toBeCloseTo(majorMm, 12);
    expect(thread?.pitchMm).toBeCloseTo(pitchMm, 12);
    expect(thread?.system).toBe(designation.startsWith("M") ? "metric" : "unified");
  });

  it.each([
    ["", "nothing"],
    ["6", "a bare number"],
    ["M", "no diameter"],
    ["M6x20", "a bolt length, not a pitch"],
    ["M8x", "no pitch after the sign"],
    ["M8x1x25", "a pitch and a length"],
    ["M6.5", "no such diameter"],
    ["M100", "a diameter beyond the table"],
    ["1/4", "the pitch is open"],
    ["1/4-28 UNC", "series and pitch contradict each other"],
    ["UNC 1/4-28 UNF", "two series"],
    ["1/4-24", "no such pitch"],
    ["G1/4", "a pipe thread"],
    ["1/4 NPT", "a pipe thread"],
    ["M6 LH", "left-hand"],
    ["tapped M6", "more than a designation"],
  ])("%j is refused: %s", (text) => {
    expect(threadDesignated(text)).toBeNull();
  });

  it("comes back from what it gives", () => {
    for (const text of ["M6", "M8x1", "M12x1.25", "1/4-28 UNF", "10-32 UNF", "4-40 UNC"]) {
      expect(threadDesignated(threadDesignated(text)?.designation ?? "")).toEqual(threadDesignated(text));
    }
  });
});
