import { columnLetters } from "../../base/index.js";
import type { WorkbookPackage } from "../package.js";
import { quoted } from "../unreadable.js";
import { XmlScanner } from "../xml-scan.js";
import type { SheetEdit } from "./edits.js";
import { type Neighbours, neighboursOf } from "./neighbours.js";
import { headChanges } from "./sheet-head.js";
import { type SheetFound, SheetPlanner } from "./sheet-planner.js";
import type { PlannedSheet } from "./sheet-splicer.js";
import { SHEET_NAMES, type SheetWish } from "./sheet-wish.js";
import { cannotEdit } from "./uneditable.js";
import { Utf8Check } from "./utf8-check.js";

/** The last column of a sheet, XFD. */
const LAST_COLUMN = 16_384;
const NOTHING: Neighbours = { lastTaken: 0, bottom: 0, right: 0 };

/** The package of the workbook, opened anew: its limit on all parts together counts for one pass over a sheet. */
export type OpenPackage = () => WorkbookPackage;

/**
 * Finds the room for our columns in a sheet, and the places at which its bytes change.
 *
 * @param key - key of the sheet part
 * @throws Uneditable if the sheet must not or cannot be edited, Unreadable if it is damaged
 */
export async function planSheet(open: OpenPackage, key: string, edit: SheetEdit): Promise<PlannedSheet> {
  const rows = edit.widths.length > 0 ? edit.rows : new Set<number>();
  const sorted = [...edit.frames].sort((a, b) => a.row - b.row || a.column - b.column);
  const frames = sorted.filter(({ row, column }, i) => row !== sorted[i - 1]?.row || column !== sorted[i - 1]?.column);
  const wish: SheetWish = { sheet: edit.sheet, rows, frames, columns: null };
  const found = await passOver(open, key, wish);
  if (rows.size === 0) return planned(edit, wish, found, NOTHING);
  const ours = [...rows].reduce((most, row) => ({ first: Math.min(most.first, row), last: Math.max(most.last, row) }), {
    first: Number.POSITIVE_INFINITY,
    last: 0,
  });
  const beside = await neighboursOf(open(), key, ours);
  const lastFramed = frames.reduce((most, { column }) => Math.max(most, column), 0);
  const taken = Math.max(found.rows.lastFilled, found.lastTaken, beside.lastTaken, lastFramed);
  // An empty column keeps ours apart from a table, which would otherwise grow over them.
  const first = taken === 0 ? 1 : taken + 2;
  const last = first + edit.widths.length - 1;
  if (last > LAST_COLUMN) {
    cannotEdit("no-room", `its sheet ${quoted(edit.sheet)} is in use up to its right edge, so that there is no room`);
  }
  const placed = { ...wish, columns: { first, last } };
  // Empty cells where ours come: they must make way, so that the places are noted anew.
  const settled = found.rows.rightInOurRows < first ? found : await passOver(open, key, placed);
  return planned(edit, placed, settled, beside);
}

async function passOver(open: OpenPackage, key: string, wish: SheetWish): Promise<SheetFound> {
  const planner = new SheetPlanner(wish);
  await open().pour(key, "sheet", (name) => {
    const scanner = new XmlScanner(name, SHEET_NAMES, planner);
    const encoding = new Utf8Check(wish.sheet);
    return {
      write(piece) {
        encoding.see(piece);
        scanner.write(piece);
      },
      end: () => scanner.end(),
    };
  });
  return planner.found;
}

function planned(edit: SheetEdit, wish: SheetWish, found: SheetFound, beside: Neighbours): PlannedSheet {
  const head = headChanges(found, wish, edit.widths);
  const lastRow = [...wish.rows].reduce((most, row) => Math.max(most, row), found.rows.bottom);
  const printedColumn = Math.max(beside.right, (wish.columns?.first ?? 1) + edit.printed - 1);
  return {
    edit,
    wish,
    prefix: found.prefix,
    head,
    splices: found.rows.splices,
    printed: `$A$1:$${columnLetters(printedColumn)}$${Math.max(lastRow, beside.bottom)}`,
  };
}
