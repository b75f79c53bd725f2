import { type Facts, findFact } from "../../facts/index.js";
import type { Judgement } from "../../rulebook/index.js";
import { saidOf } from "../identity.js";
import { groupFindingOf, isAlwaysListed, marginShown, type ReadyRule } from "../judge-point.js";
import { factsInMessage, messageOf } from "../messages.js";
import { missingFacts } from "../missing.js";
import type { PointFacts } from "../point-facts.js";
import { repeatInGroup, repeatOn } from "../repeated.js";
import type { Finding, MissingFact } from "../result.js";
import type { GroupIndex } from "./group-index.js";
import { factsOutside, reasonsOutside } from "./outside.js";

/** Findings kept ready per rule; past it they are made anew, which costs time and nothing else. */
const MOST_KEPT = 2_000;

/** What a rule says of groups that are alike. */
interface Judged {
  readonly outcome: Finding["outcome"];
  readonly margin: Finding["margin"];
  readonly missing: readonly MissingFact[];
}

/** The finding on one of several groups that are alike. */
interface Alike {
  readonly judgement: Judgement;
  readonly finding: Finding;
}

/** Judges the groups of one kind by one rule, each once; groups that are alike in all that the rule asks, together. */
export class GroupJudge {
  readonly ready: ReadyRule;
  readonly index: GroupIndex;
  readonly #factsAt: (row: number) => PointFacts;
  readonly #judged: Judged[] = [];
  /** By group. */
  #judgedOf = new Int32Array(0);
  /** By the number of what was judged. */
  readonly #alike: Alike[] = [];
  readonly #messageNamesKey: boolean;
  readonly #outside = new Map<string, Finding>();
  /** Facts of the key that the rule and its messages name. */
  readonly #keyNamed: readonly string[];

  /** @param factsAt - the facts of a row of the run */
  constructor(ready: ReadyRule, index: GroupIndex, factsAt: (row: number) => PointFacts) {
    this.ready = ready;
    this.index = index;
    this.#factsAt = factsAt;
    const { factsNamed, messages } = ready.compiled;
    const inMessages = [...factsInMessage(messages.fail), ...factsInMessage(messages.warn)];
    const { key } = index.compiled.group;
    this.#keyNamed = key.filter((id) => factsNamed.includes(id) || inMessages.includes(id));
    this.#messageNamesKey = key.some((id) => inMessages.includes(id));
  }

  /** Judges every group; once, when the groups are settled. */
  judgeAll(): void {
    const { key } = this.index.compiled.group;
    const asked = key.filter((id) => this.ready.compiled.factsNamed.includes(id));
    const numbers = new Map<string, number>();
    this.#judgedOf = new Int32Array(this.index.size);
    for (let group = 0; group < this.index.size; group++) {
      const facts = asked.length === 0 ? null : this.factsOf(group);
      const values = asked.map((id) => JSON.stringify(facts?.get(id)));
      const mark = [this.index.sumOf(group).number, ...values].join();
      const known = numbers.get(mark);
      this.#judgedOf[group] = known ?? this.#judged.length;
      if (known !== undefined) continue;
      numbers.set(mark, this.#judged.length);
      this.#judged.push(this.#judge(facts ?? this.factsOf(group)));
    }
  }

  outcomeOf(group: number): Finding["outcome"] {
    return this.judgedOf(group).outcome;
  }

  judgedOf(group: number): Judged {
    const judged = this.#judged[this.#judgedOf[group] ?? -1];
    if (!judged) throw new RangeError(`the group ${group} was not judged by "${this.ready.rule.id}"`);
    return judged;
  }

  isListed(group: number, allFindings: boolean): boolean {
    return allFindings || isAlwaysListed(this.outcomeOf(group));
  }

  /** The finding on the group as a whole. */
  findingOn(group: number): Finding {
    const { judgement, finding } = this.#alikeOf(group);
    const message = this.#messageNamesKey
      ? messageOf(this.ready.compiled, judgement, finding.missing, this.factsOf(group))
      : finding.message;
    return repeatInGroup(finding, this.index.idOf(group), message);
  }

  /** What is said of the groups of which the rule says the same as of this one, in all but what names them. */
  #alikeOf(group: number): Alike {
    const number = this.#judgedOf[group] ?? -1;
    let alike = this.#alike[number];
    if (!alike) {
      const facts = this.factsOf(group);
      const judgement = this.ready.compiled.judge(facts);
      alike = { judgement, finding: groupFindingOf(this.ready, judgement, facts) };
      this.#alike[number] = alike;
    }
    return alike;
  }

  /** The same finding on a row of the group, with the cells of the row that have a part in it. */
  findingOnRow(group: number, facts: PointFacts): Finding {
    return this.#repeatedOn(this.findingOn(group), facts);
  }

  /**
   * The finding on a row that is in no group, since a fact of its key is not known: it may be in any, so that the
   * rule is open on it, unless it cannot apply, or is decided, whatever group that is.
   */
  findingOutside(facts: PointFacts): Finding {
    const values = this.#keyNamed.map((id) => saidOf(facts, id)).map((said) => (said?.known ? said.value : null));
    const mark = JSON.stringify([reasonsOutside(this.index, facts), values]);
    const known = this.#outside.get(mark);
    if (known) return this.#repeatedOn(known, facts);
    const outside = factsOutside(this.index, facts);
    const finding = groupFindingOf(this.ready, this.ready.compiled.judge(outside), outside);
    if (this.#outside.size >= MOST_KEPT) this.#outside.clear();
    this.#outside.set(mark, finding);
    return this.#repeatedOn(finding, facts);
  }

  /** Everything that a rule may ask of a group. */
  factsOf(group: number): Facts {
    return this.index.factsOf(group, this.#factsAt(this.index.spellerOf(group)));
  }

  #repeatedOn(finding: Finding, facts: PointFacts): Finding {
    return repeatOn({ finding, roots: finding.facts.map(({ fact }) => this.#rootsIn(fact, facts)) }, facts);
  }

  /** What the group comes to stands in the cells that put the row into it; what is missing, where this row lacks it. */
  #rootsIn(fact: string, facts: PointFacts): readonly string[] {
    const { key } = this.index.compiled.group;
    if (findFact(fact)?.source === "group") return key;
    return key.includes(fact) || facts.get(fact)?.known !== true ? [fact] : [];
  }

  #judge(facts: Facts): Judged {
    const judgement = this.ready.compiled.judge(facts);
    const { outcome, open } = judgement;
    return { outcome, margin: marginShown(judgement), missing: missingFacts(open, facts) };
  }
}
