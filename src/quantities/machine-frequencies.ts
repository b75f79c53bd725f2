import { requireCount, requirePositive } from "./require-number.js";

/**
 * How often per second a shaft turns.
 *
 * Source: definition.
 *
 * @param shaftRpm - r/min, above 0
 * @returns Hz
 */
export function shaftFrequencyHz(shaftRpm: number): number {
  requirePositive("shaftRpm", shaftRpm);
  return shaftRpm / 60;
}

/**
 * Frequency of a shaft-locked component: teeth in mesh, blades or vanes passing, rotor slots, or an order of a bearing.
 *
 * Source: definition; tooth mesh = teeth × turning frequency, blade pass = blades × turning frequency.
 *
 * @param order - events in a turn of the shaft, above 0; need not be whole
 * @param shaftRpm - r/min, above 0
 * @returns Hz
 */
export function componentFrequencyHz(order: number, shaftRpm: number): number {
  requirePositive("order", order);
  return order * shaftFrequencyHz(shaftRpm);
}

/** What follows from the tooth numbers of two wheels in mesh. */
export interface GearPair {
  readonly toothMeshHz: number;
  readonly drivenRpm: number;
  /** How often the same two teeth meet; also called tooth repeat. */
  readonly huntingToothHz: number;
  /** Greatest common divisor of the tooth numbers; 1 where every tooth meets every other. */
  readonly assemblyPhases: number;
  readonly assemblyPhaseHz: number;
  /** Turns of the driving wheel until the same two teeth meet again. */
  readonly drivingTurnsToRepeat: number;
}

/**
 * Frequencies of a pair of wheels on fixed axes. Not for planetary stages.
 *
 * Source: handbooks; the pattern of teeth repeats after the least common multiple of the tooth numbers, so
 * hunting tooth = mesh × g / (z1 z2) with g their greatest common divisor (W. Foiles, "Gear frequencies using the
 * Euclidean algorithm", read in part 2026-11-26). Pages that give g × turning frequency under this name are mistaken.
 *
 * @param drivingTeeth - teeth of the driving wheel, at least 3
 * @param drivenTeeth - teeth of the driven wheel, at least 3
 * @param drivingRpm - r/min, above 0
 */
export function gearPair(drivingTeeth: number, drivenTeeth: number, drivingRpm: number): GearPair {
  requireCount("drivingTeeth", drivingTeeth, 3);
  requireCount("drivenTeeth", drivenTeeth, 3);
  const toothMeshHz = componentFrequencyHz(drivingTeeth, drivingRpm);
  const phases = greatestCommonDivisor(drivingTeeth, drivenTeeth);
  return {
    toothMeshHz,
    drivenRpm: (drivingRpm * drivingTeeth) / drivenTeeth,
    huntingToothHz: (toothMeshHz * phases) / (drivingTeeth * drivenTeeth),
    assemblyPhases: phases,
    assemblyPhaseHz: toothMeshHz / phases,
    drivingTurnsToRepeat: drivenTeeth / phases,
  };
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
