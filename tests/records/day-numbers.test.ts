import { describe, expect, it } from "vitest";
import { readDayNumber } from "../../src/records/cells/cell-date.js";

function dayOf(serial: number, dateSystem: 1900 | 1904, marked: boolean): string {
  const reading = readDayNumber(serial, dateSystem, marked);
  return reading.ok && reading.kind === "word" ? String(reading.value) : "no day";
}

describe("a day number", () => {
  it.each<[number, 1900 | 1904, string]>([
    // The day 60 of spreadsheet programs is 29 February 1900, which there never was; before it all are one off.
    [60, 1900, "no day"],
    [61, 1900, "1900-03-01"],
    [46_000, 1900, "2025-12-09"],
    [46_000.99, 1900, "2025-12-09"],
    [2_958_465, 1900, "9999-12-31"],
    [2_958_466, 1900, "no day"],
    [0, 1904, "1904-01-01"],
    [44_538, 1904, "2025-12-09"],
    [2_957_003, 1904, "9999-12-31"],
    [2_957_004, 1904, "no day"],
  ])("%d counted from %d, marked as a date, is %s", (serial, dateSystem, day) => {
    expect(dayOf(serial, dateSystem, true)).toBe(day);
  });

  it.each<[number, string]>([
    [19_999, "no day"],
    [20_000, "1954-10-03"],
    [46_000, "2025-12-09"],
    [46_000.5, "no day"],
    [80_000, "2119-01-11"],
    [80_001, "no day"],
  ])("%d without a mark is %s", (serial, day) => {
    expect(dayOf(serial, 1900, false)).toBe(day);
  });
});
