import type { MethodAdvised, MethodTried, PointResult } from "../../screening/index.js";
import { Piece, type Sink } from "./sinks.js";

/** Members that say something of a point as a whole; they stand between its place and its findings. */
export type WholeMember = "methods" | "methodAdvised" | "settledBy";

/** The members of a method tried, each with the way its value is written; one that is forgotten does not compile. */
const METHOD_MEMBERS: { readonly [K in keyof MethodTried]-?: (tried: MethodTried, sink: Sink) => void } = {
  method: ({ method }, sink) => sink.piece(idPiece(method)),
  proposed: ({ proposed }, sink) => sink.piece(proposed ? TRUE : FALSE),
  allowed: ({ allowed }, sink) => sink.piece(allowed ? TRUE : FALSE),
  verdict: ({ verdict }, sink) => sink.piece(idPiece(verdict)),
  fails: ({ fails }, sink) => writeIds(fails, sink),
  warns: ({ warns }, sink) => writeIds(warns, sink),
  undecided: ({ undecided }, sink) => writeIds(undecided, sink),
  missing: ({ missing }, sink) => writeIds(missing, sink),
  asked: ({ asked }, sink) => writeIds(asked, sink),
  notAsked: ({ notAsked }, sink) => writeIds(notAsked, sink),
};
const METHOD_PIECES = Object.entries(METHOD_MEMBERS).map(
  ([member, write], i) => [new Piece(`${i === 0 ? "{" : ","}"${member}":`), write] as const,
);
const TRUE = new Piece("true");
const FALSE = new Piece("false");
const NULL = new Piece("null");
const OPEN = new Piece("[");
const BETWEEN = new Piece(",");
const CLOSE = new Piece("]");
const NONE = new Piece("[]");
const END = new Piece("}");
const METHODS = new Piece('"methods":');
const ADVISED = new Piece(',"methodAdvised":');
const SETTLED_BY = new Piece(',"settledBy":');

/** Writes what is said of a point as a whole, as members of its JSON without the braces. */
export function writeWhole({ methods, methodAdvised, settledBy }: Pick<PointResult, WholeMember>, sink: Sink): void {
  sink.piece(METHODS);
  if (methods === null) sink.piece(NULL);
  else {
    sink.piece(OPEN);
    for (let i = 0; i < methods.length; i++) {
      if (i > 0) sink.piece(BETWEEN);
      for (const [opening, write] of METHOD_PIECES) {
        sink.piece(opening);
        write(methods[i] as MethodTried, sink);
      }
      sink.piece(END);
    }
    sink.piece(CLOSE);
  }
  sink.piece(ADVISED);
  if (methodAdvised === null) sink.piece(NULL);
  else writeAdvised(methodAdvised, sink);
  sink.piece(SETTLED_BY);
  if (settledBy === null) sink.piece(NULL);
  else writeIds(settledBy, sink);
}

const MEMBERS_OF_ADVISED: { readonly [K in keyof MethodAdvised]-?: (advised: MethodAdvised) => Piece } = {
  method: ({ method }) => idPiece(method),
  verdict: ({ verdict }) => idPiece(verdict),
  closest: ({ closest }) => (closest ? TRUE : FALSE),
};
const ADVISED_PIECES = Object.entries(MEMBERS_OF_ADVISED).map(
  ([member, piece], i) => [new Piece(`${i === 0 ? "{" : ","}"${member}":`), piece] as const,
);

function writeAdvised(advised: MethodAdvised, sink: Sink): void {
  for (const [opening, piece] of ADVISED_PIECES) {
    sink.piece(opening);
    sink.piece(piece(advised));
  }
  sink.piece(END);
}

/** Ids of rules, facts and methods hold nothing that JSON would escape. */
function writeIds(ids: readonly string[], sink: Sink): void {
  if (ids.length === 0) {
    sink.piece(NONE);
    return;
  }
  sink.piece(OPEN);
  for (let i = 0; i < ids.length; i++) {
    if (i > 0) sink.piece(BETWEEN);
    sink.piece(idPiece(ids[i] as string));
  }
  sink.piece(CLOSE);
}

/** Of the few ids of rules, facts, methods and outcomes each is kept once. */
const idPieces = new Map<string, Piece>();

function idPiece(id: string): Piece {
  const known = idPieces.get(id);
  if (known) return known;
  const piece = new Piece(`"${id}"`);
  idPieces.set(id, piece);
  return piece;
}
