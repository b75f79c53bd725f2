import { STAGES } from "../base/index.js";
import type { DerivedDefinition, FactDefinition } from "./definition.js";
import { BOND_DERIVED } from "./derived/bond.js";
import { BONDING_DERIVED } from "./derived/bonding.js";
import { BUILT_DERIVED } from "./derived/built.js";
import { FIXING_DERIVED } from "./derived/fixing.js";
import { FREQUENCY_DERIVED } from "./derived/frequencies.js";
import { OPERATION_DERIVED } from "./derived/operation.js";
import { REACH_DERIVED } from "./derived/reach.js";
import { RUNNING_DERIVED } from "./derived/running.js";
import { SEAT_DERIVED } from "./derived/seat.js";
import { TABLE_KEY_DERIVED } from "./derived/table-keys.js";
import { WATER_DERIVED } from "./derived/water.js";
import { WIRING_DERIVED } from "./derived/wiring.js";

/** Facts computed from others; the computation is a function in `quantities/`. */
export const DERIVED_FACTS: readonly DerivedDefinition[] = [
  ...OPERATION_DERIVED,
  ...RUNNING_DERIVED,
  ...FREQUENCY_DERIVED,
  ...SEAT_DERIVED,
  ...FIXING_DERIVED,
  ...BONDING_DERIVED,
  ...TABLE_KEY_DERIVED,
  ...BOND_DERIVED,
  ...REACH_DERIVED,
  ...WIRING_DERIVED,
  ...WATER_DERIVED,
  ...BUILT_DERIVED,
];

/** What the run itself settles. */
export const RUN_FACTS: readonly FactDefinition[] = [
  { id: "stage", name: "stage", kind: "choice", source: "run", group: "run", choices: STAGES },
];
