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
  plain("identifier", "electrical", "supply_name", "name of the supply"),
  choice("electrical", "supply_separation", "protection by extra-low voltage", ["selv", "pelv", "felv", "none"]),
  quantity("electrical", "starting_current", "starting current of the sensor", "current", "mA", 0.5, 20000),
  plain("identifier", "electrical", "junction_box", "junction box"),
  plain("identifier", "electrical", "channel", "channel"),
  plain("text", "electrical", "cable_type", "type of cable"),
  plain("text", "electrical", "cable_route", "route of the cable"),
  choice("electrical", "conductor_class", "conductor class", ["solid", "stranded", "flexible"]),
  quantity("electrical", "conductor_temperature", "highest conductor temperature", "temperature", "°C", -50, 200),
  quantity("electrical", "cable_diameter", "outer diameter of the cable", "length", "mm", 1, 60),
  quantity("electrical", "bend_radius", "tightest bend radius of the cable", "length", "mm", 1, 2000),
  quantity("electrical", "strain_relief_distance", "distance to the strain relief", "length", "mm", 0, 10000),
  quantity("electrical", "cable_temperature_max", "highest temperature of the jacket", "temperature", "°C", 20, 300),
  choice("electrical", "screen_earthed", "where the screen is earthed", [
    "supply-end",
    "sensor-end",
    "both-ends",
    "nowhere",
  ]),
  plain("yes-no", "electrical", "cable_route_clear", "cable route clear of walkways and rotating parts"),
  plain("yes-no", "electrical", "drip_loop", "drip loop in front of the connector"),
];
