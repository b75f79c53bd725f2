import { isSingle } from "../../base/index.js";
import { type FactState, type Facts, factOf } from "../../facts/index.js";
import { type Derivation, intervalOf, known, stateOf, unknownFor } from "./deriving.js";
import { saysTooLittle, threadOf, unknownForOne } from "./fixing.js";

/** Choices made of what a survey says, by which tables are looked up. */
export const TABLE_KEY_DERIVED: Readonly<Record<string, Derivation>> = {
  bolt_steel: deriveBoltSteel,
  bolt_size: deriveBoltSize,
  conductor_listed: deriveConductorListed,
  bonded_with: deriveBondedWith,
};

/** Classes of austenitic steel begin with its letter and number (A2, A4), those of carbon steel with a number. */
function deriveBoltSteel(facts: Facts): FactState {
  const state = stateOf(facts, "bolt_class");
  if (!state.known || typeof state.value !== "string") return unknownFor("bolt_class", [], facts);
  return known(state.value.startsWith("A") ? "austenitic-stainless" : "carbon-steel", ["bolt_class"], facts);
}

/** The diameters at which the strengths of property classes change. */
const SIZES: readonly (readonly [upToMm: number, size: string])[] = [
  [16, "up-to-16-mm"],
  [24, "16-to-24-mm"],
  [39, "24-to-39-mm"],
];

function deriveBoltSize(facts: Facts): FactState {
  const thread = threadOf(facts, "thread");
  if (!thread) return unknownForOne(["thread"], [], facts);
  const found = SIZES.find(([upToMm]) => thread.majorMm <= upToMm);
  return found ? known(found[1], ["thread"], facts) : saysTooLittle(["thread"], "unreadable");
}

/** A size that is known with an accuracy only is none of those that are listed. */
function deriveConductorListed(facts: Facts): FactState {
  const area = intervalOf(stateOf(facts, "conductor_size"));
  if (!area) return unknownFor("conductor_size", [], facts);
  const listed = factOf("conductor_listed").choices?.find((choice) => choice === `${area.lowest}-mm2`);
  return known((isSingle(area) && listed) || "not-listed", ["conductor_size"], facts);
}

/** An adhesive that nobody wrote down is one that is not named; one that somebody wrote and nobody can read is not known. */
function deriveBondedWith(facts: Facts): FactState {
  const state = stateOf(facts, "adhesive");
  if (!state.known && state.reason !== "missing") return unknownFor("adhesive", [], facts);
  const named = state.known && typeof state.value === "string" && state.value !== "other";
  return known(named ? String(state.value) : "not-named", ["adhesive"], facts);
}
