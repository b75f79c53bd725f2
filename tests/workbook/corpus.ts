import { existsSync, readFileSync } from "node:fs";
import { nodeInflating } from "../../src/disk/index.js";
import { DEFAULT_LIMITS, type RawWorkbook } from "../../src/workbook/index.js";
import { WorkbookPackage } from "../../src/workbook/package.js";
import { Unreadable } from "../../src/workbook/unreadable.js";
import { partKey } from "../../src/workbook/zip-directory.js";

/** Files that stay outside the project; tests that read them are left out where the folder is not there. */
const CORPUS = new URL("../../../shared/", import.meta.url);

/** One file of a corpus, as far as these tests look at it. */
export interface CorpusFile {
  readonly file: string;
  readonly bytes: number;
  readonly expect: "opens" | "clear-error" | "either" | "opens-safely";
  readonly prefer?: "opens" | "clear-error";
  readonly either_outcome_ok?: boolean;
  readonly max_seconds?: number;
  readonly non_empty_cells?: number;
  readonly csv?: { readonly encoding: string; readonly delimiter: string; readonly non_empty: number };
}

export function corpusExists(folder: string): boolean {
  return existsSync(new URL(`${folder}/index.json`, CORPUS));
}

/** The spreadsheet files of one folder of the corpus, in the order of its index. */
export function corpusFiles(folder: string): readonly CorpusFile[] {
  if (!corpusExists(folder)) return [];
  const index: readonly CorpusFile[] = JSON.parse(readFileSync(new URL(`${folder}/index.json`, CORPUS), "utf8"));
  return index.filter(({ file }) => /\.(?:xlsx|csv)$/.test(file));
}

export function corpusBytes(folder: string, file: string): Uint8Array {
  return new Uint8Array(readFileSync(new URL(`${folder}/${file}`, CORPUS)));
}

/** Filled cells as the index counts them: a formula that was saved without a result is none. */
export function filledCells(workbook: RawWorkbook): number {
  let count = 0;
  for (const sheet of workbook.sheets) {
    for (const row of sheet.rows) count += row.cells.filter((cell) => cell.value.kind !== "no-result").length;
  }
  return count;
}

/** All parts of a workbook that are XML by their names; none of a file that is no readable zip. */
export async function xmlParts(file: Uint8Array): Promise<readonly Uint8Array[]> {
  try {
    const source = new WorkbookPackage(file, nodeInflating, DEFAULT_LIMITS);
    const parts: Uint8Array[] = [];
    for (const name of source.names.filter((name) => /\.(?:xml|rels|vml)$/i.test(name))) {
      const part = await source.part(partKey(name), "sheet");
      if (part) parts.push(part.bytes);
    }
    return parts;
  } catch (error) {
    if (error instanceof Unreadable) return [];
    throw error;
  }
}
