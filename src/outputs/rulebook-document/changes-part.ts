import { type Block, idOf, list, text } from "./block.js";
import type { BookShown } from "./book-shown.js";
import { recordLine } from "./change-record.js";

/** Annex F: the change record of the rulebook, version by version. */
export function changesPart(book: BookShown): readonly Block[] {
  const ids = new Set(book.rules.map(({ id }) => id));
  const head: Block = { is: "heading", level: 2, id: "annex-changes", line: ["Annex F: changes of the rulebook"] };
  if (book.changes.length === 0) return [head, text("The rulebook has no change record.")];
  return [
    head,
    text("As the change record beside the rules says it; the digest of the rulebook does not cover it."),
    ...book.changes.flatMap(({ heading, items }, index): readonly Block[] => [
      { is: "heading", level: 3, id: `changes-${index + 1}`, line: [heading] },
      ...list(items.map((item) => recordLine(item, ids, idOf.rule))),
    ]),
  ];
}
