import { type FactState, findFact, SURVEY_FACTS } from "../../facts/index.js";
import { supposed } from "../changed-record.js";
import type { ReadyRule } from "../judge-point.js";
import { KeptList } from "../kept-list.js";
import { missingFacts } from "../missing.js";
import type { PointFacts } from "../point-facts.js";
import { repeatedBy } from "../repeated.js";
import type { Finding } from "../result.js";
import { sampleValues } from "./sample-values.js";

/** How often the facts that would be asked next are added before it is left at that. */
const MOST_ROUNDS = 4;
/** Combinations of choices tried in each round. */
const MOST_TRIED = 24;

/** An undecided finding with the rule that made it; null for one that is not of a rule of points. */
export interface OpenFinding {
  readonly ready: ReadyRule | null;
  readonly finding: Finding;
}

/** Finds the fewest facts that would settle findings and points; alike findings are looked into once. */
export class Settler {
  readonly #ofFinding = new WeakMap<Finding, readonly string[]>();
  readonly #none = KeptList.empty();

  /**
   * The fewest survey, site or model facts that, once known, decide every open finding of a point, whatever they turn
   * out to be; in the order of the catalogue.
   *
   * @param open - the undecided findings of the point, at least one
   * @returns null where no fact would: a limit is not in force, or nothing is named as missing
   */
  settling(open: readonly OpenFinding[], facts: PointFacts): readonly string[] | null {
    const ids = new Set<string>();
    for (const { ready, finding } of open) {
      const of = this.#factsFor(ready, finding, facts);
      if (of.length === 0) return null;
      for (const id of of) ids.add(id);
    }
    const list = [...ids].sort((a, b) => placeOf(a) - placeOf(b) || (a < b ? -1 : 1));
    return list.reduce((kept, id) => kept.with(id), this.#none).ids;
  }

  #factsFor(ready: ReadyRule | null, finding: Finding, facts: PointFacts): readonly string[] {
    if (finding.outcome === "no-limit-in-force") return [];
    const pattern = repeatedBy(finding);
    const known = this.#ofFinding.get(pattern);
    if (known) return known;
    const found = ready === null ? finding.missing.map(({ fact }) => fact) : settlingFacts(ready, finding, facts);
    this.#ofFinding.set(pattern, found);
    return found;
  }
}

const places = new Map(SURVEY_FACTS.map(({ id }, place) => [id, place]));

/** Place of a fact in the catalogue; model facts come after those of the survey. */
export function placeOf(id: string): number {
  return places.get(id) ?? places.size;
}

function settlingFacts({ compiled }: ReadyRule, finding: Finding, facts: PointFacts): readonly string[] {
  const named = finding.missing.map(({ fact }) => fact);
  const isDerived = compiled.factsNamed.some((id) => findFact(id)?.source === "derived");
  if (named.length < 2 && !isDerived) return named;
  const { open } = compiled.judge(facts);
  const deciding = new Set(
    compiled.decidedBy(
      facts,
      open.map(({ fact }) => fact),
    ),
  );
  const needed = missingFacts(
    open.filter(({ fact }) => deciding.has(fact)),
    facts,
  );
  const ids = new Set(needed.map(({ fact }) => fact));
  if (isDerived) addAskedNext(compiled, ids, facts);
  return [...ids];
}

/**
 * A derived fact names one fact that it lacks, and says what else it lacks once that is there; this asks on until
 * nothing new comes up.
 */
function addAskedNext(compiled: ReadyRule["compiled"], ids: Set<string>, facts: PointFacts): void {
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = ids.size;
    for (const changes of completionsOf([...ids])) {
      const changed = facts.changed(changes);
      const { outcome, open } = compiled.judge(changed);
      if (outcome !== "undecided") continue;
      // What is known now and lies too near a limit only shows that the made-up value was badly chosen.
      for (const { fact, reason } of missingFacts(open, changed)) if (reason !== "too-close") ids.add(fact);
    }
    if (ids.size === before) return;
  }
}

/** Combinations of the values that facts may turn out to have; where they are too many, each value at least once. */
function* completionsOf(ids: readonly string[]): Iterable<ReadonlyMap<string, FactState>> {
  const choices = ids.map((id) => ({ id, values: sampleValues(id) })).filter(({ values }) => values.length > 0);
  const total = choices.reduce((product, { values }) => product * values.length, 1);
  for (let index = 0; index < Math.min(total, MOST_TRIED); index++) {
    let rest = index;
    const changes = new Map<string, FactState>();
    for (const [i, { id, values }] of choices.entries()) {
      const turn = total <= MOST_TRIED ? rest : index + i * Math.floor(index / values.length);
      const value = values[turn % values.length];
      if (value !== undefined) changes.set(id, supposed(value));
      rest = Math.floor(rest / values.length);
    }
    yield changes;
  }
}
