import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  alarmFromBaselineMmPerS,
  highestTripMmPerS,
  ipCodeIncludes,
  limitsOfGroup,
  machineClassOf,
  machineGroupOf,
  motorLimits,
  readIpCode,
  supportClassOf,
  waterDigitIncludes,
  worstZone,
  zoneOf,
} from "../../src/quantities/index.js";

const includes = (marked: string, solids: number, water: number) => {
  const code = readIpCode(marked);
  return code && ipCodeIncludes(code, { solids, water });
};

describe("degrees of protection", () => {
  it.each([
    ["IP65", { solids: 6, water: [5] }],
    ["ip 54", { solids: 5, water: [4] }],
    ["IPX7", { solids: null, water: [7] }],
    ["IP6X", { solids: 6, water: [] }],
    ["IP66/IP68", { solids: 6, water: [6, 8] }],
    ["IP66/67", { solids: 6, water: [6, 7] }],
    ["IP67 / 69K", { solids: 6, water: [7, 9] }],
    ["IPX5/IP67", { solids: 6, water: [5, 7] }],
    ["IP69K", { solids: 6, water: [9] }],
  ])("are read from %s", (text, code) => {
    expect(readIpCode(text)).toEqual(code);
  });

  it.each(["", "65", "IP", "IP7", "IP75", "IP6K6K", "IP66K", "IP65/IP54", "IP65 or so", "IP65W", "NEMA 4X"])(
    "are not read from %s",
    (text) => {
      expect(readIpCode(text)).toBeNull();
    },
  );

  it("include jets only where a jet is marked, and immersion only where immersion is", () => {
    expect(includes("IP67", 6, 5)).toBe(false);
    expect(includes("IP68", 6, 6)).toBe(false);
    expect(includes("IP66", 6, 7)).toBe(false);
    expect(includes("IP66/IP67", 6, 5)).toBe(true);
    expect(includes("IP66/IP67", 6, 7)).toBe(true);
    expect(includes("IP69K", 6, 7)).toBe(false);
    expect(includes("IP68", 6, 7)).toBe(true);
  });

  it("leave open what the sources do not say", () => {
    expect(includes("IP67", 6, 4)).toBeNull();
    expect(includes("IPX5", 5, 5)).toBeNull();
    expect(includes("IPX5", 0, 5)).toBe(true);
    expect(includes("IP6X", 6, 1)).toBeNull();
    expect(includes("IP6X", 6, 0)).toBe(true);
    expect(includes("IPX5", 5, 6)).toBe(false);
  });

  it("include themselves, nothing above themselves, and up to 6 everything below", () => {
    for (let marked = 0; marked <= 9; marked++) {
      expect(waterDigitIncludes(marked, marked)).toBe(true);
      for (let asked = marked + 1; asked <= 9; asked++) expect(waterDigitIncludes(marked, asked)).toBe(false);
      if (marked <= 6)
        for (let asked = 0; asked < marked; asked++) expect(waterDigitIncludes(marked, asked)).toBe(true);
    }
    expect(() => waterDigitIncludes(6.5, 5)).toThrow(/whole number/);
  });
});

describe("severity", () => {
  const reading = fc.double({ min: 0.001, max: 100, noNaN: true });
  const machine = fc.record({
    group: fc.constantFrom(1 as const, 2 as const),
    support: fc.constantFrom("rigid" as const, "flexible" as const),
  });

  it("never gets better as the reading grows, nor worse on a softer support", () => {
    fc.assert(
      fc.property(machine, reading, reading, ({ group, support }, one, more) => {
        const { velocityMmPerS } = limitsOfGroup(group, support);
        expect(zoneOf(one + more, velocityMmPerS) >= zoneOf(one, velocityMmPerS)).toBe(true);
        expect(zoneOf(one, limitsOfGroup(group, "flexible").velocityMmPerS) <= zoneOf(one, velocityMmPerS)).toBe(true);
      }),
    );
  });

  it("changes zone just past each limit", () => {
    const limits = { ab: 1.4, bc: 2.8, cd: 4.5 };
    expect([1.4, 1.4001, 2.8, 2.8001, 4.5, 4.5001].map((value) => zoneOf(value, limits))).toEqual([..."ABBCCD"]);
    expect(zoneOf(0, limits)).toBe("A");
    expect(() => zoneOf(1, { ...limits, bc: 1.4 })).toThrow(/rise/);
    expect(worstZone(["B", "A", "C", "A"])).toBe("C");
    expect(() => worstZone([])).toThrow(RangeError);
  });

  it("sets the alarm above the baseline, never above its cap, and the cap below the trip", () => {
    fc.assert(
      fc.property(machine, reading, ({ group, support }, baseline) => {
        const limits = limitsOfGroup(group, support).velocityMmPerS;
        const alarm = alarmFromBaselineMmPerS(baseline, limits);
        expect(alarm).toBeLessThanOrEqual(1.25 * limits.bc);
        if (baseline < limits.bc) expect(alarm).toBeGreaterThan(baseline);
        expect(alarm).toBeLessThan(highestTripMmPerS(limits));
      }),
    );
  });

  it("leaves machines outside the standards without class or group", () => {
    expect(machineGroupOf(11, null)).toBeNull();
    expect(machineGroupOf(60_000, null)).toBeNull();
    expect(machineGroupOf(30, 132)).toBeNull();
    expect(machineClassOf(100, "ordinary", null)).toBeNull();
    expect(machineClassOf(100, "ordinary", "rigid")).toBe("III");
    expect(machineClassOf(100, "ordinary", "flexible")).toBe("IV");
    expect(machineClassOf(100, "special", null)).toBe("II");
    expect(motorLimits("B", 100, "rigid")).toBeNull();
  });

  it("takes a support as rigid from a quarter above the exciting frequency", () => {
    expect(supportClassOf(31.25, 25)).toBe("rigid");
    expect(supportClassOf(31.2, 25)).toBe("flexible");
  });
});
