import { jsonText } from "../json/json-text.js";
import type { ChangesShown } from "./changes-text.js";

/** What changes as one JSON document that ends in a line break. */
export function changesJson({ before, after, things, turned }: ChangesShown): string {
  return `${jsonText({ before, after, things, turned })}\n`;
}
