import { type Interval, isSingle } from "../../base/index.js";
import { type FactState, type Facts, factOf } from "../../facts/index.js";
import { type BearingOrders, bearingOrdersWithin } from "../../quantities/index.js";
import { type Derivation, intervalOf, known, rounded, stateOf, unknownFor } from "./deriving.js";
import { saysTooLittle, sizeOf } from "./fixing.js";

/** Frequencies of a rolling bearing, however little of its geometry is known. */
export const BEARING_DERIVED: Readonly<Record<string, Derivation>> = {
  cage_frequency: (facts) => deriveOrder(facts, "lowest_turning_frequency", "cage"),
  outer_race_frequency: (facts) => deriveOrder(facts, "highest_turning_frequency", "outerRace"),
  inner_race_frequency: (facts) => deriveOrder(facts, "highest_turning_frequency", "innerRace"),
  element_fault_frequency: (facts) => deriveOrder(facts, "highest_turning_frequency", "elementFault"),
};

const GEOMETRY = ["bearing_elements", "element_diameter", "pitch_diameter", "contact_angle"];

function deriveOrder(facts: Facts, turningId: string, order: keyof BearingOrders): FactState {
  const from = [...GEOMETRY, turningId];
  const turning = intervalOf(stateOf(facts, turningId));
  if (!turning) return unknownFor(turningId, from, facts);
  const orders = bearingOrdersWithin({
    elements: elementsOf(facts),
    diameterRatio: ratioOf(facts),
    contactAngleDeg: angleOf(facts),
  });
  if (!orders) return saysTooLittle(["element_diameter", "pitch_diameter", "bearing_elements"], "conflicting");
  const { lowest, highest } = orders[order];
  const frequency: Interval = {
    lowest: turning.lowest > 0 ? turning.lowest * lowest : Number.NEGATIVE_INFINITY,
    highest: turning.highest * highest,
  };
  return known(rounded(frequency), exactLast(from, facts), facts);
}

/** Whole numbers that the count may be; any number of elements that a bearing has where nobody counted them. */
function elementsOf(facts: Facts): Interval {
  const { lowest: fewest, highest: most } = factOf("bearing_elements").plausible ?? { lowest: 3, highest: 200 };
  const stated = intervalOf(stateOf(facts, "bearing_elements"));
  if (!stated) return { lowest: fewest, highest: most };
  const within = (count: number): number => Math.min(most, Math.max(fewest, count));
  return { lowest: within(Math.floor(stated.lowest)), highest: within(Math.ceil(stated.highest)) };
}

function ratioOf(facts: Facts): Interval | null {
  const element = sizeOf(facts, "element_diameter");
  const pitch = sizeOf(facts, "pitch_diameter");
  if (!element || !pitch) return null;
  return { lowest: element.lowest / pitch.highest, highest: element.highest / pitch.lowest };
}

function angleOf(facts: Facts): Interval | null {
  const stated = intervalOf(stateOf(facts, "contact_angle"));
  if (!stated) return null;
  const within = (degrees: number): number => Math.min(90, Math.max(0, degrees));
  return { lowest: within(stated.lowest), highest: within(stated.highest) };
}

/** What is not known comes first, then what is uncertain: that is what to ask for where the bounds are too wide. */
function exactLast(ids: readonly string[], facts: Facts): readonly string[] {
  const rank = (id: string): number => {
    const state = stateOf(facts, id);
    if (!state.known) return 0;
    return typeof state.value === "object" && !isSingle(state.value) ? 1 : 2;
  };
  return [...ids].sort((one, other) => rank(one) - rank(other));
}
