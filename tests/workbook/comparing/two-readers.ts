import { decodeAs } from "./decode-as.js";
import { type Difference, type Differing, differences } from "./differences.js";
import { exceljsCells, exceljsTable } from "./exceljs-cells.js";
import type { PlainCells, PlainValue } from "./plain-cells.js";
import { sheetjsCells, sheetjsTable } from "./sheetjs-cells.js";

export type ReaderName = "exceljs" | "sheetjs";
export const READERS: readonly ReaderName[] = ["exceljs", "sheetjs"];

/** One way in which a reader does otherwise than ours. */
export type Found = { readonly what: "refuses" } | ({ readonly what: Difference } & Differing);

/** A text file needs to be told to the others what ours finds by itself. */
export interface TextForm {
  readonly encoding: string;
  readonly delimiter: string;
}

const SHOWN_CHARACTERS = 200;

/** Reads the file with another reader and lists what differs from our cells; empty where the two agree on every cell. */
export async function foundBy(
  reader: ReaderName,
  bytes: Uint8Array,
  ours: PlainCells,
  form?: TextForm,
): Promise<readonly Found[]> {
  const text = form === undefined ? null : decodeAs(form.encoding, bytes);
  let theirs: PlainCells;
  try {
    theirs = form === undefined || text === null ? await cellsBy(reader, bytes) : await tableBy(reader, text, form);
  } catch {
    return [{ what: "refuses" }];
  }
  return [...differences(ours, theirs)].map(([what, differing]) => ({
    what,
    ...differing,
    theirs: shortened(differing.theirs),
  }));
}

async function cellsBy(reader: ReaderName, bytes: Uint8Array): Promise<PlainCells> {
  return reader === "exceljs" ? exceljsCells(bytes) : sheetjsCells(bytes);
}

async function tableBy(reader: ReaderName, text: string, { delimiter }: TextForm): Promise<PlainCells> {
  return reader === "exceljs" ? exceljsTable(text, delimiter) : sheetjsTable(text, delimiter);
}

/** A text of a megabyte would drown what a failed test has to say. */
function shortened(value: PlainValue | null): PlainValue | null {
  return typeof value === "string" && value.length > SHOWN_CHARACTERS ? `${value.slice(0, 4)}…` : value;
}
