import { sha256OfData } from "../base/index.js";
import { namesOf, type PointJudge, type PointResult, pointJudge } from "../screening/index.js";
import { CarriedFacts } from "./carried-facts.js";
import { comparedOf, differencesOf } from "./differences.js";
import { type BuiltInput, runOver } from "./input.js";
import { issuedShown } from "./issued.js";
import { type Pair, type Pairing, pairUp } from "./pairing.js";
import { notUnderstood, siteAssumed } from "./remarks.js";
import type { BuiltCheck, BuiltHead, BuiltPoint } from "./result.js";
import { onlySite, type Row, rowAt } from "./rows.js";
import { type SameText, sameTextBy } from "./said.js";
import { blankText, NO_ID_TEXT, NOT_ISSUED_TEXT, NOT_PROPOSED_TEXT, twiceText } from "./status-text.js";
import { BuiltTally } from "./tally.js";
import { type Compared, compareVerdicts, gatesOf, type VerdictSaid } from "./turned.js";

/**
 * Compares what was built with what was proposed, point by point, and judges it by the same rules: the proposal at the
 * stage proposed (or as the stored result says under which orders were issued), what was built at the stage installed.
 * With a stored result, points that are not built yet are judged anew as proposals, so that a verdict that has fallen
 * since recalls the open order. Points are compared while they are iterated.
 *
 * @throws RangeError if the rulebook has no such set
 */
export function checkBuilt(input: BuiltInput): BuiltCheck {
  const comparison = new Comparison(input);
  let tally = new BuiltTally();
  let done = false;
  return {
    head: comparison.head,
    points: function* () {
      tally = new BuiltTally();
      done = false;
      for (const pair of comparison.pairing.pairs) {
        const point = comparison.point(pair);
        tally.point(point);
        yield point;
      }
      done = true;
    },
    summary: () => {
      if (!done) throw new Error("the points of this comparison are not all compared yet");
      return tally.summary();
    },
  };
}

class Comparison {
  readonly pairing: Pairing;
  readonly head: BuiltHead;
  readonly #input: BuiltInput;
  readonly #sameText: SameText;
  readonly #asProposed: PointJudge;
  readonly #asBuilt: PointJudge;
  readonly #gates: { readonly before: ReadonlySet<string>; readonly now: ReadonlySet<string> };
  readonly #gatesProposed: ReadonlySet<string>;
  readonly #rulesNow: ReadonlySet<string>;

  constructor(input: BuiltInput) {
    this.#input = input;
    const { rulebook, proposed, built, site, issued, options } = input;
    this.#sameText = sameTextBy(rulebook.models.values());
    const siteName = options.siteName ?? site?.siteName ?? null;
    const assumedSite = siteName === null && built !== null ? onlySite(proposed) : null;
    const sites = { proposed: siteName, built: siteName ?? assumedSite };
    this.pairing = pairUp({ proposed, built }, sites, this.#sameText);
    this.#asProposed = pointJudge(runOver(proposed, "proposed", input));
    this.#asBuilt = pointJudge(runOver(this.pairing.surveys.surveys, "installed", input));
    this.#gatesProposed = gatesOf(this.#asProposed.head.rules);
    this.#rulesNow = new Set(this.#asBuilt.head.rules.map(({ id }) => id));
    this.#gates = { before: issued?.gates ?? this.#gatesProposed, now: gatesOf(this.#asBuilt.head.rules) };
    this.head = this.#makeHead(assumedSite);
  }

  point(pair: Pair): BuiltPoint {
    const { id, status, judged } = pair;
    const proposed = pair.proposed.map(rowAt);
    const built = pair.built.map(rowAt);
    const then = this.#verdictThen(pair);
    const asBuilt = judged && this.#asBuilt.judge(judged.record, judged.survey);
    const now = asBuilt ?? this.#verdictOnOpenOrder(pair);
    const gates = asBuilt ? this.#gates : { ...this.#gates, now: this.#gatesProposed };
    const isAsked = asBuilt && judged ? this.#askedOf(judged) : () => true;
    const { change, recall, onlyUndecided, turned } = compared(then, now, { gates, isAsked });
    const { differences, carried, notCarried } = this.#factsOf(pair);
    const isBuilt = built.length > 0 && status !== "not-built";
    const uncovered = status !== "matched" || then === null || differences.some((one) => one.needsNewVerdict);
    const named = judged ?? pair.proposed[0] ?? pair.built[0];
    return {
      ...namesOf(named?.record.facts ?? new Map()),
      id,
      status,
      proposed,
      built,
      verdictThen: then?.verdict ?? null,
      verdictNow: now?.verdict ?? null,
      change,
      recall,
      onlyUndecided,
      needsNewVerdict: isBuilt && uncovered,
      againstVerdict: status === "matched" && then?.verdict === "fail" && change !== "rises",
      differences,
      turned,
      carried,
      notCarried,
      likely: this.#likely(pair),
      text: textOf(pair, then === null),
    };
  }

  /** Whether a rule is asked of a point as it was built. */
  #askedOf({ record, survey }: Row): (rule: string) => boolean {
    const isAsked = this.#asBuilt.asks(record, survey);
    return (rule) => this.#rulesNow.has(rule) && isAsked(rule);
  }

