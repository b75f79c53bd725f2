import { type FactState, type Facts, findFact, MISSING, type UnknownReason } from "../facts/index.js";
import type { OpenFact } from "../rulebook/index.js";
import { rootsUnder } from "./fact-shown.js";
import { lackingIn } from "./groups/group-state.js";
import { isUncertain } from "./measure-to.js";
import type { MeasureTo, MissingFact } from "./result.js";

/** How accurately a fact must be measured again so that the rule at hand is decided; null if that is no way. */
export type Solve = (fact: string) => MeasureTo | null;

type Root = Pick<MissingFact, "fact" | "reason">;

/**
 * The survey, site and model facts behind the facts that a rule was short of, each once.
 *
 * @param solve - left out where nobody asks how accurately to measure again
 */
export function missingFacts(
  open: readonly OpenFact[],
  facts: Facts,
  solve: Solve = () => null,
): readonly MissingFact[] {
  const missing = new Map<string, MissingFact>();
  for (const { fact, reason } of open) {
    for (const root of rootsOf(fact, reason, facts)) {
      const found = root.reason === "too-close" ? solved(root, fact, facts, solve) : { ...root, measureTo: null };
      if (!missing.has(found.fact)) missing.set(found.fact, found);
    }
  }
  return [...missing.values()];
}

/**
 * The uncertain number that would settle it, measured better: the one to name where a derived fact rests on several.
 * Where none of them alone would, the first of them that is uncertain.
 */
function solved(root: Root, open: string, facts: Facts, solve: Solve): MissingFact {
  const uncertain = rootsUnder(open, facts).filter((id) => isUncertain(id, facts));
  for (const fact of uncertain) {
    const to = solve(fact);
    if (to) return { fact, reason: "too-close", measureTo: to };
  }
  const [first] = uncertain;
  return {
    fact: first === undefined || uncertain.includes(root.fact) ? root.fact : first,
    reason: root.reason,
    measureTo: null,
  };
}

function rootsOf(fact: string, reason: UnknownReason, facts: Facts): readonly Root[] {
  const state = facts.get(fact) ?? MISSING;
  const source = findFact(fact)?.source;
  if (source === "model") return modelRoot(fact, facts);
  if (source === "table") return tableRoots(fact, state, facts);
  const lacking = lackingIn(state);
  if (lacking !== null) return lacking.length > 0 ? lacking : rowsTooClose(state);
  if (state.origin.kind !== "derived") return [{ fact, reason }];
  const from = state.origin.from;
  if (fact === "seat") return seatRoots(from, facts);
  const [first] = from;
  if (first === undefined) return [{ fact, reason }];
  const under = findFact(first)?.source;
  if (under === "model") return modelRoot(first, facts);
  if (under === "table") return tableRoots(first, facts.get(first) ?? MISSING, facts);
  if (under === "derived" && first !== fact) return rootsOf(first, reason, facts);
  const root = facts.get(first) ?? MISSING;
  if (!root.known) return [{ fact: first, reason: root.reason }];
  // A known number under it is too close to the limit, or bounded by a fact that is itself missing; a known word may
  // say too little (a thread of no known size), and then the derived fact has the reason.
  return [{ fact: first, reason: state.known ? "too-close" : state.reason }];
}

/** Of a fact of a group whose rows are all known: they are not known accurately enough. */
function rowsTooClose({ origin }: FactState): readonly Root[] {
  return origin.kind === "derived" ? origin.from.map((fact) => ({ fact, reason: "too-close" })) : [];
}

function modelRoot(fact: string, facts: Facts): readonly Root[] {
  const model = facts.get("sensor_model");
  if (model && !model.known) return [{ fact: "sensor_model", reason: model.reason }];
  return [{ fact, reason: "missing" }];
}

/** What a table is looked up by, where that is not known; else the table has no value, and it is the table's to have. */
function tableRoots(fact: string, state: FactState, facts: Facts): readonly Root[] {
  const keys = state.origin.kind === "derived" ? state.origin.from : [];
  const open = keys.flatMap((key) => {
    const known = facts.get(key) ?? MISSING;
    return known.known ? [] : rootsOf(key, known.reason, facts);
  });
  return open.length > 0 ? open : [{ fact, reason: "missing" }];
}

/** Parts that have a cell of their own come before parts that no column speaks of: they are where the answer goes. */
function seatRoots(parts: readonly string[], facts: Facts): readonly Root[] {
  const open = parts.flatMap((part) => {
    const state = facts.get(part) ?? MISSING;
    return state.known ? [] : [{ fact: part, reason: state.reason, asked: state.origin.kind !== "none" }];
  });
  const asked = open.filter((part) => part.asked);
  const named = (asked.length > 0 ? asked : open).map(({ fact, reason }): Root => ({ fact, reason }));
  return named.length > 0 ? named : [{ fact: "surface_material", reason: "missing" }];
}
