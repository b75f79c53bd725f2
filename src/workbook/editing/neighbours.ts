import { readAddress } from "../cell-address.js";
import type { WorkbookPackage } from "../package.js";
import { readRelationships } from "../relationships.js";
import { passXml } from "../xml-pass.js";
import { readRange } from "./ranges.js";

/** Width of a usual column, English Metric Units: 64 pixels of 9,525 each. */
const USUAL_COLUMN = 609_600;

/** The first and last of our rows. */
export interface OurRows {
  readonly first: number;
  readonly last: number;
}

/**
 * The last column that something beside the cells takes: a table wherever it stands, and in our rows a picture, a
 * chart or a comment. Our columns begin behind it, so that nothing is cut and nothing covers them.
 *
 * @throws Unreadable if a part is damaged
 */
export async function lastTakenColumn(source: WorkbookPackage, sheetKey: string, rows: OurRows): Promise<number> {
  let last = 0;
  for (const { type, target } of await readRelationships(source, sheetKey)) {
    if (target === null) continue;
    if (type === "table") last = Math.max(last, await tableEdge(source, target));
    else if (type === "drawing") last = Math.max(last, await drawingEdge(source, target, rows));
    else if (type === "comments") last = Math.max(last, await commentEdge(source, target, rows));
  }
  return last;
}

async function tableEdge(source: WorkbookPackage, key: string): Promise<number> {
  let edge = 0;
  await pass(source, key, (name, attributes, depth) => {
    if (depth === 1 && name === "table") edge = readRange(attributes.ref ?? "")?.right ?? 0;
  });
  return edge;
}

async function commentEdge(source: WorkbookPackage, key: string, { first, last }: OurRows): Promise<number> {
  let edge = 0;
  await pass(source, key, (name, attributes) => {
    const at = name === "comment" ? readAddress(attributes.ref ?? "") : null;
    if (at && at.row >= first && at.row <= last) edge = Math.max(edge, at.column);
  });
  return edge;
}

/** Where one drawing stands: rows and columns count from 0, as drawings count. */
interface Anchor {
  top: number;
  bottom: number;
  right: number;
  wide: number;
}

async function drawingEdge(source: WorkbookPackage, key: string, rows: OurRows): Promise<number> {
  const part = await source.part(key, "other");
  if (!part) return 0;
  let edge = 0;
  let anchor: Anchor | null = null;
  let side = "";
  passXml(part, {
    open(name, attributes, depth) {
      if (depth === 2) anchor = /^(?:one|two)CellAnchor$/.test(name) ? { top: 0, bottom: -1, right: 0, wide: 0 } : null;
      if (depth === 3) side = name;
      if (depth === 3 && name === "ext" && anchor) anchor.wide = Number(attributes.cx) || 0;
      return depth === 4 && (side === "from" || side === "to") && (name === "col" || name === "row");
    },
    close(name, text, depth) {
      if (anchor && depth === 4 && (side === "from" || side === "to")) place(anchor, side, name, Number(text) || 0);
      if (anchor && depth === 2) {
        const bottom = anchor.bottom < 0 ? Number.POSITIVE_INFINITY : anchor.bottom;
        const columns = Math.ceil(anchor.wide / USUAL_COLUMN);
        if (anchor.top < rows.last && bottom >= rows.first - 1) edge = Math.max(edge, anchor.right + 1 + columns);
        anchor = null;
      }
    },
  });
  return edge;
}

function place(anchor: Anchor, side: "from" | "to", name: string, value: number): void {
  if (name === "col") anchor.right = Math.max(anchor.right, value);
  else if (name === "row" && side === "from") anchor.top = value;
  else if (name === "row") anchor.bottom = value;
}

async function pass(
  source: WorkbookPackage,
  key: string,
  see: (name: string, attributes: Readonly<Record<string, string>>, depth: number) => void,
): Promise<void> {
  const part = await source.part(key, "other");
  if (!part) return;
  passXml(part, {
    open(name, attributes, depth) {
      see(name, attributes, depth);
      return false;
    },
    close() {},
  });
}
