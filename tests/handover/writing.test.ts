import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { dayInWriting, numberInWriting } from "../../src/handover/writing.js";

describe("a number", () => {
  it.each([
    [15, null, "point", "15"],
    [-5, null, "point", "-5"],
    [14.9, null, "comma", "14,9"],
    [28.8000000000001, null, "point", "28.8"],
    [1e21, null, "point", "1000000000000000000000"],
    [2.5e-7, null, "point", "0.00000025"],
    [-0, null, "point", "0"],
    [-0.04, 1, "comma", "0,0"],
    [23.96, 1, "comma", "24,0"],
    [1234567.5, 2, "point", "1234567.50"],
  ] as const)("%s with %s decimals and a %s is %s", (value, decimals, sign, text) => {
    expect(numberInWriting(value, decimals, sign)).toBe(text);
  });

  it("is read back as it was, to 12 significant digits", () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e15, max: 1e15 }), (value) => {
        const text = numberInWriting(value, null, "point");
        expect(text).toMatch(/^-?\d+(\.\d+)?$/);
        const wanted = Math.abs(value) < 1e-8 ? 0 : Number(value.toPrecision(12));
        if (Math.abs(value) >= 1e-8) expect(Number(text)).toBe(wanted);
      }),
    );
  });
});

describe("a day", () => {
  it("is written by the pattern, without any locale", () => {
    expect(dayInWriting("2026-03-09", "DD.MM.YYYY")).toBe("09.03.2026");
    expect(dayInWriting("2026-03-09", "MM/DD/YYYY")).toBe("03/09/2026");
    expect(dayInWriting("2026-03-09", "YYYYMMDD")).toBe("20260309");
  });
});
