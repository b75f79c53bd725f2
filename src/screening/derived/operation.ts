import { isSingle, round12 } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import { type Drive, lowestRunningSpeed, speedVaries } from "../../quantities/index.js";
import { type Derivation, intervalOf, known, rounded, stateOf, unknownFor } from "./deriving.js";

/** How the machine runs. */
export const OPERATION_DERIVED: Readonly<Record<string, Derivation>> = {
  speed_varies: deriveSpeedVaries,
  lowest_running_speed: deriveLowestRunningSpeed,
};

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
  if (lowest && highest && !apart && !same && drive === "no") {
    // They may be one speed or two; the drive's word holds only for one.
    const uncertain = isSingle(lowest) ? "highest_speed" : "lowest_speed";
    return unknownFor(uncertain, ["lowest_speed", "highest_speed"], facts);
  }
  const varies = speedVaries(
    apart || same ? (lowest?.lowest ?? null) : null,
    apart || same ? (highest?.highest ?? null) : null,
    drive,
  );
  if (varies === null) return unknownFor("variable_speed", ["variable_speed"], facts);
  return known(varies, apart ? ["lowest_speed", "highest_speed"] : ["variable_speed"], facts);
}

/** The lowest running speed, or which fact is lacking for it. */
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
