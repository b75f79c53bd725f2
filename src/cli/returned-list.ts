import { showText, tidyText } from "../base/index.js";
import { nodeInflating, readSurveyFile } from "../disk/index.js";
import type { ReturnedLine } from "../handover/index.js";
import { type CellValue, DEFAULT_LIMITS, type RawSheet, type ReadingOptions, readWorkbook } from "../workbook/index.js";

/** The lines of a returned list of errors, or why there are none, in one sentence. */
export type ReturnedReading =
  | { readonly ok: true; readonly lines: readonly ReturnedLine[] }
  | { readonly ok: false; readonly text: string };

/**
 * Reads a list of errors (.csv or .xlsx) that an import on the other side returned. The heading row is the first one in
 * which all of the key headings stand; every row below it that holds anything is one refused row.
 *
 * @param headings - headings of the columns that name the row, in the order of the key columns
 */
export async function openReturned(
  path: string,
  headings: readonly string[],
  options: Pick<ReadingOptions, "encoding" | "separator">,
): Promise<ReturnedReading> {
  const read = await readSurveyFile(path, DEFAULT_LIMITS.fileBytes);
  if (!read.ok) return { ok: false, text: read.error.text };
  const reading = await readWorkbook(read.bytes, nodeInflating, options);
  if (!reading.ok) return { ok: false, text: reading.error.text };
  const found = reading.workbook.sheets.flatMap((sheet) => linesOf(sheet, headings) ?? []);
  const [lines] = found;
  const wanted = headings.map((heading) => `"${showText(heading)}"`).join(" and ");
  if (lines === undefined) {
    return { ok: false, text: `no row holds the heading ${wanted}; name the column with --key as the list has it` };
  }
  if (found.length > 1) {
    return { ok: false, text: `several sheets hold the heading ${wanted}; leave the one that lists the refused rows` };
  }
  return { ok: true, lines: lines.lines };
}

function linesOf({ rows }: RawSheet, headings: readonly string[]): { readonly lines: ReturnedLine[] } | null {
  for (const [i, row] of rows.entries()) {
    const places = headings.map(
      (heading) => row.cells.find(({ value }) => textOf(value) === tidyText(heading))?.column,
    );
    const columns = places.filter((column) => column !== undefined);
    if (columns.length < headings.length) continue;
    const lines = rows
      .slice(i + 1)
      .filter(({ cells }) => cells.some(({ value }) => textOf(value) !== ""))
      .map((line) => ({ row: line.row, key: columns.map((column) => textOf(line.at(column))) }));
    return { lines };
  }
  return null;
}

/** Outer blanks are no part of a key; anything but text and whole numbers is none at all. */
function textOf(value: CellValue | undefined): string {
  if (value?.kind === "text") return tidyText(value.text);
  return value?.kind === "number" && Number.isSafeInteger(value.number) ? String(value.number) : "";
}
