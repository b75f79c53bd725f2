import { type Facts, findFact } from "../../facts/index.js";
import { compileGroup, type Rulebook } from "../../rulebook/index.js";
import { isAlwaysListed, type ReadyRule } from "../judge-point.js";
import { factsInMessage } from "../messages.js";
import type { PointFacts } from "../point-facts.js";
import type { Finding, GroupShown } from "../result.js";
import { GroupIndex, NONE } from "./group-index.js";
import { GroupJudge } from "./group-judge.js";
import { GroupView, type RowAt } from "./group-view.js";
import type { GroupsOfPoint } from "./groups-of-point.js";
import { factsOutside } from "./outside.js";
import { groupsOfPoint } from "./point-groups.js";

/** What a book of groups is made for. */
export interface GroupBookInput {
  readonly rulebook: Pick<Rulebook, "groups" | "conditions">;
  /** Every rule of the run, of points and of groups. */
  readonly rules: readonly ReadyRule[];
  /** How many rows the run has. */
  readonly rows: number;
  readonly siteName: string | null;
  readonly allFindings: boolean;
  rowAt(row: number): RowAt & { readonly facts: PointFacts };
}

/** What a rule of a group says of one of its rows. */
export interface RowJudged {
  readonly ready: ReadyRule;
  readonly outcome: Finding["outcome"];
  /** Null where it is not listed. */
  readonly finding: Finding | null;
}

/** What a rule says of a group. */
export interface GroupJudged extends Pick<Finding, "outcome" | "margin"> {
  readonly rule: string;
}

/** The groups of a run, of every kind that its rules ask for. */
export class GroupBook {
  readonly judges: readonly GroupJudge[];
  readonly #input: GroupBookInput;
  readonly #indexes: readonly GroupIndex[];
  readonly #pointsAsk: boolean;

  constructor(input: GroupBookInput) {
    this.#input = input;
    const { rulebook, rules, rows, siteName } = input;
    const asked = new Set(rules.filter(({ rule }) => rule.group === null).flatMap(groupFactsNamed));
    const wanted = new Set(rules.map(({ rule }) => rule.group));
    this.#pointsAsk = asked.size > 0;
    this.#indexes = [...rulebook.groups.values()]
      .filter(({ id, members }) => wanted.has(id) || [...members.keys()].some((fact) => asked.has(fact)))
      .map((group) => new GroupIndex(compileGroup(group, rulebook), rows, siteName));
    this.judges = rules.flatMap((ready) => {
      const index = this.#indexes.find(({ compiled }) => compiled.group.id === ready.rule.group);
      return index ? [new GroupJudge(ready, index, (row) => input.rowAt(row).facts)] : [];
    });
  }

  /** Whether no rule of the run asks for a group. */
  get isIdle(): boolean {
    return this.#indexes.length === 0;
  }

  /** Takes a row in; before `settle`. */
  add(row: number, facts: PointFacts): void {
    for (const index of this.#indexes) index.add(row, facts);
  }

  /** Puts the groups together and judges them, once all rows are in. */
  settle(): void {
    for (const index of this.#indexes) index.settle();
    for (const judge of this.judges) judge.judgeAll();
  }

  /** The facts of groups for the rules of a point; null where no rule of points asks for any. */
  ofPoint(row: number, record: Facts): GroupsOfPoint | null {
    return this.#pointsAsk ? groupsOfPoint(this.#indexes, row, record) : null;
  }

  /** What the rules of groups say of a row, also of one that is in no group because its key is not known. */
  *judgedOn(row: number, facts: PointFacts, isSilent: (rule: string) => boolean): Iterable<RowJudged> {
    const { allFindings } = this.#input;
    for (const judge of this.judges) {
      const { ready, index } = judge;
      if (isSilent(ready.rule.id)) continue;
      const group = index.groupOf(row);
      if (group === NONE) {
        const finding = judge.findingOutside(facts);
        const { outcome } = finding;
        yield { ready, outcome, finding: allFindings || isAlwaysListed(outcome) ? finding : null };
        continue;
      }
      const listed = judge.isListed(group, allFindings);
      yield { ready, outcome: judge.outcomeOf(group), finding: listed ? judge.findingOnRow(group, facts) : null };
    }
  }

  /** The facts by which a rule of groups judges a row; null for a rule that the run does not have. */
  factsOfRow(row: number, rule: string): Facts | null {
    const judge = this.judges.find(({ ready }) => ready.rule.id === rule);
    if (!judge) return null;
    const group = judge.index.groupOf(row);
    return group === NONE ? factsOutside(judge.index, this.#input.rowAt(row).facts) : judge.factsOf(group);
  }

  /**
   * The groups of which there is something to list, kind by kind, each kind in the order of ids.
   *
   * @param isSilent - whether a rule is not asked of a row
   */
  shown(isSilent: (row: number, rule: string) => boolean): readonly GroupShown[] {
    return this.#indexes.flatMap((index) => {
      const judges = this.judges.filter((judge) => judge.index === index);
      const views: GroupShown[] = [];
      for (let group = 0; group < index.size; group++) {
        const listed = judges.filter(
          (judge) =>
            judge.isListed(group, this.#input.allFindings) &&
            index.rowsOf(group).some((row) => !isSilent(row, judge.ready.rule.id)),
        );
        if (listed.length > 0) views.push(new GroupView(index, group, listed, (row) => this.#input.rowAt(row)));
      }
      return views.sort((a, b) => (a.id < b.id ? -1 : 1));
    });
  }

  /**
   * What the rules of groups say of each group that they are asked of.
   *
   * @param isSilent - whether a rule is not asked of a row
   */
  *judgedOnce(isSilent: (row: number, rule: string) => boolean): Iterable<GroupJudged> {
    for (const judge of this.judges) {
      const { index } = judge;
      const { id } = judge.ready.rule;
      for (let group = 0; group < index.size; group++) {
        if (index.rowsOf(group).every((row) => isSilent(row, id))) continue;
        const { outcome, margin } = judge.judgedOf(group);
        yield { rule: id, outcome, margin };
      }
    }
  }

  /** Rows of a stretch that are in no group of a kind, by the ids of the kinds that have a rule. */
  *rowsOutside(from: number, until: number): Iterable<{ readonly index: GroupIndex; readonly rows: number }> {
    for (const index of new Set(this.judges.map((judge) => judge.index))) {
      let rows = 0;
      for (let row = from; row < until; row++) if (index.groupOf(row) === NONE) rows += 1;
      yield { index, rows };
    }
  }
}

function groupFactsNamed({ compiled: { factsNamed, messages } }: ReadyRule): readonly string[] {
  const named = [...factsNamed, ...factsInMessage(messages.fail), ...factsInMessage(messages.warn)];
  return named.filter((id) => findFact(id)?.source === "group");
}
