import type { FactDefinition } from "./definition.js";
import { choice, count, plain, quantity } from "./entries.js";

/** Survey fields: machine, point. */
export const MACHINE_FACTS: readonly FactDefinition[] = [
  choice("machine", "component", "component", [
    "motor",
    "gearbox",
    "pump",
    "fan",
    "compressor",
    "bearing-housing",
    "roll",
    "other",
  ]),
  choice("machine", "shaft_orientation", "shaft orientation", ["horizontal", "vertical", "inclined"]),
  choice("machine", "drive_type", "transmission", ["direct", "belt", "gear", "chain", "close-coupled"]),
  choice("machine", "belt_pull", "direction of belt pull", ["horizontal", "vertical", "inclined"]),
  choice("machine", "bearing_position", "bearing position", [
    "drive-end",
    "non-drive-end",
    "input-drive-side",
    "output-drive-side",
    "intermediate",
    "thrust",
  ]),
  choice("machine", "bearing_type", "bearing type", ["rolling", "plain"]),
  plain("designation", "machine", "bearing_designation", "bearing designation"),
  count("machine", "gear_teeth", "number of teeth", "teeth", 3, 2000),
  count("machine", "blade_count", "number of blades", "blades", 1, 200),
  quantity("machine", "highest_frequency", "highest frequency of interest", "frequency", "Hz", 1, 40000),
  choice("point", "direction", "measuring direction", ["horizontal", "vertical", "axial", "radial", "triaxial"]),
  quantity("point", "load_zone_angle", "angle to the load zone", "angle", "deg", 0, 180),
  quantity("point", "distance_to_bearing", "distance to the bearing", "length", "mm", 0, 3000),
  count("point", "joints_in_path", "joints between bearing and sensor", "joints", 0, 20),
  plain("yes-no", "point", "soft_layer", "gasket, rubber or gap in the path"),
  quantity("point", "axis_deviation", "tilt of the sensor axis", "angle", "deg", 0, 90),
  quantity("point", "local_resonance", "lowest local resonance", "frequency", "Hz", 1, 40000),
  choice("point", "mounted_on", "place on the machine", [
    "bearing-housing",
    "casing",
    "cooling-fin",
    "fan-cover",
    "guard",
    "foot",
    "pipe",
    "absent",
  ]),
];
