import type { Interval } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import { bondShearMPa } from "../../quantities/index.js";
import { type Derivation, intervalOf, known, rounded, stateOf, unknownFor } from "./deriving.js";
import { monotone } from "./monotone.js";

/** What the bond of a pad bears, and how long it needs. */
export const BOND_DERIVED: Readonly<Record<string, Derivation>> = {
  bond_shear: (facts) =>
    monotone(facts, { target_torque: "rises", "model.seat_diameter_min": "falls" }, (torque, pad) =>
      bondShearMPa(torque, pad),
    ),
  bond_load: (facts) =>
    monotone(facts, { bond_shear: "rises", bond_strength: "falls" }, (shear, strength) => (100 * shear) / strength),
  waiting_time_from: deriveWaitingTimeFrom,
  waiting_time: deriveWaitingTime,
};

/** Where a sheet names no temperature. */
const ROOM_C = 20;
const ROOM: Interval = { lowest: ROOM_C, highest: ROOM_C };
/** A sheet that names no temperature speaks of a room; one that somebody wrote and nobody can read may speak of an oven. */
function deriveWaitingTimeFrom(facts: Facts): FactState {
  const state = stateOf(facts, "adhesive_set_temperature");
  const sheet = intervalOf(state) ?? (!state.known && state.reason === "missing" ? ROOM : null);
  if (!sheet) return unknownFor("adhesive_set_temperature", [], facts);
  const from = { lowest: Math.max(ROOM_C, sheet.lowest), highest: Math.max(ROOM_C, sheet.highest) };
  return known(rounded(from), ["adhesive_set_temperature"], facts);
}

/**
 * The time of the sheet; no less on a warmer surface, to be safe. On one that is, or may be, colder than the temperature
 * for which the sheet states it, nothing but more data says how much longer it takes.
 */
function deriveWaitingTime(facts: Facts): FactState {
  const from = ["adhesive_set_time", "adhesive_set_temperature", "install_temperature"];
  const time = intervalOf(stateOf(facts, "adhesive_set_time"));
  if (!time) return unknownFor("adhesive_set_time", from, facts);
  const sheet = intervalOf(stateOf(facts, "adhesive_set_temperature"));
  const surface = intervalOf(stateOf(facts, "install_temperature"));
  if (sheet && surface && surface.lowest >= sheet.highest) return known(rounded(time), from, facts);
  const wanting = !surface ? "install_temperature" : "adhesive_set_temperature";
  const longer = { lowest: time.lowest, highest: Number.POSITIVE_INFINITY };
  return known(rounded(longer), [wanting, ...from.filter((id) => id !== wanting)], facts);
}
