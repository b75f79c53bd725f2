import type { DerivedDefinition } from "../definition.js";
import { derivedIn } from "./entry.js";

const asBuilt = derivedIn("as-built");

/** Days of the plan, and what the first readings say. */
export const BUILT_DERIVED: readonly DerivedDefinition[] = [
  derivedIn("safety").count("days_to_outage", "days from the survey to the next outage", "days", {
    needs: ["next_outage", "surveyed_on"],
    formula: "next outage − date of the survey",
    formulaSource: "calendar",
  }),
  asBuilt.quantity("baseline_displacement", "displacement of the baseline at the turning frequency", "length", "µm", {
    needs: ["baseline_velocity", "baseline_speed"],
    formula: "baseline velocity / (2π × baseline speed / 60)",
    formulaSource: "sine wave, s = v/(2πf): all of the vibration taken to be at the turning frequency",
  }),
  asBuilt.quantity(
    "baseline_turning_acceleration",
    "acceleration of the baseline at the turning frequency",
    "vibration-acceleration",
    "m/s²",
    {
      needs: ["baseline_velocity", "baseline_speed"],
      formula: "baseline velocity × 2π × baseline speed / 60",
      formulaSource: "sine wave, a = 2πf v: all of the vibration taken to be at the turning frequency",
    },
  ),
  asBuilt.choice("baseline_zone", "evaluation zone of the baseline", ["A", "B", "C", "D", "not-zoned"], {
    needs: ["baseline_velocity", "power", "component", "shaft_height", "support_stiffness"],
    formula:
      "velocity against the limits of its group (by power, of motors by shaft height) and support; not zoned: pumps, gearboxes, rolls, and fans up to 300 kW on a flexible support",
    formulaSource:
      "ISO 10816-3:2009 tables A.1 and A.2 as the tests of an open library and a motor manual print them, its scope as a seller prints it; ISO 20816-3:2022, which follows it, was not read",
  }),
];