  /** What the order rests on. */
  #verdictThen({ id, proposed }: Pair): VerdictSaid | null {
    const { issued } = this.#input;
    if (issued) return id === null ? null : (issued.points.get(id) ?? null);
    const [row] = proposed;
    return row ? this.#asProposed.judge(row.record, row.survey) : null;
  }

  /** An order is open that was issued and whose point is not built, or not known to be. */
  #verdictOnOpenOrder({ id, proposed }: Pair): PointResult | null {
    const [row] = proposed;
    const { issued } = this.#input;
    if (row === undefined || id === null || !issued?.points.has(id)) return null;
    return this.#asProposed.judge(row.record, row.survey);
  }

  #factsOf({ status, proposed, built, judged }: Pair): Pick<BuiltPoint, "differences" | "carried" | "notCarried"> {
    const [then] = proposed;
    const [now] = built;
    const facts = judged?.record.facts;
    if (status !== "matched" || !then || !now || !(facts instanceof CarriedFacts)) {
      return { differences: [], carried: [], notCarried: [] };
    }
    const stated = comparedOf(then.survey);
    return {
      differences: differencesOf(then, now, this.#sameText),
      carried: stated.filter((id) => facts.carries(id)),
      notCarried: stated.filter((id) => facts.holdsBack(id)),
    };
  }

  #likely({ status, proposed, built }: Pair): BuiltPoint["likely"] {
    if (status === "matched" || status === "twice") return [];
    const partners = built.length > 0 ? this.pairing.partnersOfProposed : this.pairing.partnersOfBuilt;
    const row: Row | undefined = built[0] ?? proposed[0];
    if (row === undefined || (built.length > 0 && proposed.length > 0)) return [];
    return partners.likelyFor(row);
  }

  #makeHead(assumedSite: string | null): BuiltHead {
    const { program, rulebook, proposed, built, issued } = this.#input;
    const then = this.#asProposed.head;
    const run = this.#asBuilt.head;
    const surveys = built ?? proposed;
    return {
      program,
      digest: sha256OfData({ proposed: then.digest, built: run.digest, issued: issued?.digest ?? null }),
      sameSurvey: built === null,
      proposed: then,
      built: { ...run, surveys: surveys.map((survey) => this.pairing.surveys.shownFor(survey, run.surveys)) },
      issued: issued && issuedShown(issued, rulebook, proposed, this.pairing.proposed),
      remarks: (built ?? []).flatMap((survey) => [
        ...(assumedSite === null ? [] : siteAssumed(survey, assumedSite)),
        ...notUnderstood(survey),
      ]),
      cautions: then.cautions,
    };
  }
}

function compared(
  then: VerdictSaid | null,
  now: PointResult | null,
  by: Compared,
): Pick<BuiltPoint, "change" | "recall" | "onlyUndecided" | "turned"> {
  if (now === null) return { change: null, recall: false, onlyUndecided: false, turned: [] };
  if (then !== null) return compareVerdicts(then, now, by);
  const turned = now.findings.map((finding) => ({
    rule: finding.rule,
    worse: true,
    before: null,
    now: finding,
    asked: true,
  }));
  return { change: null, recall: false, onlyUndecided: false, turned };
}

function textOf({ status, proposed, built }: Pair, notIssued: boolean): string | null {
  if (status === "twice") return twiceText(proposed.map(rowAt), built.map(rowAt));
  if (status === "not-proposed") return NOT_PROPOSED_TEXT;
  if (status === "no-id") return NO_ID_TEXT;
  if (status === "not-built") return built.length > 0 ? blankText(built.map(rowAt)) : null;
  return notIssued ? NOT_ISSUED_TEXT : null;
}
