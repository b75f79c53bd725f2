import type { FactDefinition } from "./definition.js";
import { choice, plain } from "./entries.js";

/** Survey fields: identity, selection. */
export const IDENTITY_FACTS: readonly FactDefinition[] = [
  plain("text", "identity", "site", "site"),
  plain("identifier", "identity", "point_id", "point ID"),
  plain("identifier", "identity", "asset_tag", "asset tag"),
  plain("identifier", "identity", "location_code", "location code"),
  plain("text", "identity", "machine_name", "machine"),
  choice("identity", "machine_type", "machine type", [
    "pump",
    "fan",
    "motor",
    "gearbox",
    "compressor",
    "agitator",
    "conveyor",
    "mill",
    "turbine",
    "generator",
    "centrifuge",
    "roll",
  ]),
  plain("text", "identity", "plant_area", "plant area"),
  plain("text", "identity", "surveyed_by", "surveyed by"),
  plain("date", "identity", "surveyed_on", "date of the survey"),
  plain("text", "identity", "photo", "photo"),
  plain("text", "identity", "notes", "notes"),
  choice("selection", "criticality", "criticality", ["A", "B", "C"]),
  plain("yes-no", "selection", "has_standby", "installed standby machine"),
  plain("yes-no", "selection", "replacement_planned", "replacement planned"),
  choice("selection", "access", "access", ["running", "stopped-only", "scaffold", "none"]),
];
