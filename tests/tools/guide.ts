import type { ColumnGuide, MeasuringWays } from "../../src/facts/index.js";
import { columnOption, readColumnFile } from "../../src/rulebook/index.js";

/** What a column file and options of the command line settle together. */
export function guideOf(
  text: string,
  options: Partial<Omit<ColumnGuide, "columns">> & { column?: string[] } = {},
  ways: MeasuringWays = new Map(),
): ColumnGuide {
  const reading = text === "" ? null : readColumnFile({ path: "c.yaml", text }, ways);
  if (reading && !reading.ok) throw new Error(JSON.stringify(reading.findings));
  const { column = [], ...rest } = options;
  const columns = column.map((one) => {
    const option = columnOption(one);
    if (!option.ok) throw new Error(option.text);
    return option.word;
  });
  return { file: reading?.columns ?? null, language: null, decimalSign: null, ...rest, columns };
}
