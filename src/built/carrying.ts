import type { Facts } from "../facts/index.js";
import { SURVEY_FACTS } from "../facts/index.js";
import { differ, isFilled, type SameText, saidOf } from "./said.js";

function inGroups(...groups: readonly string[]): readonly string[] {
  return SURVEY_FACTS.filter(({ group }) => groups.includes(group)).map(({ id }) => id);
}

/** What makes a point another one than was judged: the machine, where on it, and how it is fixed. */
export const METHOD_AND_PLACE: readonly string[] = [
  "asset_tag",
  "component",
  "bearing_position",
  "direction",
  "mounted_on",
  "mounting_method",
];

/** What is said of the walk along the points rather than of a point; neither compared nor carried over. */
const OF_THE_WALK: readonly string[] = ["surveyed_by", "surveyed_on", "photo", "notes"];

/** What only fitting brings about. A proposal cannot know it, so its word never stands in for a measurement. */
export const AS_BUILT: ReadonlySet<string> = new Set([
  ...inGroups("as-built"),
  "polarity_checked",
  "unused_sockets_capped",
  "install_temperature",
]);

/** Facts that name a point and say nothing of what was done there. */
export const NAMING: ReadonlySet<string> = new Set([
  ...inGroups("identity"),
  "component",
  "bearing_position",
  "direction",
]);

/** Facts that proposal and built survey are compared in, in the order of the catalogue. */
export const COMPARED: readonly string[] = SURVEY_FACTS.map(({ id }) => id).filter(
  (id) => !OF_THE_WALK.includes(id) && !AS_BUILT.has(id),
);

const CARRIABLE: ReadonlySet<string> = new Set(COMPARED);
const SPEEDS = ["nominal_speed", "lowest_speed", "highest_speed"];
/** The fixing itself; the sensor and the way of fixing are chosen, the rest belongs to that choice. */
const FIXING = inGroups("mounting").filter((id) => !["sensor_model", "sensor_thread", "mounting_method"].includes(id));
const SPOT = [...inGroups("point", "surface"), ...FIXING, "access", "working_height"];

/**
 * What does not outlive a change: if one of `of` was built otherwise than proposed, or cannot be told, the proposal's
 * word on `facts` is of another thing than stands there and is not carried over.
 */
const TIES: readonly { readonly of: readonly string[]; readonly facts: readonly string[] }[] = [
  {
    of: ["asset_tag"],
    facts: [...inGroups("machine", "operation", "selection", "safety", "environment"), ...SPOT],
  },
  // Another shaft of the machine may turn at another speed, in other bearings.
  { of: ["component", "bearing_position"], facts: [...inGroups("machine"), ...SPEEDS, ...SPOT] },
  { of: ["direction", "mounted_on"], facts: SPOT },
  { of: ["mounting_method"], facts: FIXING },
  { of: ["thread"], facts: ["thread_depth", "hole_depth", "drill_diameter", "bolt_reach", "target_torque"] },
  { of: [...SPEEDS, "variable_speed"], facts: SPEEDS },
  {
    of: ["sensor_model"],
    facts: ["sensor_thread", "sensor_current", "starting_current", "sensor_certified", "ip_rating", "target_torque"],
  },
  {
    of: ["supply_name", "supply_kind", "supply_voltage"],
    facts: [
      "supply_voltage",
      "supply_voltage_min",
      "supply_kind",
      "supply_rating",
      "supply_separation",
      "sensors_on_supply",
    ],
  },
  {
    of: ["cable_type"],
    facts: ["conductor_size", "conductor_class", "cable_diameter", "cable_temperature_max", "bend_radius"],
  },
  { of: ["surface_finish"], facts: ["paint_thickness"] },
];

const NOTHING: ReadonlySet<string> = new Set();
const byTies = new Map<number, ReadonlySet<string>>();

/** The facts of which the proposal's word does not hold for what was built; one set for all points that changed alike. */
export function heldBack(proposed: Facts, built: Facts, sameText: SameText): ReadonlySet<string> {
  let ties = 0;
  for (const [i, { of }] of TIES.entries()) {
    if (of.some((id) => isChanged(id, proposed, built, sameText))) ties |= 1 << i;
  }
  if (ties === 0) return NOTHING;
  const known = byTies.get(ties) ?? new Set(TIES.flatMap(({ facts }, i) => (ties & (1 << i) ? facts : [])));
  byTies.set(ties, known);
  return known;
}

/** Stated otherwise than proposed, or by a cell that leaves open what was built. */
function isChanged(id: string, proposed: Facts, built: Facts, sameText: SameText): boolean {
  const now = saidOf(built, id);
  if (!isFilled(now)) return false;
  if (!now.known) return true;
  const then = saidOf(proposed, id);
  return then !== undefined && differ(id, then, now, sameText);
}

/**
 * Whether the proposal's word on a fact may stand in where the built survey says nothing. Carried over is what names
 * the point, what holds for its machine and surroundings, and what was planned; not what only fitting brings about, nor
 * what is said of the walk.
 */
export function mayBeCarried(id: string): boolean {
  return CARRIABLE.has(id);
}
