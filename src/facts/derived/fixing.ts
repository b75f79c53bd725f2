import type { FactDefinition } from "../definition.js";

type Numeric = readonly [kind: "count" | "quantity", unit: string, lowest: number, highest: number];

/** The ends are what can come out at all: other ones than those of the facts that a difference is made of. */
function of(
  [kind, unit, lowest, highest]: Numeric,
  id: string,
  name: string,
  needs: readonly string[],
): FactDefinition {
  const dimension = unit === "mm" ? ("length" as const) : ("ratio" as const);
  const plausible = { lowest, highest };
  const measured = kind === "quantity" ? { dimension, unit } : { unit };
  return { id, name, kind, source: "derived", group: "mounting", needs, plausible, ...measured };
}

const BOLT = ["thread", "bolt_class", "thread_state", "table.proof_stress", "table.torque_factor_min"];

/** How the sensor is fixed: metal, hole, thread, bolt and bond. */
export const FIXING_DERIVED: readonly FactDefinition[] = [
  {
    id: "wall_metal",
    name: "metal of the wall",
    kind: "choice",
    source: "derived",
    group: "surface",
    choices: [
      "grey-cast-iron",
      "ductile-iron",
      "carbon-steel",
      "austenitic-stainless",
      "ferritic-stainless",
      "cast-steel",
      "aluminium",
      "bronze",
      "plastic",
    ],
    needs: ["surface_material"],
  },
  of(["quantity", "mm", -180, 500], "wall_left", "wall left under the drill point", [
    "wall_thickness",
    "hole_depth",
    "drill_diameter",
    "thread",
  ]),
  of(["count", "pitches", -1000, 1000], "thread_run_out", "hole below the full thread", [
    "hole_depth",
    "thread_depth",
    "thread",
  ]),
  of(["count", "diameters", 0, 100], "usable_thread", "usable thread", ["thread_depth", "bolt_reach", "thread"]),
  {
    id: "tap_hole",
    name: "what the drilled hole suits",
    kind: "choice",
    source: "derived",
    group: "mounting",
    choices: ["too-small", "cutting", "neither", "forming", "too-large"],
    needs: ["drill_diameter", "thread"],
  },
  {
    id: "threads_match",
    name: "whether hole and sensor have the same thread",
    kind: "yes-no",
    source: "derived",
    group: "mounting",
    needs: ["thread", "sensor_thread"],
  },
  of(["quantity", "%", 0, 1000000], "planned_preload", "highest preload at the planned torque, of the proof load", [
    "target_torque",
    ...BOLT,
  ]),
  of(["quantity", "%", 0, 1000000], "applied_preload", "highest preload at the applied torque, of the proof load", [
    "applied_torque",
    ...BOLT,
  ]),
  of(["quantity", "%", -100, 1000000], "torque_off_plan", "torque as applied, off the plan by", [
    "applied_torque",
    "target_torque",
  ]),
  of(["quantity", "mm", 0, 300], "pad_gap", "gap under the rim of the pad", [
    "surface_radius",
    "flat_diameter",
    "model.seat_diameter_min",
  ]),
];
