import { countOf } from "../wording/numbers.js";
import { bookInWords, overlaysNamed } from "../wording/overlays.js";
import { type Block, text } from "./block.js";
import type { BookShown } from "./book-shown.js";
import { changesPart } from "./changes-part.js";
import { groupsPart, measuringPart, modelsPart, tablesPart } from "./data-parts.js";
import { factIndexPart } from "./fact-index.js";
import { factsPart } from "./facts-part.js";
import { glancePart, rulesPart } from "./rules-part.js";
import { scopePart } from "./scope-part.js";
import { termsPart } from "./terms-part.js";
import { verdictPart } from "./verdict-part.js";

/** What stands on top: which book, which version, for which day, and what the reader holds. */
export function titleBlocks(book: BookShown): readonly Block[] {
  const { rulebook, rules, set, asOf, program } = book;
  const { name, version, digest } = rulebook;
  const over = overlaysNamed(rulebook);
  return [
    {
      is: "heading",
      level: 1,
      id: "title",
      line: [`${name}, version ${version}${over === null ? "" : `, with ${over}`}`],
    },
    text("Standard for the screening of measurement points for permanently mounted vibration sensors"),
    {
      is: "table",
      caption: "This document",
      headings: ["what", "which"],
      rows: [
        { cells: [["rulebook"], [bookInWords(rulebook)]] },
        { cells: [["digest (SHA-256) of the rulebook"], [{ code: digest }]] },
        { cells: [["limits in force on"], [asOf]] },
        { cells: [["rules"], [`${countOf(rules.length, "rule")}, ${set === null ? "all sets" : `set ${set}`}`]] },
        { cells: [["written by"], [`${program.name} ${program.version}`]] },
      ],
    },
  ];
}

/** All that follows the contents. */
export function documentBlocks(book: BookShown): readonly Block[] {
  return [
    ...scopePart(book),
    ...verdictPart(),
    ...termsPart(book),
    ...glancePart(book),
    ...rulesPart(book),
    ...factsPart(book),
    ...modelsPart(book),
    ...tablesPart(book),
    ...groupsPart(book),
    ...measuringPart(book),
    ...changesPart(book),
    ...factIndexPart(book),
  ];
}
