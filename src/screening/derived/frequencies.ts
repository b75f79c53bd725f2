import type { Interval } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import { shareShownAbove, synchronousSpeedRpm, USUAL_MULTIPLES } from "../../quantities/index.js";
import { type Derivation, intervalOf, known, rounded, stateOf, unknownFor } from "./deriving.js";
import { saysTooLittle } from "./fixing.js";
import { monotone, uncertainFirst } from "./monotone.js";

/** Frequencies of motors, and what is to be seen of all parts of a machine. */
export const FREQUENCY_DERIVED: Readonly<Record<string, Derivation>> = {
  synchronous_speed: deriveSynchronousSpeed,
  slip: (facts) =>
    monotone(
      facts,
      { synchronous_speed: "rises", nominal_speed: "falls" },
      (field, shaft) => 100 * (1 - shaft / field),
    ),
  twice_line_frequency: (facts) => monotone(facts, { mains_frequency: "rises" }, (hertz) => 2 * hertz),
  pole_pass_frequency: derivePolePass,
  lowest_frequency_of_interest: deriveLowestOfInterest,
  highest_frequency_of_interest: deriveHighestOfInterest,
  share_shown: (facts) =>
    monotone(
      facts,
      { lowest_turning_frequency: "rises", "model.lower_corner": "falls" },
      (hertz, corner) => 100 * shareShownAbove(hertz, corner),
    ),
};

/** Poles come in pairs: an odd number is a slip of the pen, and of an uncertain number only the even ones count. */
function deriveSynchronousSpeed(facts: Facts): FactState {
  const poles = intervalOf(stateOf(facts, "pole_count"));
  if (!poles) return monotone(facts, { pole_count: "falls", mains_frequency: "rises" }, synchronousSpeedRpm);
  const even = { lowest: 2 * Math.ceil(poles.lowest / 2), highest: 2 * Math.floor(poles.highest / 2) };
  if (!(even.lowest >= 2 && even.lowest <= even.highest)) return saysTooLittle(["pole_count"], "unreadable");
  const from = ["pole_count", "mains_frequency"];
  const mains = intervalOf(stateOf(facts, "mains_frequency"));
  if (!mains || !(mains.lowest > 0)) return unknownFor("mains_frequency", from, facts);
  const speed = {
    lowest: Number.isFinite(even.highest) ? synchronousSpeedRpm(mains.lowest, even.highest) : 0,
    highest: Number.isFinite(mains.highest)
      ? synchronousSpeedRpm(mains.highest, even.lowest)
      : Number.POSITIVE_INFINITY,
  };
  return known(rounded(speed), uncertainFirst(from, facts), facts);
}

/** Rises with the slip, which is below 0 where the shaft is said to outrun its field, and goes further with the mains. */
function derivePolePass(facts: Facts): FactState {
  const from = ["slip", "mains_frequency"];
  const slip = intervalOf(stateOf(facts, "slip"));
  const mains = intervalOf(stateOf(facts, "mains_frequency"));
  if (!slip) return unknownFor("slip", from, facts);
  if (!mains || !(mains.lowest > 0)) return unknownFor("mains_frequency", from, facts);
  const at = (slipPct: number, hertz: number): number => (2 * slipPct * hertz) / 100;
  const bounds = {
    lowest: at(slip.lowest, slip.lowest < 0 ? mains.highest : mains.lowest),
    highest: at(slip.highest, slip.highest < 0 ? mains.lowest : mains.highest),
  };
  return known(rounded(bounds), uncertainFirst(from, facts), facts);
}

/** What a word says where it is known, and all that it may say where it is not. */
function may(facts: Facts, id: string, value: string | boolean): "yes" | "no" | "open" {
  const state = stateOf(facts, id);
  if (!state.known) return "open";
  return state.value === value ? "yes" : "no";
}

/** The turning frequency; where more is wanted, the cage, and below all of them a belt, of which nothing is known. */
function deriveLowestOfInterest(facts: Facts): FactState {
  const from = ["lowest_turning_frequency", "low_band_wanted", "bearing_type", "drive_type", "cage_frequency"];
  const turning = intervalOf(stateOf(facts, "lowest_turning_frequency"));
  if (!turning) return unknownFor("lowest_turning_frequency", from, facts);
  const wanted = may(facts, "low_band_wanted", true);
  if (wanted === "no") return known(turning, ["lowest_turning_frequency", "low_band_wanted"], facts);
  const rolling = may(facts, "bearing_type", "rolling");
  const belt = may(facts, "drive_type", "belt");
  const cageState = stateOf(facts, "cage_frequency");
  if (rolling !== "no" && !cageState.known && cageState.reason === "conflicting") {
    return unknownFor("cage_frequency", from, facts);
  }
  const cage = intervalOf(cageState) ?? {
    lowest: Number.NEGATIVE_INFINITY,
    highest: turning.highest,
  };
  const seen: Interval = {
    lowest: belt === "no" ? (rolling === "no" ? turning.lowest : cage.lowest) : Number.NEGATIVE_INFINITY,
    highest: wanted === "yes" && rolling === "yes" ? cage.highest : turning.highest,
  };
  return known(rounded(seen), openFirst(from, facts), facts);
}

/**
 * The greatest of what each part of the machine asks for: surely of what is there, perhaps of what may be there. Sources
 * differ in the multiples, which no measurement would settle, so that the least of them count.
 */
function deriveHighestOfInterest(facts: Facts): FactState {
  const turning = intervalOf(stateOf(facts, "highest_turning_frequency"));
  const from = ["highest_turning_frequency", "bearing_type", "component"];
  if (!turning) return unknownFor("highest_turning_frequency", from, facts);
  const wanted: Interval[] = [turning];
  const rolling = may(facts, "bearing_type", "rolling");
  if (rolling !== "no") wanted.push(asked(turning, USUAL_MULTIPLES.rollingBearing.lowest, rolling === "yes"));
  const component = stateOf(facts, "component");
  for (const { id, on, times } of EVENTS) {
    if (component.known && !on.includes(String(component.value))) continue;
    from.push(id);
    wanted.push(asked(intervalOf(stateOf(facts, id)) ?? ANYTHING, times, component.known));
  }
  const bounds: Interval = {
    lowest: Math.max(...wanted.map(({ lowest }) => lowest)),
    highest: Math.max(...wanted.map(({ highest }) => highest)),
  };
  return known(rounded(bounds), openFirst(from, facts), facts);
}

/** What happens so many times in a turn, and on which components it is looked for. */
const EVENTS: readonly { readonly id: string; readonly on: readonly string[]; readonly times: number }[] = [
  { id: "tooth_mesh_frequency", on: ["gearbox"], times: USUAL_MULTIPLES.toothMesh.lowest },
  { id: "blade_pass_frequency", on: ["pump", "fan", "compressor"], times: USUAL_MULTIPLES.bladePass.lowest },
];

const ANYTHING: Interval = { lowest: Number.NEGATIVE_INFINITY, highest: Number.POSITIVE_INFINITY };

function asked(frequency: Interval, times: number, surely: boolean): Interval {
  return { lowest: surely ? frequency.lowest * times : Number.NEGATIVE_INFINITY, highest: frequency.highest * times };
}

/** What is not known comes first: it is what to ask for where the bounds do not settle a comparison. */
function openFirst(ids: readonly string[], facts: Facts): readonly string[] {
  const open = ids.filter((id) => !stateOf(facts, id).known);
  return [...open, ...ids.filter((id) => !open.includes(id))];
}
