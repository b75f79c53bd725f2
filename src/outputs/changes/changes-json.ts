import type { RunCompared } from "../../comparing/index.js";
import { jsonText } from "../json/json-text.js";
import type { ChangesShown } from "./changes-text.js";

/** What changes as one JSON document that ends in a line break. */
export function changesJson({ before, after, differences, things, turned }: ChangesShown): string {
  return `${jsonText({ before: side(before), after: side(after), differences, things, turned })}\n`;
}

/** The rulebook stands first, and what it was tried with behind it. */
function side({ rulebook, ...run }: RunCompared): unknown {
  return { ...rulebook, run };
}
