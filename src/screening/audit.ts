import { isOpen, isSingle, type Outcome } from "../base/index.js";
import { type FactState, type Facts, findFact } from "../facts/index.js";
import {
  type CompiledRule,
  type EngineRules,
  type EngineValue,
  engineRules,
  type Judgement,
} from "../rulebook/index.js";
import type { ScreeningInput } from "./input.js";
import type { ReadyRule } from "./judge-point.js";
import { type Reference, referenceOf } from "./reference.js";
import { factsOfRun } from "./screen.js";

/** What an audit compared, and where the two judges differ. */
export interface AuditReport {
  /** Findings whose facts were all single known values: compared outright. */
  readonly compared: number;
  /** Open or uncertain findings that were decided all the same: compared on completions of their facts. */
  readonly completed: number;
  readonly completions: number;
  /** Findings that were left open; an open answer claims nothing that could be wrong. */
  readonly open: number;
  readonly differences: readonly string[];
}

/** Completions tried per finding; a decided answer must hold for every one of them. */
const MOST_COMPLETIONS = 64;
const MOST_DIFFERENCES = 50;

/**
 * Compares every finding of a run, on points and on groups, with json-rules-engine: outright where all facts are
 * single known values, on completions (the ends of an interval and the limits inside it, each choice) where a decided
 * answer rests on less.
 *
 * @param onProgress - told the share of points done
 */
export async function auditScreening(input: ScreeningInput, onProgress: (share: number) => void): Promise<AuditReport> {
  const { points, groups, rules: ready } = factsOfRun(input);
  const rules = await Promise.all(
    ready.filter(({ rule }) => rule.group === null).map((one) => auditedRule(one, input)),
  );
  const counts = { compared: 0, completed: 0, completions: 0, open: 0 };
  const differences: string[] = [];
  const total = input.surveys.reduce((sum, survey) => sum + survey.records.length, 0);
  let done = 0;
  const audit = async (rule: AuditedRule, facts: Facts, place: () => string): Promise<void> => {
    const difference = await auditOne(rule, facts, counts);
    if (difference !== null && differences.length < MOST_DIFFERENCES)
      differences.push(`${place()}, ${rule.ruleId}: ${difference}`);
  };
  for (const judge of groups.judges) {
    const rule = await auditedRule(judge.ready, input);
    for (let group = 0; group < judge.index.size; group++) {
      await audit(rule, judge.factsOf(group), () => judge.index.idOf(group));
    }
  }
  for (const { record, facts } of points) {
    const place = (): string => `${record.file}${record.sheet === null ? "" : ` > ${record.sheet}`} row ${record.row}`;
    for (const rule of rules) await audit(rule, facts, place);
    done += 1;
    if (done % 100 === 0) onProgress(done / total);
  }
  return { ...counts, differences };
}

interface AuditedRule {
  readonly ruleId: string;
  readonly compiled: CompiledRule;
  readonly reference: Reference;
  readonly named: readonly string[];
  readonly computed: EngineRules["computed"];
}

async function auditedRule({ rule, compiled }: ReadyRule, input: ScreeningInput): Promise<AuditedRule> {
  const engine = engineRules(rule, input.rulebook, input.options);
  if (!engine) throw new RangeError(`the rule "${rule.id}" is compiled for a stage that it does not have`);
  const named = compiled.factsNamed.filter((id) => id !== "stage");
  return { ruleId: rule.id, compiled, reference: await referenceOf(engine), named, computed: engine.computed };
}

async function auditOne(
  rule: AuditedRule,
  facts: Facts,
  counts: { compared: number; completed: number; completions: number; open: number },
): Promise<string | null> {
  const judgement = rule.compiled.judge(facts);
  const choices = rule.named.map((id) => ({ id, values: possibleValues(id, facts.get(id), rule, facts) }));
  if (choices.every(({ id, values }) => values.length === 1 && isComplete(facts.get(id)))) {
    counts.compared += 1;
    const values = new Map(choices.map(({ id, values: [value] }) => [id, value ?? ""] as const));
    return differ(judgement.outcome, await rule.reference.judge(values));
  }
  if (isOpen(judgement.outcome)) {
    counts.open += 1;
    return null;
  }
  counts.completed += 1;
  return auditCompletions(rule, judgement, choices, counts);
}

async function auditCompletions(
  rule: AuditedRule,
  judgement: Judgement,
  choices: readonly { readonly id: string; readonly values: readonly EngineValue[] }[],
  counts: { completions: number },
): Promise<string | null> {
  for (const completion of completionsOf(choices)) {
    counts.completions += 1;
    const difference = differ(judgement.outcome, await rule.reference.judge(completion));
    if (difference !== null)
      return `${difference} with ${[...completion].map(([id, value]) => `${id} ${value}`).join(", ")}`;
  }
  return null;
}

function differ(ours: Outcome, theirs: Outcome): string | null {
  return ours === theirs ? null : `compiled says ${ours}, the reference says ${theirs}`;
}

function isComplete(state: FactState | undefined): boolean {
  return state?.known === true && (typeof state.value !== "object" || isSingle(state.value));
}

/** Values that a fact may turn out to have: its own, or the ends and limits within its interval, or every choice. */
function possibleValues(
  id: string,
  state: FactState | undefined,
  rule: AuditedRule,
  facts: Facts,
): readonly EngineValue[] {
  const definition = findFact(id);
  if (state?.known && typeof state.value !== "object") return [state.value];
  if (definition?.kind === "yes-no") return [true, false];
  if (definition?.choices) return definition.choices;
  if (definition?.kind !== "quantity" && definition?.kind !== "count") return ["a", "b"];
  const interval = state?.known && typeof state.value === "object" ? state.value : { lowest: -1e6, highest: 1e6 };
  const low = Math.max(interval.lowest, -1e6);
  const high = Math.min(interval.highest, 1e6);
  const limits = rule.named.flatMap((other) => {
    const bound = other === id ? undefined : facts.get(other);
    return bound?.known && typeof bound.value === "object" && isSingle(bound.value) ? [bound.value.lowest] : [];
  });
  return [...new Set([low, high, ...limits.filter((limit) => limit > low && limit < high), (low + high) / 2])];
}

/** Combinations of the possible values, evenly picked where they are too many to try all. */
function* completionsOf(
  choices: readonly { readonly id: string; readonly values: readonly EngineValue[] }[],
): Iterable<ReadonlyMap<string, EngineValue>> {
  const total = choices.reduce((product, { values }) => product * values.length, 1);
  const step = Math.max(1, Math.ceil(total / MOST_COMPLETIONS));
  for (let index = 0; index < total; index += step) {
    let rest = index;
    const completion = new Map<string, EngineValue>();
    for (const { id, values } of choices) {
      completion.set(id, values[rest % values.length] ?? "");
      rest = Math.floor(rest / values.length);
    }
    yield completion;
  }
}
