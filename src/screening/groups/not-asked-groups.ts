import { isOpen } from "../../base/index.js";
import { factName } from "../../facts/index.js";
import type { ImportProblem, Survey } from "../../records/index.js";
import { CORE, lackingFacts, notAskedText } from "../not-asked.js";
import type { NotAsked } from "../result.js";
import type { GroupBook } from "./group-book.js";
import { NONE } from "./group-index.js";
import type { GroupJudge } from "./group-judge.js";

/** The rows of one survey among those of the run. */
interface Stretch {
  readonly from: number;
  readonly until: number;
}

/**
 * The rules of groups that a survey cannot be asked: outside the core, and without a column for the key, or for lack
 * of another column decided on none of its rows.
 */
export function groupRulesNotAsked(book: GroupBook, survey: Survey, stretch: Stretch): readonly NotAsked[] {
  return book.judges.flatMap((judge): readonly NotAsked[] => {
    const { rule, compiled } = judge.ready;
    if (rule.sets.includes(CORE)) return [];
    const keyLacking = keysLacking(judge, survey);
    const lacking = [...new Set([...keyLacking, ...lackingFacts(compiled.factsNamed, survey)])];
    if (lacking.length === 0 || (keyLacking.length === 0 && !isOpenOnAll(judge, lacking, stretch))) return [];
    return [{ rule: rule.id, model: null, facts: lacking, text: notAskedText(lacking) }];
  });
}

function keysLacking({ index }: GroupJudge, survey: Survey): readonly string[] {
  return index.compiled.group.key.filter((fact) => !survey.factsAsked.has(fact));
}

/** Whether a rule is decided on no row and, for lack of a column, open on some. */
function isOpenOnAll(judge: GroupJudge, lacking: readonly string[], { from, until }: Stretch): boolean {
  let open = false;
  for (let row = from; row < until; row++) {
    const group = judge.index.groupOf(row);
    if (group === NONE) continue;
    const { outcome, missing } = judge.judgedOf(group);
    if (outcome === "not-applicable") continue;
    // A group that is open for another reason decides nothing.
    if (!isOpen(outcome)) return false;
    if (missing.some(({ fact }) => lacking.includes(fact))) open = true;
  }
  return open;
}

/** What is said once per survey of the rows that are in no group. */
export function rowsInNoGroup(
  book: GroupBook,
  survey: Survey,
  stretch: Stretch,
  silent: ReadonlySet<string>,
): readonly ImportProblem[] {
  return [...book.rowsOutside(stretch.from, stretch.until)].flatMap(({ index, rows }): readonly ImportProblem[] => {
    const { group } = index.compiled;
    const judges = book.judges.filter((judge) => judge.index === index);
    if (rows === 0 || judges.every(({ ready }) => silent.has(ready.rule.id))) return [];
    const [first] = judges;
    if (first && keysLacking(first, survey).length > 0) return [];
    const names = group.key.map(factName).join(" and ");
    const text =
      `${rows === 1 ? "1 row does" : `${rows} rows do`} not state ${names} clearly and may be among any ${group.title}; ` +
      `none of these count ${rows === 1 ? "it" : "them"}, so that also what passes there passes without ` +
      `${rows === 1 ? "it; for this row" : "them; for these rows"} what rules say of groups stays open`;
    const nothing = { sheet: null, cell: null, heading: null, found: null };
    return [{ code: "no-group", file: survey.file, fact: group.key.at(-1) ?? null, ...nothing, text }];
  });
}
