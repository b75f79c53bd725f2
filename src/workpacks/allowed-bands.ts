import { type Outcome, STAGES, type Stage, single } from "../base/index.js";
import { type Facts, findFact, type KnownFact } from "../facts/index.js";
import { type CompiledRule, compileRule, type Rulebook } from "../rulebook/index.js";
import { changedFacts } from "../screening/index.js";
import type { AllowedBand, BandRule } from "./pack.js";

/** Values tried on either side of the plan, as shares of it; a limit farther off is nobody's concern at the machine. */
const STEP = 0.05;
const STEPS = 20;
const HALVINGS = 24;
/** Significant digits of an end: no gauge or wrench reads more. */
const DIGITS = 3;

/** How bad an outcome is. */
const BADNESS: Readonly<Record<Outcome, number>> = {
  pass: 0,
  "not-applicable": 0,
  warn: 1,
  undecided: 2,
  "no-limit-in-force": 2,
  fail: 3,
};

/** What a value is tried with. */
export interface Trial {
  readonly fact: string;
  /** The planned or expected value, in the unit of the fact. */
  readonly plan: number;
}

/**
 * Says how far a value may lie off the plan: as far as no rule of points says worse of the point than it does at the
 * plan. The rules themselves are asked, at their own stages, so that every limit of the book counts, also through what
 * is computed from the value.
 */
export class AllowedBands {
  readonly #rules: readonly CompiledRule[];
  readonly #under = new Map<string, readonly CompiledRule[]>();

  /** @param asOf - day for which limits are looked up */
  constructor(rulebook: Pick<Rulebook, "rules" | "conditions">, set: string, asOf: string) {
    this.#rules = rulebook.rules
      .filter(({ sets, group }) => sets.includes(set) && group === null)
      .flatMap((rule) =>
        STAGES.flatMap((stage: Stage) => {
          const compiled = compileRule(rule, rulebook, { stage, asOf });
          return compiled ? [compiled] : [];
        }),
      );
  }

  /** The band round a planned value; null where no rule sets an end to it. */
  around({ fact, plan }: Trial, facts: Facts): AllowedBand | null {
    const rules = this.#rulesOn(fact);
    if (rules.length === 0 || !Number.isFinite(plan) || plan <= 0) return null;
    const says = (value: number): readonly number[] => {
      const changed = changedFacts(facts, new Map([[fact, measured(value)]]));
      return rules.map((rule) => BADNESS[rule.judge(changed).outcome]);
    };
    const atPlan = says(plan);
    const worse = (value: number): readonly CompiledRule[] => {
      const said = says(value);
      return rules.filter((_, i) => (said[i] ?? 0) > (atPlan[i] ?? 0));
    };
    const { lowest: least = 0, highest: most = Number.POSITIVE_INFINITY } = findFact(fact)?.plausible ?? {};
    const low = endOf(plan, -1, least, worse);
    const high = endOf(plan, 1, most, worse);
    if (low === null && high === null) return null;
    const by = (end: End | null): readonly BandRule[] => (end === null ? [] : saidBeyond(end, fact, facts));
    return {
      lowest: low?.value ?? null,
      highest: high?.value ?? null,
      unit: findFact(fact)?.unit ?? null,
      lowestBy: by(low),
      highestBy: by(high),
    };
  }

  /** The rules that rest on a fact, by themselves or through what is derived from it. */
  #rulesOn(fact: string): readonly CompiledRule[] {
    const known = this.#under.get(fact) ?? this.#rules.filter(({ factsNamed }) => factsNamed.some(restsOn(fact)));
    this.#under.set(fact, known);
    return known;
  }
}

interface End {
  readonly value: number;
  readonly beyond: number;
  readonly rules: readonly CompiledRule[];
}

function endOf(
  plan: number,
  side: -1 | 1,
  outermost: number,
  worse: (value: number) => readonly CompiledRule[],
): End | null {
  let good = plan;
  for (let step = 1; step <= STEPS; step++) {
    const tried = plan * (1 + side * STEP * step);
    if (side < 0 ? tried < outermost : tried > outermost) return null;
    if (worse(tried).length === 0) {
      good = tried;
      continue;
    }
    let bad = tried;
    for (let i = 0; i < HALVINGS; i++) {
      const middle = (good + bad) / 2;
      if (worse(middle).length === 0) good = middle;
      else bad = middle;
    }
    return { value: readable(good, side, plan, worse), beyond: bad, rules: worse(bad) };
  }
  return null;
}

/** The end with few digits, rounded towards the plan where the nearest number would lie beyond it. */
function readable(end: number, side: -1 | 1, plan: number, worse: (value: number) => readonly CompiledRule[]): number {
  const nearest = Number(end.toPrecision(DIGITS));
  if (worse(nearest).length === 0) return nearest;
  const unit = 10 ** (Math.floor(Math.log10(Math.abs(end))) - DIGITS + 1);
  const inwards = Number((nearest - side * unit).toPrecision(DIGITS));
  const isInside = side < 0 ? inwards <= plan : inwards >= plan;
  return isInside && worse(inwards).length === 0 ? inwards : plan;
}

function saidBeyond({ beyond, rules }: End, fact: string, facts: Facts): readonly BandRule[] {
  const changed = changedFacts(facts, new Map([[fact, measured(beyond)]]));
  const said = new Map(rules.map((rule) => [rule.ruleId, rule.judge(changed).outcome] as const));
  return [...said].map(([rule, outcome]) => ({ rule, outcome }));
}

function measured(value: number): KnownFact {
  return { known: true, value: single(value), origin: { kind: "none" } };
}

/** Whether a fact of a rule is this one, or is computed from it. */
function restsOn(fact: string): (named: string) => boolean {
  const rests = (named: string): boolean => named === fact || (findFact(named)?.needs ?? []).some(rests);
  return rests;
}
