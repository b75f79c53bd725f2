import type { Stage } from "../../base/index.js";
import type { ReadyRule } from "../judge-point.js";
import type { ModelShelf } from "../models.js";
import type { PointFacts, PointOnItsWay } from "../point-facts.js";
import type { Judged, RememberedJudge } from "../remembered-judge.js";
import { repeatWith } from "../repeated.js";
import type { Finding } from "../result.js";
import { ChangeShelf } from "./change.js";
import type { Kept, Solved } from "./kept.js";
import { remedyWithNeed } from "./need.js";
import { alternativesFor } from "./solve.js";
import { remedyWith, type WayOut } from "./words.js";
import { type Broken, WorseRules } from "./worse.js";

/** Adds to the findings of a run the smallest changes by which they would pass. */
export class Remedies {
  readonly #judges: readonly RememberedJudge[];
  readonly #models: ModelShelf;
  readonly #stage: Stage;
  readonly #shelf = new ChangeShelf();
  readonly #worse: WorseRules;

  constructor(judges: readonly RememberedJudge[], models: ModelShelf, stage: Stage) {
    this.#judges = judges;
    this.#models = models;
    this.#stage = stage;
    this.#worse = new WorseRules(judges);
  }

  /**
   * The finding of one rule with its changes; itself where nothing can be changed.
   *
   * @param place - of the rule
   * @param said - what every rule says of the point, by its place; null for one that is not asked
   */
  added(finding: Finding, place: number, said: readonly (Judged | null)[], on: PointOnItsWay): Finding {
    if (finding.outcome === "pass" || finding.outcome === "not-applicable") return finding;
    const kept = said[place]?.kept ?? null;
    const point = on.facts;
    if (finding.outcome !== "fail" && finding.outcome !== "warn") return this.#needed(finding, place, kept, on);
    const solved = kept?.solved ?? this.#solve(place, point);
    if (kept) kept.solved = solved;
    if (solved.alternatives.length === 0) return finding;
    const ways = solved.alternatives.map((alternative): WayOut => this.#best(alternative, point, said, place));
    if (!kept) return changedFinding(finding, ways);
    const key = ways.map(keyOf).join("|");
    const known = solved.findings.get(key);
    if (known) return repeatWith(known, finding.facts);
    const made = changedFinding(finding, ways);
    solved.findings.set(key, made);
    return made;
  }

  /** An open finding, with the values that would be enough. */
  #needed(finding: Finding, place: number, kept: Kept | null, { facts }: PointOnItsWay): Finding {
    const known = kept?.solved?.findings.get("");
    if (known) return repeatWith(known, finding.facts);
    if (kept?.solved) return finding;
    const remedy = remedyWithNeed(finding, { ready: this.#ready(place), facts });
    const made = remedy === finding.remedy ? finding : { ...finding, remedy };
    if (kept) kept.solved = { alternatives: [], findings: new Map(made === finding ? [] : [["", made]]) };
    return made;
  }

  #ready(place: number): ReadyRule {
    const ready = this.#judges[place]?.ready;
    if (!ready) throw new RangeError(`no rule at the place ${place}`);
    return ready;
  }

  #solve(place: number, point: PointFacts): Solved {
    const ready = this.#ready(place);
    const asked = { ready, stage: this.#stage, facts: point, models: this.#models, shelf: this.#shelf };
    return { alternatives: alternativesFor(asked), findings: new Map() };
  }

  /** The first change that makes no other rule worse, else the first. */
  #best(
    alternative: WayOut["alternative"],
    point: PointFacts,
    said: readonly (Judged | null)[],
    place: number,
  ): WayOut {
    let first: WayOut | null = null;
    for (const change of alternative.changes) {
      const way = { alternative, to: change.to, breaks: this.#worse.after(change, point, said, place) };
      if (way.breaks.length === 0) return way;
      first ??= way;
    }
    if (!first) throw new RangeError("an alternative without a change");
    return first;
  }
}

function keyOf({ to, breaks }: WayOut): string {
  return `${to}${breaks.map(({ place, outcome }: Broken) => ` ${place} ${outcome}`).join("")}`;
}

function changedFinding(finding: Finding, ways: readonly WayOut[]): Finding {
  const sorted = [
    ...ways.filter(({ breaks }) => breaks.length === 0),
    ...ways.filter(({ breaks }) => breaks.length > 0),
  ];
  const changes = sorted.map(({ alternative: { fact, from, unit }, to, breaks }) => ({
    fact,
    from,
    to,
    unit,
    breaks: breaks.map(({ ready }) => ready.rule.id),
  }));
  return { ...finding, remedy: remedyWith(sorted, finding.remedy), changes };
}
