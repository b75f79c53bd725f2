import { type Interval, isSingle, round12 } from "../base/index.js";
import { type FactState, type Facts, factOf, MISSING } from "../facts/index.js";
import { type Drive, lowestRunningSpeed, seatOf, speedVaries } from "../quantities/index.js";

/** How each derived fact comes from others. */
export const DERIVED: ReadonlyMap<string, (facts: Facts) => FactState> = new Map([
  ["speed_varies", deriveSpeedVaries],
  ["lowest_running_speed", deriveLowestRunningSpeed],
  ["seat", deriveSeat],
]);

function stateOf(facts: Facts, id: string): FactState {
  return facts.get(id) ?? MISSING;
}

function intervalOf(state: FactState): Interval | null {
  return state.known && typeof state.value === "object" ? state.value : null;
}

function known(value: Interval | string | boolean, from: readonly string[], facts: Facts): FactState {
  const assumed = from.map((id) => facts.get(id)).find((state) => state?.known && state.assumed !== undefined);
  return {
    known: true,
    value,
    ...(assumed?.known && assumed.assumed !== undefined ? { assumed: assumed.assumed } : {}),
    origin: { kind: "derived", from },
  };
}

/** Unknown for the sake of one fact, which comes first among those it rests on, with that fact's own reason. */
function unknownFor(id: string, from: readonly string[], facts: Facts): FactState {
  const state = stateOf(facts, id);
  return {
    known: false,
    reason: state.known ? "too-close" : state.reason,
    origin: { kind: "derived", from: [id, ...from.filter((other) => other !== id)] },
  };
}

function driveOf(state: FactState): Drive {
  return state.known && (state.value === "yes" || state.value === "no") ? state.value : null;
}

function deriveSpeedVaries(facts: Facts): FactState {
  const lowest = intervalOf(stateOf(facts, "lowest_speed"));
  const highest = intervalOf(stateOf(facts, "highest_speed"));
  const apart =
    lowest !== null && highest !== null && (lowest.highest < highest.lowest || highest.highest < lowest.lowest);
  const same = lowest !== null && highest !== null && isSingle(lowest) && isSingle(highest) && !apart;
  const drive = driveOf(stateOf(facts, "variable_speed"));
  const varies = speedVaries(
    apart || same ? (lowest?.lowest ?? null) : null,
    apart || same ? (highest?.highest ?? null) : null,
    drive,
  );
  if (varies === null) return unknownFor("variable_speed", ["variable_speed"], facts);
  return known(varies, apart ? ["lowest_speed", "highest_speed"] : ["variable_speed"], facts);
}

function deriveLowestRunningSpeed(facts: Facts): FactState {
  const stated = stateOf(facts, "lowest_speed");
  const lowest = intervalOf(stated);
  if (lowest) return known(rounded(lowest), ["lowest_speed"], facts);
  const nominal = intervalOf(stateOf(facts, "nominal_speed"));
  const driveState = stateOf(facts, "variable_speed");
  // A lowest speed or a drive that somebody wrote down and nobody can read is not the same as none stated.
  const open = !stated.known && stated.reason !== "missing" ? "lowest_speed" : null;
  const unclear = !driveState.known && driveState.reason !== "missing";
  const drive = open !== null || unclear ? "yes" : driveOf(driveState);
  const ends = nominal ? lowestRunningSpeed(null, nominal.highest, drive) : null;
  if (!nominal || !ends) {
    const single = stateOf(facts, "nominal_speed");
    const unread = !single.known && single.reason !== "missing";
    const lacking = open ?? (drive === "yes" && !unread ? "lowest_speed" : "nominal_speed");
    return unknownFor(lacking, ["nominal_speed"], facts);
  }
  if (ends.bound === "exact") return known(rounded(nominal), ["nominal_speed"], facts);
  const lacking = open ?? (unclear ? "variable_speed" : "lowest_speed");
  return known({ lowest: Number.NEGATIVE_INFINITY, highest: round12(ends.rpm) }, [lacking, "nominal_speed"], facts);
}

function rounded(interval: Interval): Interval {
  return { lowest: round12(interval.lowest), highest: round12(interval.highest) };
}

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
