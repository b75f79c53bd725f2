/** A stored result document, with its points one by one. */
export interface DocumentPieces {
  /** What stands before the points. */
  readonly head: unknown;
  /** @throws SyntaxError where the document breaks off or is no JSON */
  points(): Iterable<unknown>;
}

const LINE_END = 0x0a;
const POINTS_BEGIN = '"points":[';
const POINTS_END = "],";

/**
 * Takes a result document apart without building it as a whole, where it is laid out as this program writes it: a point
 * per line, as one document or as lines of JSON. Any other JSON is parsed as a whole.
 *
 * @throws SyntaxError or TypeError if it is no JSON in UTF-8
 */
export function documentPieces(bytes: Uint8Array): DocumentPieces {
  const [first, next] = lineAt(bytes, 0);
  const head = first.endsWith("}") ? (JSON.parse(first) as unknown) : undefined;
  if (isObject(head) && !("points" in head)) return { head, points: () => ndjsonPoints(bytes, next) };
  return laidOut(bytes) ?? whole(bytes);
}

/** One document with a point per line; null if it is laid out in another way. */
function laidOut(bytes: Uint8Array): DocumentPieces | null {
  let head = "";
  for (let at = 0; at < bytes.length; ) {
    const [line, next] = lineAt(bytes, at);
    if (line === POINTS_BEGIN) {
      const parsed: unknown = JSON.parse(`${head}"points":null}`);
      return { head: parsed, points: () => linedPoints(bytes, next) };
    }
    if (!/^\{?"\w+":.*,$/.test(line)) return null;
    head += line;
    at = next;
  }
  return null;
}

function* linedPoints(bytes: Uint8Array, from: number): Iterable<unknown> {
  for (let at = from; ; ) {
    const [line, next] = lineAt(bytes, at);
    if (line === POINTS_END) {
      JSON.parse(`{${decode(bytes.subarray(next))}`);
      return;
    }
    yield JSON.parse(line.endsWith(",") ? line.slice(0, -1) : line);
    at = next;
  }
}

function* ndjsonPoints(bytes: Uint8Array, from: number): Iterable<unknown> {
  for (let at = from; ; ) {
    const [line, next] = lineAt(bytes, at);
    const parsed: unknown = JSON.parse(line);
    if (isObject(parsed) && "summary" in parsed) return;
    yield parsed;
    at = next;
  }
}

function whole(bytes: Uint8Array): DocumentPieces {
  const document: unknown = JSON.parse(decode(bytes));
  const points = isObject(document) && "points" in document ? document.points : null;
  return { head: document, points: () => (Array.isArray(points) ? points : [null]) };
}

/** The line that begins there, and where the next one does; an empty one behind the last. */
function lineAt(bytes: Uint8Array, at: number): readonly [line: string, next: number] {
  const found = bytes.indexOf(LINE_END, at);
  const end = found < 0 ? bytes.length : found;
  return [decode(bytes.subarray(at, end)), end + 1];
}

function decode(bytes: Uint8Array): string {
  return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
}

function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null;
}
