import type { DerivedDefinition } from "../definition.js";
import { type Computed, derivedIn } from "./entry.js";

const { choice, count, quantity, yesNo } = derivedIn("mounting");

/** The ends are what can come out at all: other ones than those of the facts that a difference is made of. */
function within(lowest: number, highest: number, definition: DerivedDefinition): DerivedDefinition {
  return { ...definition, plausible: { lowest, highest } };
}

/** The highest preload at a torque. */
function preload(torque: string): Computed {
  return {
    needs: [torque, "thread", "bolt_class", "thread_state", "table.proof_stress", "table.torque_factor_min"],
    formula: "100 % × torque / (least factor K × thread diameter) / proof load of the bolt",
    formulaSource: "T = K d F of the handbooks; factor and proof stress from the tables of the rulebook",
  };
}

/** How the sensor is fixed: metal, hole, thread, bolt and bond. */
export const FIXING_DERIVED: readonly DerivedDefinition[] = [
  derivedIn("surface").choice(
    "wall_metal",
    "metal of the wall",
    [
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
    {
      needs: ["surface_material"],
      formula: "the material, where its word names a metal; sheet metal may be steel or aluminium",
      formulaSource: "the words themselves",
    },
  ),
  within(
    -180,
    500,
    quantity("wall_left", "wall left under the drill point", "length", "mm", {
      needs: ["wall_thickness", "hole_depth", "drill_diameter", "thread"],
      formula: "wall thickness − hole depth − drill diameter / 2 / tan(half the point angle, 118° to 135°)",
      formulaSource: "derivation, cone of the drill; where no drill is stated the usual one for the thread",
    }),
  ),
  within(
    -1000,
    1000,
    count("thread_run_out", "hole below the full thread", "pitches", {
      needs: ["hole_depth", "thread_depth", "thread"],
      formula: "(hole depth − depth of full thread) / pitch",
      formulaSource: "derivation",
    }),
  ),
  within(
    0,
    100,
    count("usable_thread", "usable thread", "diameters", {
      needs: ["thread_depth", "bolt_reach", "thread"],
      formula:
        "the lesser of depth of full thread and reach of the bolt / thread diameter; where no reach is stated, the bolt is taken to reach through all of it",
      formulaSource: "derivation",
    }),
  ),
  choice("tap_hole", "what the drilled hole suits", ["too-small", "cutting", "neither", "forming", "too-large"], {
    needs: ["drill_diameter", "thread"],
    formula: "cutting within the limits of the minor diameter (6H, 2B), forming from d − 0.52 P to d − 0.40 P",
    formulaSource:
      "ISO 965-1 and ASME B1.1 from reprints of the tables; forming: common practice, after a tap catalogue",
  }),
  yesNo("threads_match", "whether hole and sensor have the same thread", {
    needs: ["thread", "sensor_thread"],
    formula: "yes where both designations name the same thread",
    formulaSource: "the designations themselves",
  }),
  within(
    0,
    1_000_000,
    quantity("planned_preload", "highest preload at the planned torque, of the proof load", "ratio", "%", {
      ...preload("target_torque"),
    }),
  ),
  within(
    0,
    1_000_000,
    quantity("applied_preload", "highest preload at the applied torque, of the proof load", "ratio", "%", {
      ...preload("applied_torque"),
    }),
  ),
  within(
    -100,
    1_000_000,
    quantity("torque_off_plan", "torque as applied, off the plan by", "ratio", "%", {
      needs: ["applied_torque", "target_torque"],
      formula: "100 % × (torque as applied − planned torque) / planned torque",
      formulaSource: "definition",
    }),
  ),
  within(
    0,
    300,
    quantity("pad_gap", "gap under the rim of the pad", "length", "mm", {
      needs: ["surface_radius", "flat_diameter", "model.seat_diameter_min"],
      formula: "R − √(R² − w²/4) with w the seat diameter of the model; 0 on a flat as wide as that",
      formulaSource: "derivation, height of the arc over the chord",
    }),
  ),
];
