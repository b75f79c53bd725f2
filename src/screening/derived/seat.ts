import { type FactState, type Facts, factOf } from "../../facts/index.js";
import { seatOf } from "../../quantities/index.js";
import { type Derivation, known, stateOf, unknownFor } from "./deriving.js";

/** What the sensor sits on. */
export const SEAT_DERIVED: Readonly<Record<string, Derivation>> = { seat: deriveSeat };

const SEAT_PARTS = ["mounted_on", "surface_material", "surface_finish"] as const;
const seats = new Map<string, string | null>();

function deriveSeat(facts: Facts): FactState {
  const parts = SEAT_PARTS.map((id) => stateOf(facts, id));
  const values = parts.map((state) => (state.known && typeof state.value === "string" ? state.value : null));
  const key = values.join("|");
  let seat = seats.get(key);
  if (seat === undefined) {
    seat = seatWhateverMissing(values);
    seats.set(key, seat);
  }
  if (seat !== null) return known(seat, SEAT_PARTS, facts);
  const [open] = SEAT_PARTS.filter((id) => !stateOf(facts, id).known);
  return unknownFor(open ?? "surface_material", SEAT_PARTS, facts);
}

/** The seat if every choice of the missing parts gives the same one; "absent" is no choice of a missing part. */
function seatWhateverMissing(values: readonly (string | null)[]): string | null {
  const [places, materials, finishes] = SEAT_PARTS.map((id, i) => {
    const value = values[i] ?? null;
    return value === null ? (factOf(id).choices ?? []).filter((choice) => choice !== "absent") : [value];
  });
  const found = new Set<string | null>();
  for (const place of places ?? []) {
    for (const material of materials ?? []) {
      for (const finish of finishes ?? []) found.add(seatOf(place, material, finish));
    }
  }
  const [only] = found;
  return found.size === 1 ? (only ?? null) : null;
}
