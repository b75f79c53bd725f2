import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  boltInBlindHole,
  drillPointMm,
  fullThreadDepthMm,
  holeDepthNeededMm,
  tapChamferInPitches,
  wallLeftMm,
  wallNeededMm,
} from "../../src/quantities/index.js";

const depth = fc.double({ min: 0, max: 100, noNaN: true });
const pitch = fc.double({ min: 0.2, max: 4, noNaN: true });
const close = (a: number, b: number): boolean => Math.abs(a - b) < 1e-9;

describe("the wall around a blind hole", () => {
  it("is needed exactly as far as it leaves what is wanted", () => {
    fc.assert(
      fc.property(depth, depth, depth, depth, (seatDepthMm, holeDepthMm, pointMm, leftMm) => {
        const hole = { seatDepthMm, holeDepthMm, drillPointMm: pointMm };
        const wallMm = wallNeededMm(hole, leftMm + 0.1);
        return close(wallLeftMm({ ...hole, wallMm }), leftMm + 0.1);
      }),
    );
  });

  it("is drilled through where nothing is left: 18 mm hold a 15 mm hole of 5 mm with its point, 16 mm do not", () => {
    const hole = { seatDepthMm: 0, holeDepthMm: 15, drillPointMm: drillPointMm(5, 118) };
    expect(wallLeftMm({ ...hole, wallMm: 18 })).toBeCloseTo(1.5, 2);
    expect(wallLeftMm({ ...hole, wallMm: 16 })).toBeLessThan(0);
  });

  it("is refused for sizes that are none", () => {
    const hole = { wallMm: 20, seatDepthMm: 0, holeDepthMm: 15, drillPointMm: 1.5 };
    expect(() => wallLeftMm({ ...hole, wallMm: 0 })).toThrow("wallMm");
    expect(() => wallLeftMm({ ...hole, seatDepthMm: -1 })).toThrow("seatDepthMm");
    expect(() => wallLeftMm({ ...hole, holeDepthMm: Number.NaN })).toThrow("holeDepthMm");
    expect(() => wallNeededMm(hole, -1)).toThrow("leftMm");
  });
});

describe("the point of a drill", () => {
  it("is longer the sharper it is, and none for a flat bottom", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 60, max: 179, noNaN: true }),
        (angle) => drillPointMm(5, angle) > drillPointMm(5, angle + 1),
      ),
    );
    expect(drillPointMm(5, 180)).toBe(0);
    for (const angle of [0, 59, 181, Number.NaN]) expect(() => drillPointMm(5, angle)).toThrow(RangeError);
    expect(() => drillPointMm(0, 118)).toThrow(RangeError);
  });
});

describe("the full thread in a blind hole", () => {
  it("needs the hole from which it comes back", () => {
    fc.assert(
      fc.property(depth, pitch, depth, (threadMm, pitchMm, freeMm) => {
        const chamfer = tapChamferInPitches("plug");
        const hole = holeDepthNeededMm(threadMm, pitchMm, chamfer, freeMm);
        return (
          hole.lowest <= hole.highest &&
          close(fullThreadDepthMm(hole.highest, pitchMm, chamfer, freeMm).lowest, threadMm) &&
          close(fullThreadDepthMm(hole.lowest, pitchMm, chamfer, freeMm).highest, threadMm)
        );
      }),
    );
  });

  it("of M6 in 15 mm is 9 to 11 mm with a plug tap and one pitch to spare, never below none", () => {
    expect(fullThreadDepthMm(15, 1, tapChamferInPitches("plug"), 1)).toEqual({ lowest: 9, highest: 11 });
    expect(fullThreadDepthMm(3, 1, tapChamferInPitches("taper"), 1)).toEqual({ lowest: 0, highest: 0 });
  });

  it("is refused for sizes that are none", () => {
    const chamfer = tapChamferInPitches("C");
    expect(() => fullThreadDepthMm(-1, 1, chamfer, 1)).toThrow(RangeError);
    expect(() => fullThreadDepthMm(15, 0, chamfer, 1)).toThrow(RangeError);
    expect(() => fullThreadDepthMm(15, 1, { lowest: 3, highest: 2 }, 1)).toThrow(RangeError);
    expect(() => holeDepthNeededMm(9, 1, chamfer, Number.NaN)).toThrow(RangeError);
  });
});

describe("a bolt in a blind hole", () => {
  it.each([
    ["sits with thread to spare", 16, 8, 10, 0, { engagementMm: 8, spareMm: 2, bottoms: false }],
    ["just fits", 18, 8, 10, 0, { engagementMm: 10, spareMm: 0, bottoms: false }],
    ["is too long", 20, 8, 10, 0, { engagementMm: 10, spareMm: -2, bottoms: true }],
    ["loses the countersink", 16, 8, 10, 1, { engagementMm: 7, spareMm: 2, bottoms: false }],
    ["does not reach the thread", 8, 9, 10, 0, { engagementMm: 0, spareMm: 11, bottoms: false }],
  ])("%s", (_, boltMm, clampedMm, threadMm, lostMm, seated) => {
    expect(boltInBlindHole(boltMm, clampedMm, threadMm, lostMm)).toEqual(seated);
  });

  it("never engages more than it reaches or the hole has, and bottoms only without spare thread", () => {
    fc.assert(
      fc.property(depth, depth, depth, (boltMm, clampedMm, threadMm) => {
        const { engagementMm, spareMm, bottoms } = boltInBlindHole(boltMm + 1, clampedMm, threadMm);
        return engagementMm >= 0 && engagementMm <= Math.min(boltMm + 1, threadMm) && bottoms === spareMm < 0;
      }),
    );
  });

  it("is refused for lengths that are none", () => {
    expect(() => boltInBlindHole(0, 8, 10)).toThrow(RangeError);
    expect(() => boltInBlindHole(16, -8, 10)).toThrow(RangeError);
    expect(() => boltInBlindHole(16, 8, Number.NaN)).toThrow(RangeError);
    expect(() => boltInBlindHole(16, 8, 10, -1)).toThrow(RangeError);
  });
});
