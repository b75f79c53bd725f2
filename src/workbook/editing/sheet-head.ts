import { cellName } from "../../base/index.js";
import type { SheetFound, WrittenColumns } from "./sheet-planner.js";
import type { Located } from "./sheet-tags.js";
import type { SheetWish } from "./sheet-wish.js";
import { attributesOf } from "./xml-places.js";

/** Text that takes the place of a stretch of the part. */
export interface HeadChange extends Located {
  readonly text: string;
}

const GAP_WIDTH = 2;

/**
 * The changes in front of the rows: the range that the sheet says it fills, and the widths of our columns.
 *
 * @param widths - of our columns, in characters
 */
export function headChanges(found: SheetFound, wish: SheetWish, widths: readonly number[]): readonly HeadChange[] {
  const changes = [...dimensionChange(found, wish)];
  if (wish.columns) changes.push(...columnChanges(found, wish.columns.first, widths));
  return changes.sort((a, b) => a.from - b.from);
}

/** The true range, with what is added; whatever the sheet said before. */
function dimensionChange(found: SheetFound, wish: SheetWish): readonly HeadChange[] {
  if (!found.dimension) return [];
  const rows = [...wish.frames.map(({ row }) => row), ...wish.rows];
  const columns = wish.frames.map(({ column }) => column);
  if (wish.columns && wish.rows.size > 0) columns.push(wish.columns.first, wish.columns.last);
  const { top, bottom, left, right } = found.rows;
  if (right > 0) {
    rows.push(top, bottom);
    columns.push(left, right);
  }
  if (columns.length === 0) return [];
  const first = cellName(least(rows), least(columns));
  const last = cellName(most(rows), most(columns));
  return [{ ...found.dimension, text: first === last ? first : `${first}:${last}` }];
}

function least(numbers: readonly number[]): number {
  return numbers.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
}

function most(numbers: readonly number[]): number {
  return numbers.reduce((a, b) => Math.max(a, b), 0);
}

/** Column descriptions must not overlap: one that reaches into our columns is cut around them. */
function columnChanges(found: SheetFound, first: number, widths: readonly number[]): readonly HeadChange[] {
  const last = first + widths.length - 1;
  const name = `${found.prefix}col`;
  const gap = first - 1;
  const gapTold = gap === 0 || found.columns.some(({ min, max }) => min <= gap && gap <= max);
  const col = (at: number, width: number) => `<${name} min="${at}" max="${at}" width="${width}" customWidth="1"/>`;
  const ours = (gapTold ? "" : col(gap, GAP_WIDTH)) + widths.map((width, i) => col(first + i, width)).join("");

  const changes: HeadChange[] = [];
  let placed = false;
  for (const column of found.columns) {
    if (column.max < first) continue;
    if (column.min > last) {
      if (!placed) changes.push({ from: column.from, to: column.from, text: ours });
      placed = true;
      continue;
    }
    const left = column.min < first ? recut(column, column.min, first - 1) : "";
    const right = column.max > last ? recut(column, last + 1, column.max) : "";
    changes.push({ from: column.from, to: column.to, text: left + (placed ? "" : ours) + right });
    placed = true;
  }
  if (placed) return changes;
  const element = found.columnsElement;
  if (!element) {
    const text = `<${name}s>${ours}</${name}s>`;
    return [{ from: found.sheetDataAt, to: found.sheetDataAt, text }];
  }
  if (element.closeAt > 0) return [{ from: element.closeAt, to: element.closeAt, text: ours }];
  return [{ from: element.from, to: element.to, text: `<${name}s>${ours}</${name}s>` }];
}

/** A column description for a part of its columns. */
function recut({ tag }: WrittenColumns, min: number, max: number): string {
  const places = attributesOf(tag);
  const changes = [
    { place: places.get("min"), text: String(min) },
    { place: places.get("max"), text: String(max) },
  ].sort((a, b) => (b.place?.from ?? 0) - (a.place?.from ?? 0));
  let text = tag;
  for (const { place, text: value } of changes) {
    if (place) text = text.slice(0, place.from) + value + text.slice(place.to);
  }
  return text.endsWith("/>") ? text : `${text.slice(0, -1)}/>`;
}
