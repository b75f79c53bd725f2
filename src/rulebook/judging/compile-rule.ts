import { anyOf, type Outcome, type PlainDay, type Stage, type Truth } from "../../base/index.js";
import { type FactState, type Facts, MISSING } from "../../facts/index.js";
import { type Check, joinedCheck, type Look, type OpenFacts } from "../book/check.js";
import type { CompiledRule, Judgement, LimitSpoken } from "../book/judgement.js";
import type { LimitEntry, Rule } from "../book/rule.js";
import type { Rulebook } from "../book/rulebook.js";
import { inForce } from "../reading/dated.js";
import { type ReadyBand, readyBand } from "./band-check.js";
import { conditionCheck } from "./condition-check.js";
import { decidingFacts } from "./deciding-facts.js";
import { factsNamedBy } from "./facts-named.js";
import { marginOf, nearestBand, showLimit } from "./limit-spoken.js";
import { comparedIn } from "./values-to-try.js";

/** The stage and the day that rules are made ready for. */
export interface CompileOptions {
  readonly stage: Stage;
  readonly asOf: PlainDay;
}

/**
 * Makes a rule ready to judge many points at one stage and day. The fact `stage` need not be among the facts of
 * the points: it is the stage compiled for.
 *
 * @returns null when the rule is not for the stage
 */
export function compileRule(
  rule: Rule,
  rulebook: Pick<Rulebook, "conditions">,
  options: CompileOptions,
): CompiledRule | null {
  if (!rule.stages.includes(options.stage)) return null;
  const judged = rule.judges[options.stage];
  const entry = rule.limits.find((limit) => inForce(limit, options.asOf)) ?? null;
  const named = rulebook.conditions;
  const ready: ReadyRule = {
    judged,
    entry,
    applies: rule.appliesWhen === null ? ALWAYS : conditionCheck(rule.appliesWhen, named),
    fail: readySide(entry?.fail.map((band) => readyBand(band, judged, named)) ?? []),
    warn: readySide(entry?.warn.map((band) => readyBand(band, judged, named)) ?? []),
  };
  const stage: FactState = { known: true, value: options.stage, origin: { kind: "none" } };
  const lookAt = (facts: Facts): Look => {
    return (id) => (id === "stage" ? stage : (facts.get(id) ?? MISSING));
  };
  const factsNamed = factsNamedBy(rule, entry, options.stage, named);
  const compared = comparedIn(rule, entry, named);
  return {
    ruleId: rule.id,
    judged,
    factsNamed,
    reviewOverdue: entry?.reviewBy != null && options.asOf > entry.reviewBy,
    judge: (facts: Facts) => judge(ready, lookAt(facts)),
    decidedBy: (facts: Facts, open: readonly string[]) =>
      decidingFacts((look) => judge(ready, look).outcome, lookAt(facts), open, factsNamed, compared),
    outcomeOn: (facts: Facts) => outcomeOn(ready, lookAt(facts)),
    messages: { fail: rule.messages.fail ?? null, warn: rule.messages.warn ?? null },
    at: rule.at,
  };
}

const ALWAYS: Check = { truth: () => true, gatherOpen: () => {} };

/** The bands of one side of a limit, and whether any of them holds. */
interface ReadySide {
  readonly bands: readonly ReadyBand[];
  readonly any: Check;
}

interface ReadyRule {
  readonly judged: string | null;
  readonly entry: LimitEntry | null;
  readonly applies: Check;
  readonly fail: ReadySide;
  readonly warn: ReadySide;
}

function readySide(bands: readonly ReadyBand[]): ReadySide {
  return {
    bands,
    any: joinedCheck(
      bands.map((ready) => ready.check),
      anyOf,
    ),
  };
}

function judge(rule: ReadyRule, look: Look): Judgement {
  const applies = rule.applies.truth(look);
  if (applies === false) return { outcome: "not-applicable", atBest: null, limit: null, margin: null, open: [] };
  const open: OpenFacts = new Map();
  rule.applies.gatherOpen(look, open);
  if (rule.entry === null) {
    const atBest = applies === null ? "not-applicable" : null;
    return { outcome: "no-limit-in-force", atBest, limit: null, margin: null, open: listOf(open) };
  }
  const fail = rule.fail.any.truth(look);
  const warn = rule.warn.any.truth(look);
  if (fail !== true) {
    rule.fail.any.gatherOpen(look, open);
    // Where it fails, or may, a warning that is certain settles nothing more; one that is open does.
    rule.warn.any.gatherOpen(look, open);
  }
  const said = outcomeFrom(applies, fail, warn);
  return {
    ...said,
    limit: limitOf(rule, rule.entry, said.outcome, fail, warn, look),
    margin: marginOf(rule.fail.bands, rule.judged, look),
    open: listOf(open),
  };
}

/** What {@link judge} says, without why. */
function outcomeOn(rule: ReadyRule, look: Look): Pick<Judgement, "outcome" | "atBest"> {
  const applies = rule.applies.truth(look);
  if (applies === false) return { outcome: "not-applicable", atBest: null };
  if (rule.entry === null) {
    return { outcome: "no-limit-in-force", atBest: applies === null ? "not-applicable" : null };
  }
  return outcomeFrom(applies, rule.fail.any.truth(look), rule.warn.any.truth(look));
}

function outcomeFrom(applies: Truth, fail: Truth, warn: Truth): Pick<Judgement, "outcome" | "atBest"> {
  const outcome = applies === null ? "undecided" : outcomeOf(fail, warn);
  return { outcome, atBest: outcome === "undecided" ? bestOf(applies, fail, warn) : null };
}

function outcomeOf(fail: Truth, warn: Truth): Outcome {
  if (fail === true) return "fail";
  if (fail === null || warn === null) return "undecided";
  return warn ? "warn" : "pass";
}

/** The best that can still come out, in the order pass, not-applicable, warn, fail. */
function bestOf(applies: Truth, fail: Truth, warn: Truth): Outcome {
  const ifApplied: Outcome = fail === true ? "fail" : warn === true ? "warn" : "pass";
  return applies === null && ifApplied !== "pass" ? "not-applicable" : ifApplied;
}

/** The band that spoke; of a pass, or where the rule may not apply at all, the nearest failing one. */
function limitOf(
  rule: ReadyRule,
  entry: LimitEntry,
  outcome: Outcome,
  fail: Truth,
  warn: Truth,
  look: Look,
): LimitSpoken | null {
  const show = (ready: ReadyBand | null): LimitSpoken | null => ready && showLimit(ready, rule.judged, entry, look);
  const speaking = (side: ReadySide, truth: Truth): ReadyBand | null =>
    nearestBand(
      side.bands.filter((ready) => ready.check.truth(look) === truth),
      rule.judged,
      look,
    );
  if (fail === true) return show(speaking(rule.fail, true));
  if (fail === null) return show(speaking(rule.fail, null));
  if (outcome === "warn") return show(speaking(rule.warn, true));
  if (warn === null) return show(speaking(rule.warn, null));
  return show(nearestBand(rule.fail.bands, rule.judged, look) ?? nearestBand(rule.warn.bands, rule.judged, look));
}

function listOf(open: OpenFacts): Judgement["open"] {
  return [...open].map(([fact, reason]) => ({ fact, reason }));
}
