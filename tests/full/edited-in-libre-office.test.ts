import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { beforeAll, describe, expect, it } from "vitest";
import { nodeInflating } from "../../src/disk/index.js";
import { readWorkbook } from "../../src/workbook/index.js";
import { richWorkbook } from "../tools/rich-workbook.js";
import { corpusBytes, corpusFiles } from "../workbook/corpus.js";
import { edited, smallEdit } from "../workbook/editing/small-edit.js";
import { run, temporaryFolder } from "./tools.js";

const RICH = "rich.xlsx";

const folder = temporaryFolder();
const before = join(folder, "before");
const after = join(folder, "after");
const hasOffice = run("soffice", ["--version"]).status === 0;
const files = corpusFiles("workbooks")
  .filter(({ file }) => file.endsWith(".xlsx"))
  .map(({ file }) => file);
/** Files that were edited, with the rows of their first sheet. */
const written = new Map<string, number>();

function convert(to: string, into: string): void {
  const profile = `-env:UserInstallation=file://${folder}/profile`;
  const paths = [...written.keys()].map((file) => join(into, file));
  const ended = run("soffice", [profile, "--headless", "--convert-to", to, "--outdir", into, ...paths]);
  expect(ended.status, ended.err).toBe(0);
}

beforeAll(async () => {
  for (const path of [before, after]) mkdirSync(path);
  for (const file of [RICH, ...files]) {
    const bytes = file === RICH ? richWorkbook() : corpusBytes("workbooks", file);
    const reading = await readWorkbook(bytes, nodeInflating);
    const result = reading.ok ? await edited(bytes, smallEdit(reading.workbook)) : "unreadable";
    if (typeof result === "string" || !reading.ok) continue;
    writeFileSync(join(before, file), bytes);
    writeFileSync(join(after, file), result);
    written.set(file, reading.workbook.sheets[0]?.rows.length ?? 0);
  }
  if (!hasOffice) return;
  convert("csv", before);
  convert("csv", after);
  convert("pdf", after);
});

function rowsOf(path: string): readonly (readonly string[])[] {
  return parse(readFileSync(path, "latin1"), { relax_column_count: true, relax_quotes: true }) as string[][];
}

describe.each([RICH, ...files])("%s with a column, a mark and a sheet, in LibreOffice", (file) => {
  const csv = file.replace(/\.xlsx$/, ".csv");

  it("shows what it showed before, and prints", ({ skip }) => {
    if (!hasOffice) skip("LibreOffice (soffice) is not installed");
    // What the reader refuses or the editor leaves alone is tested where that is decided.
    if (!written.has(file) || !existsSync(join(before, csv))) return;
    expect(existsSync(join(after, file.replace(/\.xlsx$/, ".pdf")))).toBe(true);
    const now = rowsOf(join(after, csv));
    const changed = rowsOf(join(before, csv)).flatMap((row, r) =>
      row.flatMap((cell, c) =>
        cell === "" || now[r]?.[c] === cell ? [] : [`${r + 1}/${c + 1}: ${cell}, ${now[r]?.[c]}`],
      ),
    );
    expect(changed).toEqual([]);
    expect(now.flat().filter((cell) => /^=row \d+ <&> "/.test(cell)).length).toBe(written.get(file));
  });
});
