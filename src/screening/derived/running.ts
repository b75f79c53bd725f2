import type { Interval } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import {
  componentFrequencyHz,
  shaftFrequencyHz,
  shortestRunS,
  smearLines,
  spectrumRecord,
  turnsInRecord,
} from "../../quantities/index.js";
import { type Derivation, intervalOf, known, rounded, stateOf, unknownFor } from "./deriving.js";
import { deriveLowestRunningSpeed } from "./operation.js";

/** Frequencies of the shaft and what a record of the signal shows of it. */
export const RUNNING_DERIVED: Readonly<Record<string, Derivation>> = {
  highest_running_speed: deriveHighestRunningSpeed,
  highest_turning_frequency: (facts) => deriveFrequency(facts, null),
  tooth_mesh_frequency: (facts) => deriveFrequency(facts, "gear_teeth"),
  blade_pass_frequency: (facts) => deriveFrequency(facts, "blade_count"),
  turns_in_record: deriveTurnsInRecord,
  measuring_time: deriveMeasuringTime,
  lines_smeared: deriveLinesSmeared,
};

/**
 * The mirror of the lowest running speed: the field of that name, else the single speed, which under a variable drive
 * is only a speed that the shaft surely reaches.
 */
function deriveHighestRunningSpeed(facts: Facts): FactState {
  const stated = stateOf(facts, "highest_speed");
  const highest = intervalOf(stated);
  if (highest) return known(rounded(highest), ["highest_speed"], facts);
  const nominalState = stateOf(facts, "nominal_speed");
  const nominal = intervalOf(nominalState);
  const drive = stateOf(facts, "variable_speed");
  const open = !stated.known && stated.reason !== "missing";
  const unclear = !drive.known && drive.reason !== "missing";
  const mayVary = open || unclear || (drive.known && drive.value === "yes");
  if (!nominal) {
    const unread = !nominalState.known && nominalState.reason !== "missing";
    return unknownFor(open || (mayVary && !unread) ? "highest_speed" : "nominal_speed", ["nominal_speed"], facts);
  }
  if (!mayVary) return known(rounded(nominal), ["nominal_speed"], facts);
  const lacking = !open && unclear ? "variable_speed" : "highest_speed";
  const bound = rounded({ lowest: nominal.lowest, highest: Number.POSITIVE_INFINITY });
  return known(bound, [lacking, "nominal_speed"], facts);
}

/** Rises with the speed and with the number of teeth or blades, so the ends belong to the ends. */
function deriveFrequency(facts: Facts, events: string | null): FactState {
  const speedState = deriveHighestRunningSpeed(facts);
  const speedFrom = speedState.origin.kind === "derived" ? speedState.origin.from : [];
  const speed = intervalOf(speedState);
  if (events === null) {
    if (!speed) return speedState;
    return known(rounded(risingOver([speed], ([rpm = 0]) => shaftFrequencyHz(rpm))), speedFrom, facts);
  }
  const from = [...speedFrom, events];
  const order = intervalOf(stateOf(facts, events));
  if (!order) return unknownFor(events, from, facts);
  if (!speed) return unknownFor(speedFrom[0] ?? "nominal_speed", from, facts);
  const frequency = risingOver([order, speed], ([count = 0, rpm = 0]) => componentFrequencyHz(count, rpm));
  return known(rounded(frequency), from, facts);
}

/** Rises with the speed and with the number of lines, falls with the highest frequency. */
function deriveTurnsInRecord(facts: Facts): FactState {
  const speedState = deriveLowestRunningSpeed(facts);
  const speedFrom = speedState.origin.kind === "derived" ? speedState.origin.from : [];
  const from = [...speedFrom, "spectrum_lines", "highest_frequency"];
  const record = recordLengthS(facts);
  if (typeof record === "string") return unknownFor(record, from, facts);
  const speed = intervalOf(speedState);
  if (!speed) return unknownFor(speedFrom[0] ?? "nominal_speed", from, facts);
  return known(
    rounded(risingOver([speed, record], ([rpm = 0, seconds = 0]) => turnsInRecord(rpm, seconds))),
    from,
    facts,
  );
}

/** Rises with all of its parts but the highest frequency; records that do not overlap take longest. */
function deriveMeasuringTime(facts: Facts): FactState {
  const from = ["settling_time", "spectrum_lines", "highest_frequency", "averages"];
  const record = recordLengthS(facts);
  const settling = intervalOf(stateOf(facts, "settling_time"));
  const averages = intervalOf(stateOf(facts, "averages"));
  if (typeof record === "string") return unknownFor(record, from, facts);
  if (!averages) return unknownFor("averages", from, facts);
  if (!settling) return unknownFor("settling_time", from, facts);
  const whole = wholeCount(averages);
  const shortest = record.lowest > 0 ? shortestRunS(Math.max(0, settling.lowest), record.lowest, whole.lowest, 0) : 0;
  const longest = Number.isFinite(record.highest)
    ? shortestRunS(Math.max(0, settling.highest), record.highest, whole.highest, 0)
    : Number.POSITIVE_INFINITY;
  return known(rounded({ lowest: shortest, highest: longest }), from, facts);
}

/**
 * Of the component at the top of the spectrum, which spreads most. Its frequency is lines × spacing, so that the spread
 * in lines hangs on the number of lines and the change alone, and rises with both: one line a hertz gives the same.
 */
function deriveLinesSmeared(facts: Facts): FactState {
  const from = ["speed_change", "spectrum_lines"];
  const change = intervalOf(stateOf(facts, "speed_change"));
  const lines = intervalOf(stateOf(facts, "spectrum_lines"));
  if (!change) return unknownFor("speed_change", from, facts);
  if (!lines) return unknownFor("spectrum_lines", from, facts);
  const whole = wholeCount(lines);
  const ofTop = (count: number, pct: number) => smearLines(count, 60, Math.max(0, pct), 1);
  const spread = { lowest: ofTop(whole.lowest, change.lowest), highest: ofTop(whole.highest, change.highest) };
  return known(rounded(spread), from, facts);
}

/** Length of one record, or the fact that is lacking. */
function recordLengthS(facts: Facts): Interval | string {
  const lines = intervalOf(stateOf(facts, "spectrum_lines"));
  const top = intervalOf(stateOf(facts, "highest_frequency"));
  if (!lines) return "spectrum_lines";
  if (!top) return "highest_frequency";
  const whole = wholeCount(lines);
  return {
    lowest: spectrumRecord(top.highest, whole.lowest).recordLengthS,
    highest: top.lowest > 0 ? spectrumRecord(top.lowest, whole.highest).recordLengthS : Number.POSITIVE_INFINITY,
  };
}

/** A count stated with an accuracy, widened to whole numbers of at least one. */
function wholeCount({ lowest, highest }: Interval): Interval {
  return { lowest: Math.max(1, Math.floor(lowest)), highest: Math.max(1, Math.ceil(highest)) };
}

/** A quantity that rises with each of its parts, none of which can be nought; an end without a bound stays without. */
function risingOver(parts: readonly Interval[], quantity: (values: readonly number[]) => number): Interval {
  const lowest = parts.map((part) => part.lowest);
  const highest = parts.map((part) => part.highest);
  return {
    lowest: lowest.every((value) => value > 0) ? quantity(lowest) : Number.NEGATIVE_INFINITY,
    highest: highest.every(Number.isFinite) ? quantity(highest) : Number.POSITIVE_INFINITY,
  };
}
