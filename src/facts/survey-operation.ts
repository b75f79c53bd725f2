import type { FactDefinition } from "./definition.js";
import { choice, count, plain, quantity } from "./entries.js";

/** Survey fields: operation. */
export const OPERATION_FACTS: readonly FactDefinition[] = [
  quantity("operation", "power", "power", "power", "kW", 0.1, 60000),
  quantity("operation", "nominal_speed", "nominal speed", "rotational-speed", "r/min", 0.5, 60000),
  quantity("operation", "lowest_speed", "lowest speed", "rotational-speed", "r/min", 0.1, 60000),
  quantity("operation", "highest_speed", "highest speed", "rotational-speed", "r/min", 0.5, 60000),
  choice("operation", "variable_speed", "variable speed", ["yes", "no"]),
  choice("operation", "speed_reference", "speed signal", [
    "none",
    "once-per-turn",
    "pulses",
    "analogue",
    "network",
    "unspecified",
  ]),
  choice("operation", "duty", "duty", ["continuous", "intermittent", "standby", "short-time", "reversing"]),
  quantity("operation", "shortest_run", "shortest steady run", "time", "s", 0.5, 10000000),
  plain("yes-no", "operation", "load_steady", "steady load"),
  quantity("operation", "speed_change", "change of speed within one record", "ratio", "%", 0, 100),
  choice("operation", "evaluation", "evaluation of the signal", ["overall", "spectrum", "triggered"]),
  plain("yes-no", "operation", "low_band_wanted", "cage or belt to be seen"),
  count("operation", "spectrum_lines", "lines of the spectrum", "spectral lines", 50, 204800),
  count("operation", "averages", "records averaged", "records", 1, 1000),
  quantity("operation", "settling_time", "settling time", "time", "s", 0, 3600),
  count("operation", "pole_count", "number of poles", "poles", 2, 120),
  quantity("operation", "mains_frequency", "mains frequency", "frequency", "Hz", 10, 1000),
  choice("operation", "speed_taken_from", "shaft that gives the speed signal", [
    "fastest-shaft",
    "ratio-stated",
    "other-shaft",
  ]),
  plain("yes-no", "operation", "step_named", "one step of speed and load named for measuring"),
  quantity(
    "operation",
    "velocity_of_interest",
    "vibration velocity to be seen",
    "vibration-velocity",
    "mm/s",
    0.01,
    100,
  ),
  quantity("operation", "accepted_error", "accepted error at the top of the band", "ratio", "%", 0.1, 90),
];
