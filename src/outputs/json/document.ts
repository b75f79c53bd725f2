import type { Screening } from "../../screening/index.js";
import { jsonText } from "./json-text.js";
import { pointTexts } from "./point-text.js";
import { groupShape, headShape, summaryShape } from "./shapes.js";

/**
 * The result document as a stream of text. One key of the head per line, one group and one point per line, so that two documents
 * can be compared line by line; keys always stand in the order of `shapes.ts` and none is ever left out.
 * A stream that breaks off has no end and is no JSON.
 *
 * @param screening - iterated once, here
 * @returns pieces to be written one after the other; `schemas/result.schema.json` says what they make up
 */
export function* jsonDocument(screening: Screening): IterableIterator<string> {
  const { groups } = screening.head;
  let opening = "{";
  // There may be very many groups; each is put into words by itself.
  for (const [key, value] of Object.entries(headShape({ ...screening.head, groups: [] }))) {
    if (key === "groups" && groups.length > 0) {
      opening += '"groups":[';
      for (const group of groups) {
        yield `${opening}\n${jsonText(groupShape(group))}`;
        opening = ",";
      }
      opening = "\n],\n";
    } else opening += `"${key}":${jsonText(value)},\n`;
  }
  yield `${opening}"points":[`;
  let between = "\n";
  const pointText = pointTexts();
  for (const point of screening.points()) {
    yield between + pointText(point);
    between = ",\n";
  }
  yield `\n],\n"summary":${jsonText(summaryShape(screening.summary()))}}\n`;
}

/**
 * The same result as lines of JSON: the head, a line per point, and a closing line that holds `summary` alone.
 * A stream without that last line broke off.
 *
 * @param screening - iterated once, here
 * @returns one line per piece, line end included
 */
export function* ndjsonDocument(screening: Screening): IterableIterator<string> {
  yield `${jsonText(headShape(screening.head))}\n`;
  const pointText = pointTexts();
  for (const point of screening.points()) yield `${pointText(point)}\n`;
  yield `${jsonText({ summary: summaryShape(screening.summary()) })}\n`;
}
