import { expect, it } from "vitest";
import { builtInFormat, formatOfCode } from "../../src/workbook/number-formats.js";

it.each([
  ["General", "general"],
  ["0.00", "general"],
  ['#,##0.00 "mm"', "general"],
  ["0.00E+00", "scientific"],
  ["##0.0E+0", "scientific"],
  ['0.0" days"', "general"],
  ["0\\d", "general"],
  ["0_d", "general"],
  ["[Red]0", "general"],
  ["[>100]0;[Blue]0", "general"],
  ["# ?/?", "general"],
  ["@", "general"],
  ["0 m", "general"],
  ["Standard", "general"],
  ["0%", "percent"],
  ["0.0 %", "percent"],
  ['0"%"', "general"],
  ["yyyy-mm-dd", "date"],
  ["d/m/yy", "date"],
  ["mmm", "date"],
  ["mmmm yyyy", "date"],
  ["[$-409]d\\-mmm\\-yy;@", "date"],
  ["[$-F800]dddd, mmmm dd, yyyy", "date"],
  ["yyyy-mm-dd hh:mm:ss.000", "date"],
  ['[$-411]ggge"年"m"月"', "date"],
  ["hh:mm", "time"],
  ["h:mm AM/PM", "time"],
  ["[h]:mm:ss", "time"],
  ["[mm]:ss", "time"],
  ["[s]", "time"],
  ["mm:ss.0", "time"],
  ["", "general"],
])("the code %j is %s", (code, format) => {
  expect(formatOfCode(code)).toBe(format);
});

it("reads a code of any length in no time", () => {
  expect(formatOfCode('"'.repeat(100_000))).toBe("general");
  expect(formatOfCode("[".repeat(100_000))).toBe("general");
});

it.each([
  [0, "general"],
  [2, "general"],
  [9, "percent"],
  [10, "percent"],
  [11, "scientific"],
  [14, "date"],
  [20, "time"],
  [22, "date"],
  [31, "date"],
  [45, "time"],
  [48, "scientific"],
  [49, "general"],
  [58, "date"],
])("built-in format %i is %s", (id, format) => {
  expect(builtInFormat(id)).toBe(format);
});
