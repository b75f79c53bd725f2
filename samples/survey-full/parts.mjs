/**
 * The short codes of points: part of the machine, bearing, direction. "MDH" is the motor's drive end, horizontal.
 */
const COMPONENTS = {
  M: "motor",
  G: "gearbox",
  P: "pump",
  F: "fan",
  C: "compressor",
  B: "bearing-housing",
  R: "roll",
};
const BEARINGS = {
  N: "non-drive-end",
  D: "drive-end",
  I: "input-drive-side",
  O: "output-drive-side",
  X: "intermediate",
  T: "thrust",
};
const DIRECTIONS = { H: "horizontal", V: "vertical", A: "axial", R: "radial" };

/** Where a point is, as the catalogue's words. */
export function placeOf(code) {
  const [part, bearing, direction] = code;
  return {
    component: COMPONENTS[part],
    bearing_position: BEARINGS[bearing],
    direction: DIRECTIONS[direction],
  };
}

/** The usual points of a machine, by what drives what. */
export const TRAINS = {
  /** Every bearing in two directions, and where the thrust is taken. */
  "motor and pump, in full": "MNH MNV MDH MDV PDH PDV PNH PNV PNA",
  "motor and pump": "MNH MDH PDH PNH PNA",
  "motor and small pump": "MNH MDH PDH PNH",
  "motor and fan, in full": "MNH MNV MDH MDV FDH FDV FNH FNV FNA",
  "motor and fan": "MNH MDH FDH FNH FNA",
  "motor and compressor": "MNH MNV MDH MDV CDH CDV CNH CNV CTH CTV CTA",
  "motor, gearbox and mill": "MNH MNV MDH MDV GIH GIV GOH GOV BDH BDV BNH BNV BNA",
  "motor, gearbox and bearing": "MNH MDH GIH GOH BDH BNH",
  "motor, gearbox and roll": "MNH MDH GIH GOH RDH RNH",
};
