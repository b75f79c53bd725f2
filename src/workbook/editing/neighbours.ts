import { readAddress } from "../cell-address.js";
import type { WorkbookPackage } from "../package.js";
import { readRelationships } from "../relationships.js";
import { passXml } from "../xml-pass.js";
import { readRange } from "./ranges.js";

/** Width of a usual column, English Metric Units: 64 pixels of 9,525 each. */
const USUAL_COLUMN = 609_600;
/** Height of a usual row: 20 pixels. */
const USUAL_ROW = 190_500;

/** The first and last of our rows. */
export interface OurRows {
  readonly first: number;
  readonly last: number;
}

/** What stands on a sheet beside its cells; rows and columns count from 1, 0 for none. */
export interface Neighbours {
  /** The last column that is taken: by a table wherever it stands, and in our rows by a picture, chart or comment. */
  readonly lastTaken: number;
  /** The last row and column that a picture or chart reaches, wherever it stands. */
  readonly bottom: number;
  readonly right: number;
}

/**
 * What stands beside the cells of a sheet. Our columns begin behind it, so that nothing is cut and nothing covers them.
 *
 * @throws Unreadable if a part is damaged
 */
export async function neighboursOf(source: WorkbookPackage, sheetKey: string, rows: OurRows): Promise<Neighbours> {
  let lastTaken = 0;
  let bottom = 0;
  let right = 0;
  for (const { type, target } of await readRelationships(source, sheetKey)) {
    if (target === null) continue;
    if (type === "table") lastTaken = Math.max(lastTaken, await tableEdge(source, target));
    else if (type === "comments") lastTaken = Math.max(lastTaken, await commentEdge(source, target, rows));
    else if (type === "drawing") {
      const drawn = await drawingEdges(source, target, rows);
      lastTaken = Math.max(lastTaken, drawn.lastTaken);
      bottom = Math.max(bottom, drawn.bottom);
      right = Math.max(right, drawn.right);
    }
  }
  return { lastTaken, bottom, right };
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
  high: number;
}

async function drawingEdges(source: WorkbookPackage, key: string, rows: OurRows): Promise<Neighbours> {
  const edges = { lastTaken: 0, bottom: 0, right: 0 };
  const part = await source.part(key, "other");
  if (!part) return edges;
  let anchor: Anchor | null = null;
  let side = "";
  passXml(part, {
    open(name, attributes, depth) {
      if (depth === 2)
        anchor = /^(?:one|two)CellAnchor$/.test(name) ? { top: 0, bottom: 0, right: 0, wide: 0, high: 0 } : null;
      if (depth === 3) side = name;
      if (depth === 3 && name === "ext" && anchor) {
        anchor.wide = Number(attributes.cx) || 0;
        anchor.high = Number(attributes.cy) || 0;
      }
      return depth === 4 && (side === "from" || side === "to") && (name === "col" || name === "row");
    },
    close(name, text, depth) {
      if (anchor && depth === 4 && (side === "from" || side === "to")) place(anchor, side, name, Number(text) || 0);
      if (anchor && depth === 2) {
        const bottom = Math.max(anchor.bottom, anchor.top) + 1 + Math.ceil(anchor.high / USUAL_ROW);
        const right = anchor.right + 1 + Math.ceil(anchor.wide / USUAL_COLUMN);
        edges.bottom = Math.max(edges.bottom, bottom);
        edges.right = Math.max(edges.right, right);
        if (anchor.top < rows.last && bottom >= rows.first) edges.lastTaken = Math.max(edges.lastTaken, right);
        anchor = null;
      }
    },
  });
  return edges;
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
