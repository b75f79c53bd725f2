/** All single deviations, by point ID. */
import { HALL_4_DEVIATIONS } from "./hall-4-deviations.mjs";
import { HALL_5_DEVIATIONS } from "./hall-5-deviations.mjs";
import { HALLE_6_DEVIATIONS } from "./halle-6-deviations.mjs";
import { UTILITIES_DEVIATIONS } from "./utilities-deviations.mjs";

export const DEVIATIONS = {
  ...HALL_4_DEVIATIONS,
  ...HALL_5_DEVIATIONS,
  ...HALLE_6_DEVIATIONS,
  ...UTILITIES_DEVIATIONS,
};
