import type { ResultHead } from "../../screening/index.js";
import { overlayLines } from "../wording/overlays.js";
import { paragraph } from "./layout.js";

/** What sites have laid over the rulebook: what is switched off, changed and added, with the reason and who said so. */
export function overlaysSection({ rulebook }: ResultHead): readonly string[] {
  if (rulebook.overlays.length === 0) return [];
  return [
    "Laid over the rulebook",
    ...overlayLines(rulebook).flatMap(([book, lines]) => [
      ...paragraph(book, "  "),
      ...(lines.length === 0 ? ["    - nothing that an outcome rests on"] : []),
      ...lines.flatMap((line) => paragraph(line, "    - ")),
    ]),
  ];
}
