import { didYouMean } from "../../base/index.js";
import { factOf } from "../../facts/index.js";
import { STEPS } from "../../quantities/index.js";
import type { RawRule } from "./raw.js";
import { below, type Report } from "./source.js";

/** Names of facts and of named conditions that a piece of a file writes down. */
export interface NamesWritten {
  readonly facts: Set<string>;
  readonly conditions: Set<string>;
}

/**
 * Gathers the names that the data of conditions and bands write, whatever else may be wrong with them; the depth of
 * files is limited, so this may recurse.
 */
export function gatherNames(data: unknown, names: NamesWritten): void {
  if (typeof data !== "object" || data === null) return;
  for (const [key, value] of Object.entries(data)) {
    if (key === "fact" && typeof value === "string") names.facts.add(value);
    else if (key === "condition" && typeof value === "string") names.conditions.add(value);
    else gatherNames(value, names);
  }
}

/**
 * The names that a rule writes, with those of the named conditions that it reaches.
 *
 * @param conditions - data of the condition files by id
 */
export function namesOfRule(raw: RawRule, conditions: ReadonlyMap<string, unknown>): NamesWritten {
  const judged = typeof raw.judges === "object" ? Object.values(raw.judges) : [raw.judges ?? []].flat();
  const names: NamesWritten = { facts: new Set(judged), conditions: new Set() };
  gatherNames(raw.appliesWhen, names);
  for (const { fail, warn } of raw.limits) gatherNames([fail, warn], names);
  // A set that grows while it is walked is walked to its new end, so every name is followed once.
  for (const name of names.conditions) gatherNames(conditions.get(name), names);
  return names;
}

/**
 * Reports facts that the remedy changes although no result of the rule rests on them, and facts that nobody can change
 * in any known step: a remedy that is computed could never name them. For groups none is computed.
 *
 * @param key - of a rule of a group: the facts that put a row into it
 */
export function checkRemedy(
  raw: RawRule,
  conditions: ReadonlyMap<string, unknown>,
  key: readonly string[],
  report: Report,
): void {
  const { facts } = namesOfRule(raw, conditions);
  for (const fact of key) facts.add(fact);
  for (const fact of facts) for (const needed of factOf(fact).needs ?? []) facts.add(needed);
  // Another model brings other values with it.
  if ([...facts].some((fact) => factOf(fact).source === "model")) facts.add("sensor_model");
  for (const [index, fact] of raw.remedy.change.entries()) {
    if (facts.has(fact)) {
      if (raw.group !== undefined || STEPS.has(fact)) continue;
      const can = [...facts].filter((other) => STEPS.has(other)).sort();
      const those = can.length > 0 ? `; of the facts of the rule one can change ${can.join(", ")}` : "";
      const text = `"${fact}" is no thing that is changed in known steps${those}; leave it to the text of the remedy`;
      report.atValue(below("/remedy/change", index), "not-changeable", text);
      continue;
    }
    const near = didYouMean(fact, facts) || "; name a fact that is judged or compared, or leave it out";
    const text = `changing "${fact}" changes no result, because the rule names it nowhere${near}`;
    report.atValue(below("/remedy/change", index), "change-of-no-use", text);
  }
}

const OUTCOMES = ["pass", "warn", "fail", "undecided"] as const;

/** Reports outcomes that a rule can give and that none of its cases expects. */
export function checkOutcomesInCases(raw: RawRule, conditions: ReadonlyMap<string, unknown>, report: Report): void {
  const { facts } = namesOfRule(raw, conditions);
  const can = {
    pass: true,
    warn: raw.limits.some(({ warn }) => warn !== undefined),
    fail: raw.limits.some(({ fail }) => fail !== undefined),
    undecided: [...facts].some((fact) => factOf(fact).source !== "run"),
  };
  const bare = OUTCOMES.filter((outcome) => can[outcome] && !raw.cases.some(({ expect }) => expect === outcome));
  if (bare.length === 0) return;
  const each = bare.length > 1 ? "a case for each" : "such a case";
  const text = `the rule can come to ${bare.join(", ")}, which no case expects; add ${each}`;
  report.atKey("/cases", "outcome-without-case", text);
}

/** Whether a fact is something that a person can change at a point in known steps, for the remedy of a rule. */
export function canBeChanged(fact: string): boolean {
  return STEPS.has(fact);
}
