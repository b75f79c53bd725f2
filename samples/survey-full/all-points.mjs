/** The survey as data, before anyone writes it into a workbook. */
import { DEVIATIONS } from "./deviations.mjs";
import { allPoints } from "./points.mjs";
import { SHEETS } from "./sheets.mjs";

export const POINTS = allPoints(SHEETS, DEVIATIONS);
