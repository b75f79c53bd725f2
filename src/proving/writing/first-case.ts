import { type PlainDay, type Stage, single } from "../../base/index.js";
import { type FactDefinition, type FactState, factOf, isNumeric } from "../../facts/index.js";
import { compileRule, prepareCase, type Rule } from "../../rulebook/index.js";
import { ChangedFacts } from "../changed-facts.js";
import { type Probes, probesOf } from "../probes.js";
import type { Book } from "../proven-cases.js";

/** Judgements spent on finding values under which a rule passes. */
const MOST_TRIES = 50_000;

type Chosen = ReadonlyMap<string, FactState>;

/**
 * Values under which a rule applies and passes, for every fact that it names and that neither the model nor a table gives.
 *
 * @param settings - what every case starts from: a day, and a model where there is one
 * @returns the facts in the order in which they were chosen; null if none were found
 */
export function passingFacts(
  rule: Rule,
  book: Book,
  settings: Readonly<Record<string, unknown>>,
  stage: Stage,
  asOf: PlainDay,
): Chosen | null {
  const compiled = compileRule(rule, book, { stage, asOf });
  if (!compiled) return null;
  const empty = { name: "", given: {}, expect: "pass", missing: null, at: rule.at } as const;
  const base = prepareCase({ ...rule, casesGive: settings }, empty, book);
  const probes = probesOf([rule], book);
  let tries = 0;
  const choose = (facts: readonly string[], index = 0, chosen: Chosen = new Map()): Chosen | null => {
    const fact = facts[index];
    const view = new ChangedFacts(base, chosen);
    if (fact === undefined) {
      tries += 1;
      return compiled.judge(view).outcome === "pass" ? chosen : null;
    }
    for (const state of candidates(fact, view, probes)) {
      const found = choose(facts, index + 1, new Map([...chosen, [fact, state]]));
      if (found || tries > MOST_TRIES) return found;
    }
    return null;
  };
  const judged = compiled.judged === null ? [] : [compiled.judged];
  const others = compiled.factsNamed.filter((fact) => fact !== "stage" && fact !== compiled.judged);
  // The judged fact comes last: what it is compared with is then known. What model and tables give stays if it can.
  const open = others.filter((fact) => !isOneValue(base.facts.get(fact)));
  return choose([...open, ...judged]) ?? choose([...others, ...judged]);
}

function isOneValue(state: FactState | undefined): boolean {
  if (!state?.known) return false;
  return typeof state.value !== "object" || state.value.lowest === state.value.highest;
}

function candidates(fact: string, facts: ChangedFacts, probes: Probes): readonly FactState[] {
  const tried = probes.valuesOf(fact, facts).filter((state) => state.known);
  return [...tried, ...someNumbers(factOf(fact))];
}

/** A number in the middle of what can be meant, in one digit, and the ends, where the numbers of the rule do not do. */
function someNumbers(definition: FactDefinition): readonly FactState[] {
  if (!isNumeric(definition)) return [];
  const { lowest = 1, highest = 100 } = definition.plausible ?? {};
  const middle = lowest > 0 ? Math.sqrt(lowest * highest) : (lowest + highest) / 2;
  return [Number(middle.toPrecision(1)), lowest, highest].map((value) => ({
    known: true,
    value: single(value),
    origin: { kind: "none" },
  }));
}
