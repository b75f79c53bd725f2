import type { Facts } from "../../facts/index.js";
import { saidOf } from "../identity.js";
import type { MissingFact } from "../result.js";
import { GroupFacts } from "./group-facts.js";
import type { GroupIndex } from "./group-index.js";
import type { GroupFactState, Lacking } from "./group-state.js";

/**
 * Everything that a rule may ask of the group of a row that is in none, since a fact of its key is not known: the row
 * may belong to any group, so that nothing is known of it but the rest of its key.
 */
export function factsOutside(index: GroupIndex, facts: Facts): GroupFacts {
  const state = stateOutside(index, facts);
  const states = new Map(index.compiled.members.map(({ id }) => [id, state]));
  return new GroupFacts(states, index.keyOf(facts));
}

/** The state of every fact of a group for a row that is in none. */
export function stateOutside(index: GroupIndex, facts: Facts): GroupFactState {
  const lacking = namedIn(index).flatMap((fact): readonly Lacking[] => {
    const said = saidOf(facts, fact);
    if (fact === "site" && (said === undefined || (!said.known && said.reason === "missing"))) return [];
    return said?.known ? [] : [{ fact, reason: said?.reason ?? "missing" }];
  });
  const origin = { kind: "derived", from: index.compiled.group.key } as const;
  return { known: false, reason: lacking[0]?.reason ?? "missing", origin, lacking };
}

const REASONS: readonly MissingFact["reason"][] = ["missing", "doubtful", "unreadable", "conflicting", "too-close"];

/** The reasons why the key of a row is not known, as one number. */
export function reasonsOutside(index: GroupIndex, facts: Facts): number {
  return namedIn(index).reduce((number, fact) => {
    const said = saidOf(facts, fact);
    const reason = said === undefined ? 1 : said.known ? 0 : 1 + REASONS.indexOf(said.reason);
    return number * (REASONS.length + 1) + reason;
  }, 0);
}

/** A site that is not stated puts nobody out of a group, one that cannot be read does. */
function namedIn({ compiled }: GroupIndex): readonly string[] {
  return ["site", ...compiled.group.key];
}
