import type { Derivation } from "./derived/deriving.js";
import { OPERATION_DERIVED } from "./derived/operation.js";
import { SEAT_DERIVED } from "./derived/seat.js";
import { WATER_DERIVED } from "./derived/water.js";
import { WIRING_DERIVED } from "./derived/wiring.js";

/** How each derived fact comes from others; their definitions are in the catalogue of facts. */
export const DERIVED: ReadonlyMap<string, Derivation> = new Map(
  Object.entries({ ...OPERATION_DERIVED, ...SEAT_DERIVED, ...WIRING_DERIVED, ...WATER_DERIVED }),
);
