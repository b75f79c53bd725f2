import type { WorkbookPackage } from "../package.js";
import { quoted } from "../unreadable.js";
import { XmlScanner } from "../xml-scan.js";
import type { FrameLine, SheetEdit } from "./edits.js";
import { lastTakenColumn } from "./neighbours.js";
import { readRange } from "./ranges.js";
import { headChanges } from "./sheet-head.js";
import { type FramedCell, SHEET_NAMES, type SheetFound, SheetPlanner, type SheetWish } from "./sheet-planner.js";
import type { PlannedSheet } from "./sheet-splicer.js";
import { cannotEdit } from "./uneditable.js";

/** The last column of a sheet, XFD. */
const LAST_COLUMN = 16_384;

/** A sheet part, inflated piece by piece, each time it is asked for. */
export type SheetPieces = () => AsyncIterable<Uint8Array>;

/**
 * Finds the room for our columns in a sheet, and the places at which its bytes change.
 *
 * @param key - key of the sheet part
 * @throws Uneditable if the sheet must not or cannot be edited, Unreadable if it is damaged
 */
export async function planSheet(
  source: WorkbookPackage,
  key: string,
  pieces: SheetPieces,
  edit: SheetEdit,
): Promise<PlannedSheet> {
  const rows = edit.widths.length > 0 ? edit.rows : new Set<number>();
  const frames = framedCells(edit.frames);
  const wish: SheetWish = { sheet: edit.sheet, rows, pointsOf: edit.pointsOf, frames, columns: null };
  const found = await passOver(key, pieces, wish);
  if (rows.size === 0) return planned(edit, wish, found);
  const ours = [...rows].reduce((most, row) => ({ first: Math.min(most.first, row), last: Math.max(most.last, row) }), {
    first: Number.POSITIVE_INFINITY,
    last: 0,
  });
  const beside = await lastTakenColumn(source, key, ours);
  const lastFramed = frames.reduce((most, { column }) => Math.max(most, column), 0);
  const taken = Math.max(found.lastFilled, found.lastTaken, beside, lastFramed);
  // An empty column keeps ours apart from a table, which would otherwise grow over them.
  const first = taken === 0 ? 1 : taken + 2;
  const last = first + edit.widths.length - 1;
  if (last > LAST_COLUMN) {
    cannotEdit("no-room", `its sheet ${quoted(edit.sheet)} is in use up to its right edge, so that there is no room`);
  }
  const placed = { ...wish, columns: { first, last } };
  // Empty cells where ours come: they must make way, so that the places are noted anew.
  return planned(edit, placed, found.rightInOurRows < first ? found : await passOver(key, pieces, placed));
}

async function passOver(key: string, pieces: SheetPieces, wish: SheetWish): Promise<SheetFound> {
  const planner = new SheetPlanner(wish);
  const scanner = new XmlScanner(key, SHEET_NAMES, planner);
  for await (const piece of pieces()) scanner.write(piece);
  scanner.end();
  return planner.found;
}

function planned(edit: SheetEdit, wish: SheetWish, found: SheetFound): PlannedSheet {
  const head = headChanges(found, wish, edit.widths);
  return { edit, wish, prefix: found.prefix, head, splices: found.splices };
}

/** @throws RangeError for an address that cannot be */
function framedCells(frames: ReadonlyMap<string, FrameLine>): readonly FramedCell[] {
  const cells = [...frames].map(([name, line]) => {
    const range = readRange(name);
    if (!range) throw new RangeError(`"${name}" is no address of a cell`);
    return { row: range.top, column: range.left, line };
  });
  return cells.sort((a, b) => a.row - b.row || a.column - b.column);
}
