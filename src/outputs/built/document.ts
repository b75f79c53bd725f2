import type { BuiltCheck } from "../../built/index.js";
import { jsonText } from "../json/json-text.js";
import { builtHeadShape, builtPointShape, builtSummaryShape } from "./shapes.js";

/**
 * The comparison as one JSON document, in pieces: one key of the head per line, one point per line. Keys stand in the
 * order of `shapes.ts` and none is ever left out. A stream that breaks off has no end and is no JSON.
 *
 * @param check - iterated once, here
 * @returns pieces to be written one after the other; `schemas/built.schema.json` says what they make up
 */
export function* builtDocument(check: BuiltCheck): IterableIterator<string> {
  const head = Object.entries(builtHeadShape(check.head)).map(([key, value]) => `"${key}":${jsonText(value)},\n`);
  yield `{${head.join("")}"points":[`;
  let between = "\n";
  for (const point of check.points()) {
    yield between + jsonText(builtPointShape(point));
    between = ",\n";
  }
  yield `\n],\n"summary":${jsonText(builtSummaryShape(check.summary()))}}\n`;
}
