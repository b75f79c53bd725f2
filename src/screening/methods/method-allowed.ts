import { type Facts, factOf, type MethodsAllowed, plainWords } from "../../facts/index.js";
import { showFact } from "../fact-shown.js";
import type { Finding, RuleShown } from "../result.js";
import { METHOD } from "./method-trial.js";
import { wordOf } from "./methods-allowed.js";

/** Id of the built-in rule. */
export const METHOD_ALLOWED = "method-allowed";

const REMEDY = "plan a method that the site allows, or have the site allow this one";

/** The built-in rule as results list it; listed where the site states which methods it allows. */
export const METHOD_ALLOWED_SHOWN: RuleShown = {
  id: METHOD_ALLOWED,
  title: "The site allows the mounting method",
  sets: [],
  undecided: "warn",
  releases: null,
  judged: METHOD,
  appliesWhen: null,
  limits: [],
  citations: [
    {
      id: "word-of-the-site",
      basis: "company-practice",
      says: "the site states in its site file which mounting methods it allows",
    },
  ],
  reviewOverdue: false,
  remedy: REMEDY,
  addedBy: null,
  changedBy: [],
};

/**
 * The finding of a point whose method the site does not allow, or whose method is not known where not all are allowed;
 * null for others.
 *
 * @param allowed - what the site states for this point, or null
 */
export function methodAllowed(facts: Facts, allowed: MethodsAllowed | null): Finding | null {
  if (allowed === null) return null;
  const method = wordOf(facts, METHOD);
  const all = factOf(METHOD).choices ?? [];
  if (method === null ? all.every((one) => allowed.methods.includes(one)) : allowed.methods.includes(method)) {
    return null;
  }
  const state = facts.get(METHOD);
  const rest = {
    limit: null,
    margin: null,
    facts: [showFact(METHOD, facts)],
    group: null,
    changes: [],
    accepted: null,
  };
  const listed = `${allowed.methods.map(plainWords).join(", ")} (${allowed.file}:${allowed.line})`;
  if (method === null) {
    const reason = state && !state.known ? state.reason : "missing";
    return {
      rule: METHOD_ALLOWED,
      outcome: "undecided",
      atBest: "pass",
      ...rest,
      missing: [{ fact: METHOD, reason, measureTo: null }],
      message: `the mounting method is not known, and the site allows here only: ${listed}`,
      remedy: "find out: mounting method",
    };
  }
  const message = `${plainWords(method)} is planned, and the site allows here only: ${listed}`;
  return { rule: METHOD_ALLOWED, outcome: "fail", atBest: null, ...rest, missing: [], message, remedy: REMEDY };
}
