import type { FactDefinition } from "./definition.js";
import { choice, plain, quantity } from "./entries.js";

/** Survey fields: safety, environment. */
export const SURROUNDINGS_FACTS: readonly FactDefinition[] = [
  plain("yes-no", "safety", "isolation_possible", "isolation possible"),
  plain("date", "safety", "next_outage", "next outage"),
  choice("safety", "hot_work_allowed", "hot work", ["allowed", "permit-needed", "forbidden"]),
  choice("safety", "hazardous_area", "hazardous area", [
    "none",
    "zone-0",
    "zone-1",
    "zone-2",
    "zone-20",
    "zone-21",
    "zone-22",
    "division-1",
    "division-2",
  ]),
  plain("yes-no", "safety", "certified_enclosure", "certified enclosure"),
  quantity("safety", "working_height", "working height", "length", "m", 0, 120),
  plain("yes-no", "safety", "sensor_certified", "sensor certified for the area"),
  quantity("safety", "solvent_flash_point", "flash point of the solvent", "temperature", "°C", -60, 300),
  plain("yes-no", "safety", "under_warranty", "machine under warranty"),
  plain("yes-no", "safety", "maker_consent", "consent of the machine maker"),
  plain("yes-no", "safety", "turns_by_itself", "rotor can turn by itself"),
  plain("yes-no", "safety", "rotor_blockable", "rotor can be blocked"),
  choice("environment", "wetting", "exposure to water", ["dry", "splash", "jets", "hot-high-pressure", "submerged"]),
  plain("designation", "environment", "ip_rating", "IP rating"),
  quantity("environment", "ambient_max", "highest ambient temperature", "temperature", "°C", -50, 120),
];
