import type { MethodAdvised, MethodTried, PointResult } from "../../screening/index.js";
import { jsonText } from "./json-text.js";
import { Piece, type Sink } from "./sinks.js";

/** Members that say something of a point as a whole; they stand between its place and its findings. */
export type WholeMember = "methods" | "methodAdvised" | "settledBy";

/** The members of a method tried in the order in which documents write them: single values, then lists. */
const SINGLE = ["method", "proposed", "allowed", "verdict"] as const satisfies readonly (keyof MethodTried)[];
const LISTS = [
  "fails",
  "warns",
  "undecided",
  "missing",
  "asked",
  "notAsked",
] as const satisfies readonly (keyof MethodTried)[];

/** A member that the contract gains and that is forgotten above does not compile. */
type Forgotten = Exclude<keyof MethodTried, (typeof SINGLE)[number] | (typeof LISTS)[number]>;
const BEFORE_LISTS: Forgotten extends never ? readonly Piece[] : never = LISTS.map(
  (member) => new Piece(`,"${member}":`),
);

const NULL = new Piece("null");
const OPEN = new Piece("[");
const BETWEEN = new Piece(",");
const CLOSE = new Piece("]");
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
      writeMethod(methods[i] as MethodTried, sink);
    }
    sink.piece(CLOSE);
  }
  sink.piece(ADVISED);
  if (methodAdvised === null) sink.piece(NULL);
  else sink.piece(advisedPiece(methodAdvised));
  sink.piece(SETTLED_BY);
  if (settledBy === null) sink.piece(NULL);
  else sink.piece(listPiece(settledBy));
}

function writeMethod(tried: MethodTried, sink: Sink): void {
  sink.piece(openingPiece(tried));
  for (let i = 0; i < LISTS.length; i++) {
    sink.piece(BEFORE_LISTS[i] as Piece);
    sink.piece(listPiece(tried[LISTS[i] ?? "fails"]));
  }
  sink.piece(END);
}

/** There are few methods and verdicts: of each combination the text is kept once. */
const openings = new Map<string, Piece>();

function openingPiece(tried: MethodTried): Piece {
  const key = `${tried.method} ${tried.verdict}${tried.proposed ? " proposed" : ""}${tried.allowed ? " allowed" : ""}`;
  const known = openings.get(key);
  if (known) return known;
  const members = SINGLE.map((member) => `${jsonText(member)}:${jsonText(tried[member])}`);
  const piece = new Piece(`{${members.join()}`);
  openings.set(key, piece);
  return piece;
}

const advices = new Map<string, Piece>();

function advisedPiece({ method, verdict, closest }: MethodAdvised): Piece {
  const key = `${method} ${verdict}${closest ? " closest" : ""}`;
  const known = advices.get(key);
  if (known) return known;
  const piece = new Piece(jsonText({ method, verdict, closest } satisfies MethodAdvised));
  advices.set(key, piece);
  return piece;
}

/** Points of which the same is said share their lists. */
const lists = new WeakMap<readonly string[], Piece>();

function listPiece(ids: readonly string[]): Piece {
  const known = lists.get(ids);
  if (known) return known;
  const piece = new Piece(jsonText(ids));
  lists.set(ids, piece);
  return piece;
}
