import type { GroupShown, ResultHead, Screening } from "../../screening/index.js";
import { jsonText } from "./json-text.js";
import { findingWriter, pointWriter } from "./point-writer.js";
import { groupShape, headShape, summaryShape } from "./shapes.js";
import { ByteSink, type Sink, TextSink } from "./sinks.js";

/** Bytes that are handed out at a time. */
const CHUNK = 1 << 17;

/**
 * The result document as a stream of text. One key of the head per line, one group and one point per line, so that two documents
 * can be compared line by line; keys always stand in the order of `shapes.ts` and none is ever left out.
 * A stream that breaks off has no end and is no JSON.
 *
 * @param screening - iterated once, here
 * @returns pieces to be written one after the other; `schemas/result.schema.json` says what they make up
 */
export function* jsonDocument(screening: Screening): IterableIterator<string> {
  for (const sink of documentParts(screening, new TextSink())) yield sink.take();
}

/**
 * The same document in UTF-8, in larger pieces.
 *
 * @param screening - iterated once, here
 * @returns pieces of memory that is used anew: each is good until two more have been asked for
 */
export function* jsonDocumentBytes(screening: Screening): IterableIterator<Uint8Array> {
  const sink = new ByteSink();
  for (const _ of documentParts(screening, sink)) if (sink.length >= CHUNK) yield sink.take();
  yield sink.take();
}

/**
 * The same result as lines of JSON: the head, a line per point, and a closing line that holds `summary` alone.
 * A stream without that last line broke off.
 *
 * @param screening - iterated once, here
 * @returns one line per piece, line end included; a head with groups comes in several pieces
 */
export function* ndjsonDocument(screening: Screening): IterableIterator<string> {
  const sink = new TextSink();
  for (const _ of headParts(screening.head, sink, "", null)) yield sink.take();
  const writePoint = pointWriter();
  for (const point of screening.points()) {
    writePoint(point, sink);
    sink.text("\n");
    yield sink.take();
  }
  yield `${jsonText({ summary: summaryShape(screening.summary()) })}\n`;
}

/** Writes the document; stops after each part, so that what was written can be taken. */
function* documentParts<S extends Sink>(screening: Screening, sink: S): IterableIterator<S> {
  for (const _ of headParts(screening.head, sink, "\n", '"points":[')) yield sink;
  let between = "\n";
  const writePoint = pointWriter();
  for (const point of screening.points()) {
    sink.text(between);
    writePoint(point, sink);
    between = ",\n";
    yield sink;
  }
  sink.text(`\n],\n"summary":${jsonText(summaryShape(screening.summary()))}}\n`);
  yield sink;
}

/**
 * Writes the members of the head; in one part where there are no groups. Of these there may be very many.
 *
 * @param next - what follows within the same object; null where the head is a line of its own
 */
function* headParts(head: ResultHead, sink: Sink, lineEnd: string, next: string | null): IterableIterator<void> {
  sink.text("{");
  const members = Object.entries(headShape({ ...head, groups: [] }));
  for (const [at, [key, value]] of members.entries()) {
    if (key === "groups" && head.groups.length > 0) {
      sink.text('"groups":[');
      yield* groupParts(head.groups, sink, lineEnd);
      sink.text(`${lineEnd}]`);
    } else sink.text(`"${key}":${jsonText(value)}`);
    if (at < members.length - 1 || next !== null) sink.text(`,${lineEnd}`);
  }
  sink.text(next ?? "}\n");
  yield;
}

function* groupParts(groups: readonly GroupShown[], sink: Sink, lineEnd: string): IterableIterator<void> {
  const writeFinding = findingWriter();
  for (const [i, group] of groups.entries()) {
    if (i > 0) sink.text(",");
    const [before = "", after = ""] = jsonText(groupShape(group, [])).split('"findings":[]');
    sink.text(`${lineEnd}${before}"findings":[`);
    for (const [j, finding] of group.findings.entries()) {
      if (j > 0) sink.text(",");
      writeFinding(finding, sink);
    }
    sink.text(`]${after}`);
    yield;
  }
}
