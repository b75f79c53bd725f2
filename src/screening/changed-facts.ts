import type { FactState, Facts } from "../facts/index.js";
import { PointFacts } from "./point-facts.js";

/**
 * All facts of a point as they would be if some facts of its row were others; what is derived from them follows.
 *
 * @param facts - of a point of a run
 * @throws RangeError for facts of anything else, of which nothing can be derived
 */
export function changedFacts(facts: Facts, changes: ReadonlyMap<string, FactState>): Facts {
  if (!(facts instanceof PointFacts)) throw new RangeError("these are not the facts of a point of a run");
  return facts.changed(changes);
}
