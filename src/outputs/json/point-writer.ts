import type { CellPlace } from "../../base/index.js";
import { type Finding, type PointResult, repeatedBy } from "../../screening/index.js";
import { jsonText } from "./json-text.js";
import { factShape, findingShape } from "./shapes.js";
import { Piece, type Sink } from "./sinks.js";
import { type WholeMember, writeWhole } from "./whole-writer.js";

/** Text that stands in JSON as it is. */
const PLAIN = /^[ !#-[\]-~]*$/;

/** The members of a point in the order in which documents write them; its findings come last. */
const MEMBERS = [
  "id",
  "point",
  "machine",
  "assetTag",
  "component",
  "bearingPosition",
  "direction",
  "file",
  "sheet",
  "row",
  "verdict",
  "accepted",
] as const satisfies readonly (keyof PointResult)[];

/** A member that the contract gains and that is forgotten above does not compile. */
type Forgotten = Exclude<keyof PointResult, (typeof MEMBERS)[number] | WholeMember | "findings">;
const OPENINGS: Forgotten extends never ? readonly Piece[] : never = MEMBERS.map(
  (member, i) => new Piece(`${i === 0 ? "{" : ","}"${member}":`),
);
const BETWEEN = new Piece(",");
const FINDINGS = new Piece(',"findings":[');
const END = new Piece("]}");

/** A finding cut where it differs from point to point: at the cells of each fact, at its message and at its group. */
interface FindingPieces {
  /** What stands before the cells of each fact. */
  readonly beforeCells: readonly Piece[];
  readonly beforeMessage: Piece;
  readonly message: string | null;
  readonly beforeGroup: Piece;
  /** All from the cells to the group, for those with the same message. */
  readonly fromCellsToGroup: Piece;
  readonly end: Piece;
}

/**
 * Makes the writer of points as JSON. The same finding on thousands of points is put into words once; what differs
 * from point to point are the cells, and from group to group the group and how it is called.
 *
 * @returns a function that writes the JSON of one point: every member, null where it has no value
 */
export function pointWriter(): (point: PointResult, sink: Sink) => void {
  const writeFinding = findingWriter();
  return (point, sink) => {
    for (let i = 0; i < MEMBERS.length; i++) {
      sink.piece(OPENINGS[i] as Piece);
      writeValue(point[MEMBERS[i] ?? "id"], sink);
    }
    sink.piece(BETWEEN);
    writeWhole(point, sink);
    sink.piece(FINDINGS);
    for (let i = 0; i < point.findings.length; i++) {
      if (i > 0) sink.piece(BETWEEN);
      writeFinding(point.findings[i] as Finding, sink);
    }
    sink.piece(END);
  };
}

/** Makes the writer of findings, of points and of groups. */
export function findingWriter(): (finding: Finding, sink: Sink) => void {
  const known = new WeakMap<Finding, FindingPieces>();
  return (finding, sink) => {
    const pattern = repeatedBy(finding);
    let pieces = known.get(pattern);
    if (!pieces) {
      pieces = piecesOf(pattern);
      // What stands for itself may never come again.
      if (pattern !== finding) known.set(pattern, pieces);
    }
    for (let i = 0; i < pieces.beforeCells.length; i++) {
      sink.piece(pieces.beforeCells[i] as Piece);
      writeCells(finding.facts[i]?.cells ?? [], sink);
    }
    if (finding.message === pieces.message) sink.piece(pieces.fromCellsToGroup);
    else {
      sink.piece(pieces.beforeMessage);
      writeValue(finding.message, sink);
      sink.piece(pieces.beforeGroup);
    }
    writeValue(finding.group, sink);
    sink.piece(pieces.end);
  };
}

function writeValue(value: string | number | boolean | null, sink: Sink): void {
  if (value === null) sink.piece(NULL);
  else if (typeof value === "boolean") sink.piece(value ? TRUE : FALSE);
  else if (typeof value === "string" && PLAIN.test(value)) {
    sink.piece(QUOTE);
    sink.text(value);
    sink.piece(QUOTE);
  } else sink.text(jsonText(value));
}

const NULL = new Piece("null");
const TRUE = new Piece("true");
const FALSE = new Piece("false");
const QUOTE = new Piece('"');
const NO_CELLS = new Piece("[]");
const CELL_END = new Piece('"}');
const CELLS_END = new Piece("]");

function writeCells(cells: readonly CellPlace[], sink: Sink): void {
  if (cells.length === 0) {
    sink.piece(NO_CELLS);
    return;
  }
  for (let i = 0; i < cells.length; i++) {
    const { sheet, cell } = cells[i] as CellPlace;
    sink.piece(i === 0 ? beforeCell(sheet).first : beforeCell(sheet).next);
    sink.text(cell);
    sink.piece(CELL_END);
  }
  sink.piece(CELLS_END);
}

/** What stands before the name of a cell, by sheet; a run has few sheets. */
const beforeCells = new Map<string | null, { readonly first: Piece; readonly next: Piece }>();

function beforeCell(sheet: string | null): { readonly first: Piece; readonly next: Piece } {
  const known = beforeCells.get(sheet);
  if (known) return known;
  const text = `{"sheet":${jsonText(sheet)},"cell":"`;
  const pieces = { first: new Piece(`[${text}`), next: new Piece(`,${text}`) };
  beforeCells.set(sheet, pieces);
  return pieces;
}

/** Cuts the JSON of a finding. Within a text, the quotes looked for here would be escaped. */
function piecesOf(finding: Finding): FindingPieces {
  const whole = jsonText(findingShape({ ...finding, facts: [], message: null, group: null }));
  const [before = "", rest = ""] = whole.split('"facts":[]');
  const [afterFacts = "", afterMessage = ""] = rest.split('"message":null');
  const [beforeGroup = "", end = ""] = afterMessage.split('"group":null');
  const facts = finding.facts.map((fact) => jsonText(factShape({ ...fact, cells: [] })).split('"cells":[]'));
  let piece = `${before}"facts":[`;
  const beforeCells: Piece[] = [];
  for (const [i, [opening = "", closing = ""]] of facts.entries()) {
    beforeCells.push(new Piece(`${piece}${i === 0 ? "" : ","}${opening}"cells":`));
    piece = closing;
  }
  const { message } = finding;
  const toMessage = `${piece}]${afterFacts}"message":`;
  const toGroup = `${beforeGroup}"group":`;
  return {
    beforeCells,
    beforeMessage: new Piece(toMessage),
    message,
    beforeGroup: new Piece(toGroup),
    fromCellsToGroup: new Piece(`${toMessage}${jsonText(message)}${toGroup}`),
    end: new Piece(end),
  };
}
