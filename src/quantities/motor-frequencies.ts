import { requireCount, requirePositive, requireWithin } from "./require-number.js";

/**
 * Speed of the turning field of an alternating current machine.
 *
 * Source: handbooks; n = 120 f / p with p the number of poles (not pairs).
 *
 * @param lineHz - frequency that feeds the motor, behind a converter that of the converter, Hz, above 0
 * @param poles - even, at least 2
 * @returns r/min
 */
export function synchronousSpeedRpm(lineHz: number, poles: number): number {
  requirePositive("lineHz", lineHz);
  requireCount("poles", poles, 2);
  if (poles % 2 !== 0) throw new RangeError(`poles must be even, got ${poles}`);
  return (120 * lineHz) / poles;
}

/** What an induction motor shows at one speed. */
export interface InductionMotor {
  readonly synchronousRpm: number;
  /** How far the rotor stays behind the field, per cent of the field's speed. */
  readonly slipPct: number;
  /** Frequency of the currents in the rotor, Hz. */
  readonly rotorCurrentHz: number;
  /** Slip speed times poles, Hz: spacing of the side bands of a broken rotor bar. */
  readonly polePassHz: number;
  /** Pull of the field on the stator, Hz: twice the line frequency. */
  readonly twiceLineHz: number;
}

/**
 * Slip, and the frequencies that follow from it, of a motoring induction machine.
 *
 * Source: handbooks; s = (ns − n)/ns, rotor currents s f, pole pass (ns − n)/60 × p = 2 s f.
 *
 * @param lineHz - Hz, above 0
 * @param poles - even, at least 2
 * @param shaftRpm - r/min, above 0, not above the synchronous speed (else the machine generates, or the poles are wrong)
 */
export function inductionMotor(lineHz: number, poles: number, shaftRpm: number): InductionMotor {
  const synchronousRpm = synchronousSpeedRpm(lineHz, poles);
  requirePositive("shaftRpm", shaftRpm);
  if (shaftRpm > synchronousRpm) {
    throw new RangeError(
      `shaftRpm must not be above the synchronous speed ${synchronousRpm} of ${poles} poles, got ${shaftRpm}`,
    );
  }
  const slip = (synchronousRpm - shaftRpm) / synchronousRpm;
  return {
    synchronousRpm,
    slipPct: 100 * slip,
    rotorCurrentHz: slip * lineHz,
    polePassHz: 2 * slip * lineHz,
    twiceLineHz: 2 * lineHz,
  };
}

/**
 * The number of poles that a nameplate speed belongs to: that of the next synchronous speed not below it.
 *
 * Source: derivation; a motor runs at or a little below its synchronous speed.
 *
 * @param nameplateRpm - r/min, above 0
 * @param lineHz - Hz, above 0
 * @param greatestSlipPct - slip beyond which no answer is given, per cent; 10 is common practice
 * @returns poles, or null where the speed fits no number of poles within the slip (a geared or converter-fed motor)
 */
export function polesOfNameplateSpeed(nameplateRpm: number, lineHz: number, greatestSlipPct = 10): number | null {
  requirePositive("nameplateRpm", nameplateRpm);
  requirePositive("lineHz", lineHz);
  requireWithin("greatestSlipPct", greatestSlipPct, 0, 50);
  // Without the hair, 120 × 50 / 1000 could come out as 5.999… poles and lose its pair.
  const poles = 2 * Math.floor((60 * lineHz) / nameplateRpm + 1e-9);
  if (poles < 2) return null;
  const synchronousRpm = synchronousSpeedRpm(lineHz, poles);
  return (100 * (synchronousRpm - nameplateRpm)) / synchronousRpm <= greatestSlipPct ? poles : null;
}
