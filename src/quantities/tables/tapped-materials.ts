import type { Interval } from "../../base/index.js";

/** What is known of a material in which a thread is cut. */
export interface TappedMaterial {
  /** Least tensile strength, MPa, from the weakest to the strongest grade of the group; null where none was read. */
  readonly tensileMPa: Interval | null;
  /** Limiting pressure under a bolt head, MPa: the lowest figure of the group; null where none was read. */
  readonly limitingPressureMPa: number | null;
  /** Usual least engagement, in nominal diameters, for bolts of class 8.8 or A2-70. */
  readonly engagementInDiameters: number;
}

const material = (
  engagementInDiameters: number,
  weakest?: number,
  strongest?: number,
  limitingPressureMPa?: number,
): TappedMaterial => ({
  tensileMPa: weakest === undefined || strongest === undefined ? null : { lowest: weakest, highest: strongest },
  limitingPressureMPa: limitingPressureMPa ?? null,
  engagementInDiameters,
});

/**
 * Materials by choice of `surface_material`.
 *
 * Sources: strengths and pressures, VDI 2230 part 1, tables of the editions 1986 and 2003 as a page reprints them (read
 * 2026-11-26), of the grades of which housings are made: structural steel S235 to S355 (pressure of St 37), austenitic
 * X5CrNi 18 12 and X5CrNiMo 18 10, GG 15 to GG 40, GGG 35,5 to GGG 60, aluminium GK-AlSi9Cu3 to AlMgSi1. Engagement, common
 * practice: sources lie about a quarter on either side, and stricter shops take 1.5 in cast iron.
 */
export const TAPPED_MATERIALS: ReadonlyMap<string, TappedMaterial> = new Map([
  ["carbon-steel", material(1, 340, 510, 260)],
  ["cast-steel", material(1)],
  ["austenitic-stainless", material(1, 500, 700, 210)],
  ["ferritic-stainless", material(1)],
  ["ductile-iron", material(1.25, 350, 600, 480)],
  ["grey-cast-iron", material(1.25, 150, 400, 600)],
  ["bronze", material(1.25)],
  ["aluminium", material(2, 180, 290, 220)],
]);
