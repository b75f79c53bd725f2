import { STAGES } from "../../base/index.js";
import type { Rule } from "../../rulebook/index.js";
import { inForce } from "../../rulebook/index.js";
import { type Block, idOf, type Line, type Row, text } from "./block.js";
import type { BookShown } from "./book-shown.js";
import { inWords, rulePart } from "./rule-part.js";

/** All rules in tables, one for each topic. */
export function glancePart(book: BookShown): readonly Block[] {
  return [
    { is: "heading", level: 2, id: "rules-at-a-glance", line: ["4 Rules at a glance"] },
    text(
      "Topics stand in the order of their names, rules within a topic in the order of their ids. An id is never used again " +
        "for another rule, so it is what to quote. “Worst” is the worst that a rule in force can say of a point when " +
        "everything is known.",
    ),
    ...book.topics.map(
      ({ name, rules }): Block => ({
        is: "table",
        caption: `Rules on ${name}`,
        kind: "rules",
        headings: ["rule", "demands", "sets", "stages", "worst"],
        rows: rules.map((rule): Row => ({ cells: glanceCells(rule, book) })),
      }),
    ),
  ];
}

function glanceCells(rule: Rule, { asOf }: BookShown): readonly Line[] {
  const entry = rule.limits.find((limit) => inForce(limit, asOf));
  const worst: Line =
    entry === undefined ? [{ outcome: "no-limit-in-force" }] : [{ outcome: entry.fail.length > 0 ? "fail" : "warn" }];
  return [
    [{ code: rule.id, to: idOf.rule(rule.id) }],
    [rule.title],
    [inWords(rule.sets)],
    [rule.stages.length === STAGES.length ? "both" : inWords(rule.stages)],
    rule.releases === null ? worst : [...worst, ", no deviation"],
  ];
}

/** Every rule in full, topic by topic. */
export function rulesPart(book: BookShown): readonly Block[] {
  return [
    { is: "heading", level: 2, id: "rules", line: ["5 Rules"] },
    text(
      "Where it is said what a finding says, ‹name of a fact› stands for its value at the point. What stands in round brackets " +
        "there is left out where it is not known.",
    ),
    ...book.topics.flatMap(({ name, rules }): readonly Block[] => [
      { is: "heading", level: 3, id: idOf.topic(name), line: [`Rules on ${name}`] },
      ...rules.flatMap((rule) => rulePart(rule, book)),
    ]),
  ];
}
