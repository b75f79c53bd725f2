import type { Facts } from "../facts/index.js";
import type { Rule, Rulebook } from "../rulebook/index.js";
import type { Finding, PointWithFacts, ResultHead, Screening } from "../screening/index.js";
import { isGrave } from "./grave.js";
import { NeverRules, neverRulesOf, textOf } from "./never-rules.js";
import type { AcceptedFinding, HeldBack, PointOfRun, Release } from "./release.js";

/** What of a rulebook says whether points can be released. */
export type ReleasingBook = Pick<Rulebook, "rules" | "conditions" | "sets">;

/**
 * Says of each point of a run whether work may be planned on it. It may where nothing keeps the point from passing, or
 * everything that does is covered by an acceptance in force, and where each rule marked `releases: never` has been
 * asked and passes, or does not apply.
 */
export class Releasing {
  /** What holds back every point of the run, to be said once; null where nothing does. */
  readonly all: HeldBack | null;
  readonly #never: NeverRules;
  readonly #titles: ReadonlyMap<string, string>;

  constructor(rulebook: ReleasingBook, head: ResultHead) {
    this.all = ofStage(head) ?? ofSet(rulebook, head);
    this.#never = new NeverRules(rulebook, head);
    this.#titles = new Map(head.rules.map(({ id, title }) => [id, title]));
  }

  /** Whether work may be planned on a point, and if not, why. */
  releaseOf(run: PointWithFacts): Release {
    if (this.all !== null) return { released: false, reasons: [this.all], accepted: [] };
    const never = this.#never.reasons(run);
    const said = new Set(never.map(({ rule }) => rule));
    const others = run.point.findings.filter(({ rule, outcome }) => isGrave(outcome) && !said.has(rule));
    const reasons = [
      ...(run.point.id === null ? [NO_ID] : []),
      ...never,
      ...others.flatMap((finding) => this.#against(finding, run.facts)),
    ];
    const released = reasons.length === 0;
    return { released, reasons, accepted: released ? others.flatMap(acceptedIn) : [] };
  }

  #against(finding: Finding, facts: Facts): readonly HeldBack[] {
    const title = this.#titles.get(finding.rule) ?? finding.rule;
    const remedy = finding.remedy ?? "find out what is missing, or have somebody who answers for it accept the finding";
    const text = textOf(finding, title);
    const { accepted } = finding;
    if (accepted === null) return [{ cause: "not-accepted", rule: finding.rule, text, remedy }];
    const outage = facts.get("next_outage");
    if (!outage?.known || typeof outage.value !== "string" || outage.value < accepted.until) return [];
    return [
      {
        cause: "acceptance-ends",
        rule: finding.rule,
        text: `${text}; accepted by ${accepted.acceptedBy} until ${accepted.until}, and the outage is on ${outage.value}`,
        remedy: "have the acceptance renewed beyond the outage, or the work done before it ends",
      },
    ];
  }
}

/**
 * The points of a run, each with all its facts and whether work may be planned on it. Iterates the points of the
 * screening once.
 */
export function* releasedPoints(screening: Screening, rulebook: ReleasingBook): IterableIterator<PointOfRun> {
  const releasing = new Releasing(rulebook, screening.head);
  for (const run of screening.pointsWithFacts()) yield { ...run, release: releasing.releaseOf(run) };
}

const NO_ID: HeldBack = {
  cause: "no-id",
  rule: null,
  text: "the point has no id: the row states neither a point ID nor machine, component, bearing position and direction",
  remedy: "give it a point ID, so that what is built can be matched with what was released",
};

function acceptedIn(finding: Finding): readonly AcceptedFinding[] {
  if (finding.accepted === null) return [];
  const { reason, acceptedBy, from, until } = finding.accepted;
  return [{ finding, reason, acceptedBy, from, until }];
}

function ofStage({ stage }: Pick<ResultHead, "stage">): HeldBack | null {
  if (stage === "proposed") return null;
  return {
    cause: "stage",
    rule: null,
    text: "the survey was judged as built, and work is planned on proposals alone",
    remedy: "screen with --stage proposed",
  };
}

function ofSet(rulebook: ReleasingBook, { set }: Pick<ResultHead, "set">): HeldBack | null {
  const never = neverRulesOf(rulebook);
  const hasAll = (name: string): boolean => never.every(({ sets }) => sets.includes(name));
  if (never.length > 0 && hasAll(set)) return null;
  const ids = (rules: readonly Rule[]): string => rules.map(({ id }) => id).join(", ");
  const other = rulebook.sets.find(hasAll);
  if (never.length === 0) {
    return {
      cause: "set-too-small",
      rule: null,
      text: "no rule of the rulebook is marked releases: never, so that nothing on what can hurt somebody was asked",
      remedy: "mark the rules on isolation, hazardous areas, what lies behind the wall and the kind of supply",
    };
  }
  return {
    cause: "set-too-small",
    rule: null,
    text: `the set "${set}" does not ask ${ids(never.filter(({ sets }) => !sets.includes(set)))}`,
    remedy: other === undefined ? "put these rules into the set" : `screen with --set ${other}`,
  };
}
