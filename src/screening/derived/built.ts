import { daysBetween, type Interval } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import {
  accelerationOfVelocityMPerS2,
  displacementOfVelocityUm,
  limitsOfGroup,
  type MachineGroup,
  machineGroupsWithin,
  type SupportClass,
  shaftFrequencyHz,
  type Zone,
  zoneOf,
} from "../../quantities/index.js";
import { type Derivation, intervalOf, known, lackingAmong, stateOf, unknownFor } from "./deriving.js";
import { monotone } from "./monotone.js";

/** Days of the plan, and what the first readings say. */
export const BUILT_DERIVED: Readonly<Record<string, Derivation>> = {
  days_to_outage: deriveDaysToOutage,
  baseline_displacement: (facts) =>
    monotone(facts, { baseline_velocity: "rises", baseline_speed: "falls" }, (velocity, speed) =>
      displacementOfVelocityUm(velocity, shaftFrequencyHz(speed)),
    ),
  baseline_turning_acceleration: (facts) =>
    monotone(facts, { baseline_velocity: "rises", baseline_speed: "rises" }, (velocity, speed) =>
      accelerationOfVelocityMPerS2(velocity, shaftFrequencyHz(speed)),
    ),
  baseline_zone: deriveZone,
};

function deriveDaysToOutage(facts: Facts): FactState {
  const from = ["next_outage", "surveyed_on"];
  const days = from.map((id) => stateOf(facts, id));
  const [outage, survey] = days.map((state) => (state.known && typeof state.value === "string" ? state.value : null));
  const lacking = lackingAmong(from, facts, (id) => stateOf(facts, id).known);
  if (outage == null || survey == null) return unknownFor(lacking ?? "next_outage", from, facts);
  const count = daysBetween(survey, outage);
  return known({ lowest: count, highest: count }, from, facts);
}

const ZONES: readonly Zone[] = ["A", "B", "C", "D"];
/** Groups and supports that a machine may have; null where it lies outside the standard. */
type Groups = ReadonlySet<MachineGroup | null>;

/** The zone if it is the same for every group and support that the machine may have. */
function deriveZone(facts: Facts): FactState {
  const from = ["baseline_velocity", "power", "component", "shaft_height", "support_stiffness"];
  const velocity = intervalOf(stateOf(facts, "baseline_velocity"));
  const power = intervalOf(stateOf(facts, "power"));
  const groups: Groups = power ? groupsOf(power, facts) : new Set();
  if (groups.size === 1 && groups.has(null)) return known("not-zoned", ["component", "power", "shaft_height"], facts);
  if (!velocity || groups.size === 0) {
    const read: Readonly<Record<string, unknown>> = { baseline_velocity: velocity, power };
    const lacking = lackingAmong(from.slice(0, 2), facts, (id) => read[id] !== null);
    return unknownFor(lacking ?? "power", from, facts);
  }
  const zones = new Set<string>();
  for (const group of groups) {
    if (group === null) zones.add("not-zoned");
    else for (const zone of zonesIn(group, velocity, facts)) zones.add(zone);
  }
  const [only] = zones;
  if (only !== undefined && zones.size === 1) return known(only, from, facts);
  const component = stateOf(facts, "component");
  const settling = [
    "component",
    "support_stiffness",
    ...(component.known && component.value === "motor" ? ["shaft_height"] : []),
  ];
  const open = settling.filter((id) => !stateOf(facts, id).known);
  return unknownFor(lackingAmong(open, facts, () => false) ?? "baseline_velocity", from, facts);
}

/** Parts of which the standard does not speak: pumps have a part of their own, gears a standard of theirs, rolls none. */
const OF_OTHER_STANDARDS: ReadonlySet<unknown> = new Set(["pump", "gearbox", "roll"]);

/** Motors go by shaft height, all else by power; up to 300 kW a fan on a flexible support is outside, too. */
function groupsOf(powerKw: Interval, facts: Facts): Groups {
  const component = stateOf(facts, "component");
  if (component.known && OF_OTHER_STANDARDS.has(component.value)) return OUTSIDE;
  const power = withinReach(powerKw);
  const height = intervalOf(stateOf(facts, "shaft_height"));
  const ofMotor = machineGroupsWithin(power, height ? withinReach(height) : ANY_HEIGHT_MM);
  if (component.known && component.value === "motor") return ofMotor;
  if (component.known && component.value === "fan") return fanGroups(machineGroupsWithin(power, null), facts);
  if (component.known) return machineGroupsWithin(power, null);
  return new Set([...ofMotor, ...machineGroupsWithin(power, null), ...OUTSIDE]);
}

/** A fan of group 2, whose support may be flexible, may be outside; where it surely is, it is nothing else. */
function fanGroups(groups: Groups, facts: Facts): Groups {
  const supports = supportsOf(facts);
  if (!groups.has(2) || !supports.includes("flexible")) return groups;
  return new Set([...groups, null].filter((group) => group !== 2 || supports.includes("rigid")));
}

const OUTSIDE: Groups = new Set([null]);
/** Small and large enough for every group, and for none. */
const ANY_HEIGHT_MM: Interval = { lowest: 1, highest: 10_000 };

function withinReach({ lowest, highest }: Interval): Interval {
  const within = (end: number): number => Math.min(1e9, Math.max(1e-9, end));
  return { lowest: within(lowest), highest: within(highest) };
}

function supportsOf(facts: Facts): readonly SupportClass[] {
  const state = stateOf(facts, "support_stiffness");
  const stated = (["rigid", "flexible"] as const).filter((support) => state.known && state.value === support);
  return stated.length > 0 ? stated : ["rigid", "flexible"];
}

function zonesIn(group: MachineGroup, velocity: Interval, facts: Facts): readonly Zone[] {
  return supportsOf(facts).flatMap((support) => zonesWithin(velocity, group, support));
}

/** Every zone from that of the lower end to that of the upper one. */
function zonesWithin(velocity: Interval, group: MachineGroup, support: SupportClass): readonly Zone[] {
  const limits = limitsOfGroup(group, support).velocityMmPerS;
  const at = (mmPerS: number): number => ZONES.indexOf(zoneOf(Math.min(1e9, Math.max(0, mmPerS)), limits));
  return ZONES.slice(at(velocity.lowest), at(velocity.highest) + 1);
}
