import { CAUTIONS } from "../../screening/index.js";
import { countOf } from "../wording/numbers.js";
import { type Block, type Line, list, text } from "./block.js";
import type { BookShown } from "./book-shown.js";
import { inWords } from "./rule-part.js";
import { overlayBlocks } from "./site-words.js";

/** What the document is, what it speaks of, and what it does not. */
export function scopePart(book: BookShown): readonly Block[] {
  const { rulebook, rules, topics, set } = book;
  const topicNames = inWords(topics.map(({ name }) => name));
  return [
    { is: "heading", level: 2, id: "scope", line: ["1 Scope"] },
    text(
      "This standard states the rules by which points for permanently wired vibration sensors on rotating machines are " +
        "screened: as proposed, before anyone grinds, drills, taps or glues, and as installed. It is written from the files " +
        "of the rulebook and says nothing that does not stand there; the formulas of computed facts are those of the " +
        "program that wrote it. The digest tells whether a rulebook is this one.",
    ),
    text(
      `It holds ${countOf(rules.length, "rule")} on ${countOf(topics.length, "topic")}: ${topicNames}. ` +
        (set === null ? "Sets of rules are applied as a whole:" : `Only the rules of the set ${set} are shown:`),
    ),
    ...list(setLines(book)),
    text(
      "A limit is no better founded than its source, and each source is labelled with what it is (clause 3). What a sensor " +
        `model asks for stands in its own data sheet; where a survey names no model, the model ${rulebook.baselineModel} counts (annex B). ` +
        "Drawings, calculations, work instructions and the choice of a product are no part of this standard.",
    ),
    { is: "box", title: "Cautions", items: CAUTIONS.map((caution): Line => [caution]) },
    ...overlayBlocks(book),
  ];
}

function setLines({ rulebook, rules, set }: BookShown): readonly Line[] {
  return rulebook.sets
    .filter((name) => set === null || name === set)
    .map((name): Line => {
      const count = rules.filter(({ sets }) => sets.includes(name)).length;
      const usual = name === rulebook.defaultSet ? ", applied where nothing else is asked for" : "";
      return [{ strong: name }, `: ${countOf(count, "rule")}${usual}`];
    });
}
