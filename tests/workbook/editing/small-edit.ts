import { unzipSync, zipSync } from "fflate";
import { nodeInflating } from "../../../src/disk/index.js";
import {
  type CellLook,
  editWorkbook,
  type RawWorkbook,
  readWorkbook,
  type WorkbookEdits,
} from "../../../src/workbook/index.js";

import { type SmallParts, type SmallSheet, smallParts } from "../small-workbook.js";

export const LOOK: CellLook = {
  points: 10,
  bold: false,
  wrap: true,
  filled: false,
  bottomLine: "hair",
  staysText: false,
};

const TYPES = [
  '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">',
  '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>',
  '<Default Extension="xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>',
  "</Types>",
].join("");

/** The parts of a small workbook, with the list of content types that an edit adds to. */
export function editableParts(sheets: readonly SmallSheet[], extra: SmallParts = {}): Record<string, Uint8Array> {
  return smallParts(sheets, { ...extra, parts: { "[Content_Types].xml": TYPES, ...extra.parts } });
}

/** The same as a file. */
export function editableWorkbook(sheets: readonly SmallSheet[], extra: SmallParts = {}): Uint8Array {
  return zipSync(editableParts(sheets, extra), { mtime: new Date("2026-01-01T00:00:00Z") });
}

interface Place {
  readonly row: number;
  readonly column: number;
}

/** One column, one mark and one sheet, added to the first sheet of a workbook: what a row gets names the row. */
export function smallEdit(workbook: RawWorkbook, mark: Place | null = firstCell(workbook)): WorkbookEdits {
  const [sheet] = workbook.sheets;
  return {
    looks: [LOOK],
    sheets: [
      {
        sheet: sheet?.name ?? "",
        widths: [20],
        rows: new Set(sheet?.rows.map(({ row }) => row)),
        cellsOf: (row) => [{ content: textOf(row), look: 0 }],
        printed: 1,
        frames: mark === null ? [] : [{ ...mark, line: "thick" as const }],
      },
    ],
    added: [
      {
        name: "Marked cells",
        widths: [10, 40],
        footer: "made by a test",
        frozenRows: 1,
        rows: () => [
          {
            height: null,
            cells: [
              { content: "cell", look: 0 },
              { content: "why", look: 0 },
            ],
          },
          {
            height: 20,
            cells: [
              { content: "A1", look: 0 },
              { content: 7.5, look: 0 },
            ],
          },
        ],
      },
    ],
  };
}

/** What the added column says in a row. */
export function textOf(row: number): string {
  return `=row ${row} <&> "é"`;
}

function firstCell(workbook: RawWorkbook): Place | null {
  const row = workbook.sheets[0]?.rows[0];
  const column = row?.cells[0]?.column;
  return row && column ? { row: row.row, column } : null;
}

/** The edited file, or the reason why there is none. */
export async function edited(bytes: Uint8Array, edits: WorkbookEdits): Promise<Uint8Array | string> {
  const editing = await editWorkbook(bytes, edits, nodeInflating);
  if (!editing.ok) return editing.reason.code;
  const pieces: Uint8Array[] = [];
  for await (const piece of editing.pieces) pieces.push(piece.slice());
  return new Uint8Array(Buffer.concat(pieces));
}

/** The edited file of a workbook that must be editable. */
export async function editedFile(bytes: Uint8Array, edits?: WorkbookEdits): Promise<Uint8Array> {
  const result = await edited(bytes, edits ?? smallEdit(await read(bytes)));
  if (typeof result === "string") throw new Error(`cannot be edited: ${result}`);
  return result;
}

export async function read(bytes: Uint8Array): Promise<RawWorkbook> {
  const reading = await readWorkbook(bytes, nodeInflating);
  if (!reading.ok) throw new Error(reading.error.text);
  return reading.workbook;
}

/** The parts of a package that an edit changed, by name; those that are new have an empty beginning. */
export function changedParts(before: Uint8Array, after: Uint8Array): readonly string[] {
  const old = unzipSync(before);
  const now = unzipSync(after);
  const gone = Object.keys(old).filter((name) => !now[name]);
  const changed = Object.keys(now).filter((name) => Buffer.compare(now[name] ?? EMPTY, old[name] ?? EMPTY) !== 0);
  return [...gone.map((name) => `gone: ${name}`), ...changed].sort();
}

const EMPTY = new Uint8Array();
