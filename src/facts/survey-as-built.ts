import type { FactDefinition } from "./definition.js";
import { count, plain, quantity } from "./entries.js";

/** Survey fields: as-built. */
export const AS_BUILT_FACTS: readonly FactDefinition[] = [
  plain("date", "as-built", "installed_on", "installed on"),
  plain("text", "as-built", "installed_by", "installed by"),
  quantity("as-built", "applied_torque", "torque as applied", "torque", "N·m", 0.1, 200),
  quantity("as-built", "voltage_at_sensor", "voltage measured at the sensor", "dc-voltage", "V", 0, 60),
  plain("yes-no", "as-built", "channel_checked", "channel checked by tapping"),
  plain("identifier", "as-built", "sensor_serial", "serial number of the sensor"),
  quantity("as-built", "baseline_velocity", "baseline velocity", "vibration-velocity", "mm/s", 0, 500),
  quantity("as-built", "baseline_acceleration", "baseline acceleration", "vibration-acceleration", "m/s²", 0, 10000),
  quantity("as-built", "baseline_load", "load at the baseline", "ratio", "%", 0, 150),
  quantity("as-built", "baseline_speed", "speed at the baseline", "rotational-speed", "r/min", 0.1, 60000),
  plain("yes-no", "as-built", "baseline_warm", "warm and run in at the baseline"),
  count("as-built", "baseline_records", "records of the baseline", "records", 1, 1000),
  quantity("as-built", "baseline_spread", "spread of the baseline records", "ratio", "%", 0, 1000),
  quantity("as-built", "stopped_velocity", "velocity with the machine stopped", "vibration-velocity", "mm/s", 0, 500),
  quantity("as-built", "handheld_velocity", "velocity of a hand-held reading", "vibration-velocity", "mm/s", 0, 500),
  quantity("as-built", "full_scale_velocity", "full scale of the velocity", "vibration-velocity", "mm/s", 1, 5000),
  plain("date", "as-built", "baseline_on", "date of the baseline"),
];
