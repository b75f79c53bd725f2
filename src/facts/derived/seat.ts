import type { DerivedDefinition } from "../definition.js";
import { derivedIn } from "./entry.js";

const surface = derivedIn("surface");
const mounting = derivedIn("mounting");

/** What the sensor sits on. */
export const SEAT_DERIVED: readonly DerivedDefinition[] = [
  surface.choice("seat", "seat", ["solid", "coated", "not-solid"], {
    needs: ["mounted_on", "surface_material", "surface_finish"],
    formula: "not solid on thin or loose parts, coated on any finish that is not bare metal, else solid",
    formulaSource: "common practice: a stud or a bonded pad needs a stiff, bare, solid seat",
  }),
  mounting.quantity("flat_needed", "flat diameter that the base needs", "length", "mm", {
    needs: ["model.base_diameter"],
    formula: "1.1 × base diameter of the sensor",
    formulaSource: "common practice (1.1 times the base)",
  }),
  mounting.quantity("bearing_area", "bearing area under the base", "area", "mm²", {
    needs: ["model.base_diameter", "sensor_thread"],
    formula: "π/4 × (base diameter² − thread diameter²)",
    formulaSource: "derivation, circular ring",
  }),
  mounting.quantity("tilt_gap", "gap that a hole off square leaves under the base", "length", "mm", {
    needs: ["model.base_diameter", "hole_tilt"],
    formula: "base diameter × sin(angle by which the hole is off square)",
    formulaSource: "derivation; tightening closes it by bending bolt and base",
  }),
];
