import { dimensionInWords, formatNumber } from "../../base/index.js";
import { type FactDefinition, factName, findFact, plainWords } from "../../facts/index.js";
import { unitName } from "./band-picture.js";
import { idOf, joined, type Line, type Piece } from "./block.js";
import type { BookShown } from "./book-shown.js";

/** The name of a fact, leading to its entry where the document has one. */
export function factLink(id: string, book: Pick<BookShown, "hasFact">): Piece {
  return book.hasFact(id) ? { link: factName(id), to: idOf.fact(id) } : factName(id);
}

/** Names of facts, each leading to its entry. */
export function factLinks(ids: readonly string[], book: Pick<BookShown, "hasFact">): Line {
  return joined([...new Set(ids)].map((id) => [factLink(id, book)]));
}

/** What values of a fact are: unit, what is counted, the choices, or the kind of text. */
export function valuesInWords({ kind, unit, dimension, choices }: FactDefinition): string {
  switch (kind) {
    case "quantity":
      return unit === undefined || dimension === undefined
        ? "number"
        : `${unitName(unit)} (${dimensionInWords(dimension)})`;
    case "count":
      return unit === undefined ? "number" : `number (${unit})`;
    case "choice":
      return (choices ?? []).map(plainWords).join(", ");
    case "yes-no":
      return "yes, no";
    case "date":
      return "day";
    default:
      return kind;
  }
}

/** What can be meant at all ("0.1 to 60000 r/min"); empty where anything can. */
export function plausibleInWords({ plausible, unit }: FactDefinition): string {
  if (plausible === undefined) return "";
  const named = unit === undefined || /^[a-z ]{3,}$/.test(unit) ? null : unit;
  return `${formatNumber(plausible.lowest)} to ${formatNumber(plausible.highest, named)}`;
}

/** The text of a message with the names of its facts in place of their ids ("the surface gets ‹surface temperature› hot"). */
export function messageInWords(message: string): string {
  return message.replace(/\{([a-z][a-z0-9_.]*)\}/g, (all, id: string) => (findFact(id) ? `‹${factName(id)}›` : all));
}
