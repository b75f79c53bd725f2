import { BEARING_DERIVED } from "./derived/bearing.js";
import { BOND_DERIVED } from "./derived/bond.js";
import { BONDING_DERIVED } from "./derived/bonding.js";
import { BUILT_DERIVED } from "./derived/built.js";
import type { Derivation } from "./derived/deriving.js";
import { FIXING_DERIVED } from "./derived/fixing.js";
import { FREQUENCY_DERIVED } from "./derived/frequencies.js";
import { OPERATION_DERIVED } from "./derived/operation.js";
import { REACH_DERIVED } from "./derived/reach.js";
import { RUNNING_DERIVED } from "./derived/running.js";
import { SEAT_DERIVED } from "./derived/seat.js";
import { TABLE_KEY_DERIVED } from "./derived/table-keys.js";
import { TIGHTENING_DERIVED } from "./derived/tightening.js";
import { WATER_DERIVED } from "./derived/water.js";
import { WIRING_DERIVED } from "./derived/wiring.js";

/** How each derived fact comes from others; their definitions are in the catalogue of facts. */
export const DERIVED: ReadonlyMap<string, Derivation> = new Map(
  Object.entries({
    ...OPERATION_DERIVED,
    ...RUNNING_DERIVED,
    ...FREQUENCY_DERIVED,
    ...BEARING_DERIVED,
    ...SEAT_DERIVED,
    ...FIXING_DERIVED,
    ...BONDING_DERIVED,
    ...TABLE_KEY_DERIVED,
    ...TIGHTENING_DERIVED,
    ...BOND_DERIVED,
    ...REACH_DERIVED,
    ...WIRING_DERIVED,
    ...WATER_DERIVED,
    ...BUILT_DERIVED,
  }),
);
