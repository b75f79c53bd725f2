import { CATALOGUE } from "../../facts/index.js";
import { type Block, idOf, joined, type Line, type Row, text } from "./block.js";
import { type BookShown, byText } from "./book-shown.js";
import { factLinks } from "./fact-words.js";
import { definitionsUsed, factsOfRule, factsSpokenOf } from "./facts-used.js";

/** Annex G: each fact with the rules that name it, and with what it is needed for beside them. */
export function factIndexPart(book: BookShown): readonly Block[] {
  const facts = [...definitionsUsed(CATALOGUE, book.used)].sort(
    (a, b) => byText(fold(a.name), fold(b.name)) || byText(a.id, b.id),
  );
  const rulesOf = rulesByFact(book);
  const rows = facts.map(({ id, name }): Row => {
    const rules = (rulesOf.get(id) ?? []).map((rule): Line => [{ code: rule, to: idOf.rule(rule) }]);
    const through = facts.filter(({ needs }) => needs?.includes(id)).map((fact) => fact.id);
    const needed = through.length === 0 ? [] : [factLinks(through, book)];
    return { cells: [[{ link: name, to: idOf.fact(id) }], joined(rules), joined([...needed, ...groupsOf(id, book)])] };
  });
  return [
    { is: "heading", level: 2, id: "annex-index", line: ["Annex G: index of facts"] },
    text(
      "The rules that name a fact, in a condition, a limit, a finding or as what can be changed; and the facts and groups for " +
        "which it is needed, through which it reaches other rules.",
    ),
    {
      is: "table",
      kind: "index",
      caption: "Facts and the rules that rest on them",
      headings: ["fact", "rules", "needed for"],
      rows,
    },
  ];
}

function rulesByFact(book: BookShown): ReadonlyMap<string, readonly string[]> {
  const found = new Map<string, string[]>();
  for (const rule of book.rules) {
    for (const id of new Set([...factsOfRule(rule, book.rulebook), ...factsSpokenOf(rule)])) {
      found.set(id, [...(found.get(id) ?? []), rule.id].sort(byText));
    }
  }
  return found;
}

/** The groups of the document whose key the fact is part of. */
function groupsOf(id: string, { rulebook, rules, used }: BookShown): readonly Line[] {
  return [...rulebook.groups.values()]
    .filter(
      ({ id: kind, members }) =>
        rules.some(({ group }) => group === kind) || [...members.keys()].some((one) => used.has(one)),
    )
    .filter(({ key }) => key.includes(id))
    .map(({ id: kind, title }): Line => [{ link: title, to: idOf.group(kind) }]);
}

/** Upper case does not set names apart. */
function fold(name: string): string {
  return name.toLowerCase();
}
