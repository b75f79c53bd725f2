import { didYouMean, STAGES, type Stage } from "../../base/index.js";
import { CATALOGUE, type FactDefinition, factOf, findFact } from "../../facts/index.js";
import type { LimitEntry, Rule } from "../book/rule.js";
import { factMeant } from "../text/fact-meant.js";
import type { RawLimit, RawRule } from "../text/raw.js";
import { below, type Report } from "../text/source.js";
import { checkCovered } from "./band-cover.js";
import { readBands } from "./band-reading.js";
import { readCases } from "./case-reading.js";
import { type BookNames, factsDiffer, readCondition } from "./condition-reading.js";
import { checkCites, checkDates, checkReview, readCitations } from "./dated.js";

/**
 * Checks what one rule file means, its form being checked already.
 *
 * @returns the rule; of use only if nothing was reported
 */
export function readRule(raw: RawRule, report: Report, names: BookNames): Rule {
  checkSets(raw, report, names);
  const judges = readJudges(raw, report);
  const judged = judgedDefinitions(judges, report);
  const limits = raw.limits.map((limit, index) => readLimit(limit, below("/limits", index), judged, report, names));
  checkDates(raw.limits, "/limits", report);
  const uses = raw.limits.map((limit, index) => ({ pointer: below("/limits", index, "cites"), cites: limit.cites }));
  checkCites(raw.citations, uses, report);
  checkMessages(raw, report);
  return {
    id: raw.id,
    title: raw.title,
    group: raw.group ?? null,
    sets: raw.sets,
    stages: raw.stages,
    appliesWhen: raw.appliesWhen === undefined ? null : readCondition(raw.appliesWhen, "/appliesWhen", report, names),
    judges,
    limits,
    citations: readCitations(raw.citations),
    messages: raw.messages,
    remedy: raw.remedy,
    undecided: raw.undecided ?? "warn",
    releases: raw.releases ?? null,
    cases: readCases(raw, report, names),
    casesGive: raw.casesGive ?? {},
    at: report.placeOf("/id"),
  };
}

function checkSets(raw: RawRule, report: Report, names: BookNames): void {
  const { sets } = names;
  if (sets === null) return;
  for (const [index, set] of raw.sets.entries()) {
    if (sets.has(set)) continue;
    const near = didYouMean(set, sets) || `; its sets are ${[...sets].join(", ")}`;
    report.atValue(below("/sets", index), "unknown-set", `the manifest has no set "${set}"${near}`);
  }
}

function readJudges(raw: RawRule, report: Report): Readonly<Record<Stage, string | null>> {
  const judges: Record<Stage, string | null> = { proposed: null, installed: null };
  for (const stage of STAGES) {
    const isRuleStage = raw.stages.includes(stage);
    if (typeof raw.judges !== "object") {
      judges[stage] = isRuleStage ? (raw.judges ?? null) : null;
      continue;
    }
    judges[stage] = raw.judges[stage] ?? null;
    if (isRuleStage && judges[stage] === null) {
      report.atKey("/judges", "stage-without-fact", `no fact is judged at the stage "${stage}" of the rule; name one`);
    } else if (!isRuleStage && judges[stage] !== null) {
      const text = `the rule is not for the stage "${stage}"; add it to stages, or leave it out here`;
      report.atKey(below("/judges", stage), "stage-of-no-use", text);
    }
  }
  return judges;
}

/** The judged facts; one set of limits speaks of them all, so they must be alike. */
function judgedDefinitions(judges: Readonly<Record<Stage, string | null>>, report: Report): readonly FactDefinition[] {
  const ids = [...new Set(STAGES.flatMap((stage) => judges[stage] ?? []))];
  const definitions = ids.map(factOf);
  const [first, second] = definitions;
  if (first === undefined || second === undefined) return definitions;
  const mismatch = factsDiffer(first, second);
  if (mismatch) report.atValue("/judges/installed", mismatch.code, mismatch.text);
  else if (first.unit !== second.unit) {
    const text = `"${second.id}" is kept in ${second.unit} and "${first.id}" in ${first.unit}; write a rule for each`;
    report.atValue("/judges/installed", "units-differ", text);
  } else return definitions;
  // One mistake is said once: the limits are then checked against the first fact alone.
  return [first];
}

function readLimit(
  raw: RawLimit,
  pointer: string,
  judged: readonly FactDefinition[],
  report: Report,
  names: BookNames,
): LimitEntry {
  if (raw.fail === undefined && raw.warn === undefined) {
    report.atValue(pointer, "limit-without-band", "the limit has neither fail nor warn; say what breaks it");
  }
  checkReview(raw, pointer, report);
  const pointers = { fail: below(pointer, "fail"), warn: below(pointer, "warn") };
  const fail = readBands(raw.fail, pointers.fail, judged, report, names);
  const warn = readBands(raw.warn, pointers.warn, judged, report, names);
  checkCovered(fail, warn, pointers, report);
  return {
    from: raw.from,
    until: raw.until,
    reviewBy: raw.reviewBy ?? null,
    fail,
    warn,
    cites: raw.cites,
    at: report.placeOf(pointer),
  };
}

const FACT_IDS = CATALOGUE.map((definition) => definition.id);

const PLACEHOLDER = /\{([^{}]*)\}/g;

function checkMessages(raw: RawRule, report: Report): void {
  for (const outcome of ["fail", "warn"] as const) {
    const message = raw.messages[outcome];
    const speaks = raw.limits.some((limit) => limit[outcome] !== undefined);
    if (speaks && message === undefined) {
      report.atKey(
        "/messages",
        "missing-message",
        `the rule can ${outcome} and has no message for it; add messages.${outcome}`,
      );
    }
    if (message === undefined) continue;
    const pointer = below("/messages", outcome);
    if (!speaks) report.atKey(pointer, "unused-message", `the rule can never ${outcome}; leave the message out`);
    for (const [, id = ""] of message.matchAll(PLACEHOLDER)) {
      if (findFact(id)) continue;
      const near = factMeant(id, FACT_IDS);
      report.atValue(pointer, "unknown-fact", `the message names "{${id}}", which is no fact of the catalogue${near}`);
    }
    if (/[{}]/.test(message.replace(PLACEHOLDER, ""))) {
      report.atValue(pointer, "stray-brace", "a brace without its other half; a fact is written {fact_id}");
    }
  }
}
