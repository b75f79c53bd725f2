import { unzipSync, zipSync } from "fflate";

/**
 * A workbook packed anew, so that the same survey gives the same bytes: the content types come first, as spreadsheet
 * programs write them, and the times in the archive are fixed.
 *
 * @param written - an .xlsx file
 */
export function packed(written) {
  const parts = Object.entries(unzipSync(written)).sort(([a], [b]) => (a < b ? -1 : 1));
  const ordered = [
    ...parts.filter(([name]) => name.startsWith("[")),
    ...parts.filter(([name]) => !name.startsWith("[")),
  ];
  return zipSync(Object.fromEntries(ordered), { mtime: "2026-10-16T12:00:00", level: 9 });
}
