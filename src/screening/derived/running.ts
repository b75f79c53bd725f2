import type { FactState, Facts } from "../../facts/index.js";
import {
  componentFrequencyHz,
  shaftFrequencyHz,
  shortestRunS,
  smearLines,
  spectrumRecord,
  turnsInRecord,
} from "../../quantities/index.js";
import { type Derivation, intervalOf, known, lackingAmong, rounded, stateOf, unknownFor } from "./deriving.js";
import { monotone, uncertainFirst, wholeCount } from "./monotone.js";

/** Frequencies of the shaft and what a record of the signal shows of it. */
export const RUNNING_DERIVED: Readonly<Record<string, Derivation>> = {
  highest_running_speed: deriveHighestRunningSpeed,
  lowest_turning_frequency: (facts) => monotone(facts, { lowest_running_speed: "rises" }, shaftFrequencyHz),
  highest_turning_frequency: (facts) => monotone(facts, { highest_running_speed: "rises" }, shaftFrequencyHz),
  tooth_mesh_frequency: (facts) => deriveEvents(facts, "gear_teeth"),
  blade_pass_frequency: (facts) => deriveEvents(facts, "blade_count"),
  line_spacing: (facts) =>
    monotone(
      facts,
      { highest_frequency: "rises", spectrum_lines: "falls-whole" },
      (top, lines) => spectrumRecord(top, lines).lineSpacingHz,
    ),
  record_length: (facts) =>
    monotone(
      facts,
      { spectrum_lines: "rises-whole", highest_frequency: "falls" },
      (lines, top) => spectrumRecord(top, lines).recordLengthS,
    ),
  turns_in_record: (facts) =>
    monotone(facts, { record_length: "rises", lowest_running_speed: "rises" }, (seconds, rpm) =>
      turnsInRecord(rpm, seconds),
    ),
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

function deriveEvents(facts: Facts, events: string): FactState {
  return monotone(facts, { [events]: "rises", highest_running_speed: "rises" }, componentFrequencyHz);
}

/** A measurement takes longest where records do not overlap; it rises with all of its parts. */
function deriveMeasuringTime(facts: Facts): FactState {
  const from = ["settling_time", "record_length", "averages"];
  const [settling, record, averages] = from.map((id) => intervalOf(stateOf(facts, id)));
  const lacking = lackingAmong(from, facts, (id) => intervalOf(stateOf(facts, id)) !== null);
  if (!settling || !record || !averages || lacking !== undefined) return unknownFor(lacking ?? "averages", from, facts);
  const whole = wholeCount(averages);
  const shortest = record.lowest > 0 ? shortestRunS(Math.max(0, settling.lowest), record.lowest, whole.lowest, 0) : 0;
  const longest = Number.isFinite(record.highest)
    ? shortestRunS(Math.max(0, settling.highest), record.highest, whole.highest, 0)
    : Number.POSITIVE_INFINITY;
  return known(rounded({ lowest: shortest, highest: longest }), uncertainFirst(from, facts), facts);
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
