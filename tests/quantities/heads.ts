import {
  headFrictionDiameterMm,
  type Thread,
  type TorqueGeometry,
  threadDiameters,
} from "../../src/quantities/index.js";

/** Least bearing face of hexagon heads (ISO 4014) and medium clearance holes (ISO 273) in mm, from memory. */
const HEADS: ReadonlyMap<number, readonly [face: number, hole: number]> = new Map([
  [4, [5.88, 4.5]],
  [5, [6.88, 5.5]],
  [6, [8.88, 6.6]],
  [8, [11.63, 9]],
  [10, [14.63, 11]],
  [12, [16.63, 13.5]],
  [14, [19.37, 15.5]],
  [16, [22.49, 17.5]],
  [20, [28.19, 22]],
]);

/** What of a hexagon bolt on a medium clearance hole takes part in the torque. */
export function headOf(thread: Thread): TorqueGeometry {
  const head = HEADS.get(thread.majorMm);
  if (!head) throw new Error(`no head is known for ${thread.designation}`);
  return {
    pitchMm: thread.pitchMm,
    pitchDiameterMm: threadDiameters(thread).pitchDiameterMm,
    headFrictionDiameterMm: headFrictionDiameterMm(...head),
  };
}
