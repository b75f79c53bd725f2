import { type BookThing, type Rule, wordOfOverlays } from "../../rulebook/index.js";
import { overlaysOfRule, rulebookShown } from "../../screening/index.js";
import { overlayLines, overlaysInWords } from "../wording/overlays.js";
import { type Block, type Entry, type Line, list, text } from "./block.js";
import type { BookShown } from "./book-shown.js";

/** What sites have laid over the rulebook, with who, when and why; nothing where nobody has. */
export function overlayBlocks({ rulebook }: BookShown): readonly Block[] {
  if (rulebook.overlays.length === 0) return [];
  return [
    { is: "heading", level: 3, id: "overlays", line: ["1.1 What the site has laid over the rulebook"] },
    text(
      "This document shows the rulebook as the site applies it. What it changes, adds and switches off, who answers for it and " +
        "why is listed here, and said again where it stands:",
    ),
    ...overlayLines(rulebookShown(rulebook)).flatMap(([title, lines]): readonly Block[] => [
      text({ strong: title }, lines.length === 0 ? ": changes nothing that an outcome rests on." : ":"),
      ...list(lines.map((line): Line => [line])),
    ]),
  ];
}

/** What sites have to do with a rule. */
export function siteEntry({ id }: Rule, { rulebook }: BookShown): readonly Entry[] {
  const lines = overlaysInWords(overlaysOfRule(rulebook, id));
  return lines.length === 0 ? [] : [{ label: "Changed by the site", blocks: list(lines.map((line): Line => [line])) }];
}

/** What sites have to do with a thing that is no rule, a line for each. */
export function siteLines(kind: BookThing["kind"], id: string, { rulebook }: BookShown): readonly string[] {
  const { addedBy, changedBy } = wordOfOverlays(rulebook.overlays, { kind, id });
  return [...(addedBy === null ? [] : [`added by ${addedBy}`]), ...overlaysInWords({ addedBy: null, changedBy })];
}

/** The same as a list under its own words. */
export function siteBlocks(kind: BookThing["kind"], id: string, book: BookShown): readonly Block[] {
  const lines = siteLines(kind, id, book);
  return lines.length === 0 ? [] : [text("The site's word:"), ...list(lines.map((line): Line => [line]))];
}
