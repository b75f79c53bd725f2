import type { FactDefinition } from "./definition.js";
import { choice, count, plain, quantity } from "./entries.js";

/** Survey fields: electrical. */
export const ELECTRICAL_FACTS: readonly FactDefinition[] = [
  quantity("electrical", "supply_voltage", "supply voltage", "dc-voltage", "V", 5, 1000),
  quantity("electrical", "supply_voltage_min", "lowest supply voltage", "dc-voltage", "V", 5, 60),
  quantity("electrical", "sensor_current", "sensor current", "current", "mA", 0.5, 2000),
  count("electrical", "sensors_on_supply", "sensors on the supply", "sensors", 1, 500),
  quantity("electrical", "supply_rating", "rated current of the supply", "current", "mA", 10, 100000),
  quantity("electrical", "cable_length", "cable length", "length", "m", 0.1, 3000),
  quantity("electrical", "conductor_size", "conductor size", "area", "mm²", 0.05, 50),
  quantity("electrical", "power_cable_distance", "distance to power cables", "length", "mm", 0, 10000),
  plain("yes-no", "electrical", "unused_sockets_capped", "unused sockets capped"),
  plain("yes-no", "electrical", "polarity_checked", "polarity checked"),
  choice("electrical", "supply_kind", "kind of supply", ["dc", "ac"]),
];
