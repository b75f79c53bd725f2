import type { ResultHead, Screening } from "../../screening/index.js";
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
  yield* headText(screening.head, "\n", '"points":[');
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
 * @returns one line per piece, line end included; a head with groups comes in several pieces
 */
export function* ndjsonDocument(screening: Screening): IterableIterator<string> {
  yield* headText(screening.head, "", null);
  const pointText = pointTexts();
  for (const point of screening.points()) yield `${pointText(point)}\n`;
  yield `${jsonText({ summary: summaryShape(screening.summary()) })}\n`;
}

/**
 * The members of the head; in one piece where there are no groups. Of these there may be very many, and each is put
 * into words by itself.
 *
 * @param next - what follows within the same object; null where the head is a line of its own
 */
function* headText(head: ResultHead, lineEnd: string, next: string | null): IterableIterator<string> {
  let text = "{";
  const members = Object.entries(headShape({ ...head, groups: [] }));
  for (const [at, [key, value]] of members.entries()) {
    if (key === "groups" && head.groups.length > 0) {
      text += '"groups":[';
      for (const group of head.groups) {
        yield text + lineEnd + jsonText(groupShape(group));
        text = ",";
      }
      text = `${lineEnd}]`;
    } else text += `"${key}":${jsonText(value)}`;
    if (at < members.length - 1 || next !== null) text += `,${lineEnd}`;
  }
  yield next === null ? `${text}}\n` : text + next;
}
