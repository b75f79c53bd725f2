import { type FactState, type Facts, factOf } from "../../facts/index.js";
import { bearingAreaMm2, flatNeededMm, seatOf, tiltGapMm } from "../../quantities/index.js";
import { type Derivation, intervalOf, known, rounded, stateOf, unknownFor } from "./deriving.js";
import { sizeOf, threadOf, unknownForOne, unusableOf } from "./fixing.js";
import { monotone } from "./monotone.js";

/** What the sensor sits on. */
export const SEAT_DERIVED: Readonly<Record<string, Derivation>> = {
  seat: deriveSeat,
  flat_needed: (facts) => monotone(facts, { "model.base_diameter": "rises" }, (base) => flatNeededMm(base)),
  bearing_area: deriveBearingArea,
  tilt_gap: deriveTiltGap,
};

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

/** Rises with the base; the bolt takes its own diameter out of it. */
function deriveBearingArea(facts: Facts): FactState {
  const from = ["model.base_diameter", "sensor_thread"];
  const base = sizeOf(facts, "model.base_diameter");
  const thread = threadOf(facts, "sensor_thread");
  if (!base || !thread) {
    return unknownForOne(unusableOf({ "model.base_diameter": base, sensor_thread: thread }), from, facts);
  }
  const area = (baseMm: number): number => (baseMm > thread.majorMm ? bearingAreaMm2(baseMm, thread.majorMm) : 0);
  return known(rounded({ lowest: area(base.lowest), highest: area(base.highest) }), from, facts);
}

/** Rises with the base and with the angle. */
function deriveTiltGap(facts: Facts): FactState {
  const from = ["model.base_diameter", "hole_tilt"];
  const base = sizeOf(facts, "model.base_diameter");
  const tilt = intervalOf(stateOf(facts, "hole_tilt"));
  if (!base || !tilt) return unknownForOne(unusableOf({ "model.base_diameter": base, hole_tilt: tilt }), from, facts);
  const gap = (baseMm: number, degrees: number): number => tiltGapMm(baseMm, Math.min(89, Math.max(0, degrees)));
  const bounds = { lowest: gap(base.lowest, tilt.lowest), highest: gap(base.highest, tilt.highest) };
  return known(rounded(bounds), from, facts);
}
