import { isOpen, type Outcome } from "../../base/index.js";
import { type FactState, type FactValue, factOf } from "../../facts/index.js";
import type { Look } from "../book/check.js";
import { type Compared, valuesToTry } from "./values-to-try.js";

/** More open facts than this are not searched for a smaller set. */
const MOST_FACTS = 5;
/** More combinations of values than this are not tried. */
const MOST_COMPLETIONS = 400;

/**
 * The fewest of the open facts of a rule that decide it whatever they turn out to be. Normally these are all of them;
 * fewer do where each value of one fact settles the rule one way or the other.
 *
 * Of the facts themselves, derived ones as a whole: what lies under a derived fact is for others to find.
 *
 * @param outcomeOf - what the rule says of some facts
 * @param open - the facts that leave it open
 * @param named - all facts that it names
 */
export function decidingFacts(
  outcomeOf: (look: Look) => Outcome,
  look: Look,
  open: readonly string[],
  named: readonly string[],
  compared: Compared,
): readonly string[] {
  // Where a bound is scaled, the turning points are not at hand; and a model decides all of its facts together.
  const cannotTry = compared.scales || open.some((id) => factOf(id).source === "model");
  if (open.length < 2 || open.length > MOST_FACTS || cannotTry) return open;
  for (let size = 1; size < open.length; size++) {
    for (const some of subsets(open, size)) {
      const values = some.map((id) => valuesToTry(id, compared, named, look));
      const combinations = values.reduce((product, { length }) => product * length, 1);
      if (combinations > MOST_COMPLETIONS) continue;
      if (alwaysDecided(outcomeOf, look, some, values)) return some;
    }
  }
  return open;
}

function alwaysDecided(
  outcomeOf: (look: Look) => Outcome,
  look: Look,
  ids: readonly string[],
  values: readonly (readonly FactValue[])[],
): boolean {
  const total = values.reduce((product, { length }) => product * length, 1);
  for (let index = 0; index < total; index++) {
    let rest = index;
    const supposed = new Map<string, FactState>();
    for (const [i, id] of ids.entries()) {
      const choices = values[i] ?? [];
      const value = choices[rest % choices.length];
      rest = Math.floor(rest / choices.length);
      if (value !== undefined) supposed.set(id, { known: true, value, origin: { kind: "none" } });
    }
    if (isOpen(outcomeOf((id) => supposed.get(id) ?? look(id)))) return false;
  }
  return total > 0;
}

/** The subsets of one size, in the order of the list. */
function* subsets(ids: readonly string[], size: number, from = 0): Iterable<readonly string[]> {
  if (size === 0) {
    yield [];
    return;
  }
  for (let i = from; i <= ids.length - size; i++) {
    const id = ids[i];
    if (id === undefined) return;
    for (const others of subsets(ids, size - 1, i + 1)) yield [id, ...others];
  }
}
