import { describe, expect, it } from "vitest";
import * as q from "../../src/quantities/index.js";

/** A function with arguments it takes; `mayBeNegative` are the places of those that have no zero at their lower end. */
interface Sample {
  readonly call: (...numbers: number[]) => unknown;
  readonly good: readonly number[];
  readonly mayBeNegative?: readonly number[];
}

const geometry = (elements: number, elementDiameterMm: number, pitchDiameterMm: number, contactAngleDeg: number) => ({
  elements,
  elementDiameterMm,
  pitchDiameterMm,
  contactAngleDeg,
});
const run = (oneWayLengthM: number, resistanceAt20OhmPerKm: number, hottestCopperC: number) => ({
  oneWayLengthM,
  resistanceAt20OhmPerKm,
  hottestCopperC,
});
const table = (cold: number, warm: number) => [
  { temperatureC: 10, minutes: cold },
  { temperatureC: 30, minutes: warm },
];
const limits = (ab: number, bc: number, cd: number) => ({ ab, bc, cd });

const SAMPLES: Readonly<Record<string, Sample>> = {
  bearingOrders: { call: (n, d, D, angle) => q.bearingOrders(geometry(n, d, D, angle)), good: [9, 7.94, 38.5, 15] },
  bearingOrdersWithin: {
    call: (fewest, most, ratio, angle) =>
      q.bearingOrdersWithin({
        elements: { lowest: fewest ?? Number.NaN, highest: most ?? Number.NaN },
        diameterRatio: { lowest: ratio ?? Number.NaN, highest: 0.3 },
        contactAngleDeg: { lowest: angle ?? Number.NaN, highest: 40 },
      }),
    good: [6, 30, 0.2, 15],
  },
  machineGroupsWithin: {
    call: (least, most, height) =>
      q.machineGroupsWithin(
        { lowest: least ?? Number.NaN, highest: most ?? Number.NaN },
        { lowest: height ?? Number.NaN, highest: 400 },
      ),
    good: [10, 400, 100],
  },
  usualBearingOrders: { call: q.usualBearingOrders, good: [9] },
  withRollingSlipHz: { call: q.withRollingSlipHz, good: [100, 3] },
  shaftFrequencyHz: { call: q.shaftFrequencyHz, good: [1480] },
  componentFrequencyHz: { call: q.componentFrequencyHz, good: [3.58, 1480] },
  gearPair: { call: q.gearPair, good: [18, 89, 2950] },
  synchronousSpeedRpm: { call: q.synchronousSpeedRpm, good: [50, 4] },
  inductionMotor: { call: q.inductionMotor, good: [50, 4, 1480] },
  polesOfNameplateSpeed: { call: q.polesOfNameplateSpeed, good: [1480, 50, 10] },
  highestFrequencyOfInterestHz: {
    call: (rpm, gearTeeth, blades) => q.highestFrequencyOfInterestHz(rpm, { rollingBearing: true, gearTeeth, blades }),
    good: [1480, 18, 7],
  },
  lowestFrequencyOfInterestHz: { call: q.lowestFrequencyOfInterestHz, good: [600, 0.4] },
  spectrumRecord: { call: q.spectrumRecord, good: [1000, 400] },
  turnsInRecord: { call: q.turnsInRecord, good: [600, 0.8] },
  recordLengthForTurnsS: { call: q.recordLengthForTurnsS, good: [600, 10] },
  leastLines: { call: (top, apart, lines) => q.leastLines(top, apart, lines), good: [500, 0.5, 3] },
  smearLines: { call: q.smearLines, good: [50, 1500, 0.1, 0.5] },
  greatestSpeedChangePct: { call: q.greatestSpeedChangePct, good: [50, 1500, 0.5, 1] },
  shortestRunS: { call: q.shortestRunS, good: [5, 0.8, 4, 50] },
  overReadingPct: { call: q.overReadingPct, good: [0.2, 0.05] },
  overReadingDb: { call: q.overReadingDb, good: [0.2, 0.05] },
  usableShareOfResonance: { call: q.usableShareOfResonance, good: [10, 0.05] },
  usableUpperFrequencyHz: { call: q.usableUpperFrequencyHz, good: [8000, 10, 0.05] },
  neededResonanceHz: { call: q.neededResonanceHz, good: [2000, 10, 0.05] },
  resonanceOnContactHz: { call: q.resonanceOnContactHz, good: [5e8, 0.1] },
  naturalFrequencyShiftPct: { call: q.naturalFrequencyShiftPct, good: [1, 0.1] },
  massForShiftKg: { call: q.massForShiftKg, good: [1, 5] },
  heaviestSensorKg: { call: q.heaviestSensorKg, good: [1, 0.1] },
  shareShownAbove: { call: q.shareShownAbove, good: [10, 2] },
  lowestFrequencyShownHz: { call: q.lowestFrequencyShownHz, good: [2, 0.9] },
  copperResistanceOhmPerKm: { call: q.copperResistanceOhmPerKm, good: [0.34] },
  resistanceAtTemperature: { call: q.resistanceAtTemperature, good: [39, 60, 0.00393], mayBeNegative: [1] },
  resistanceRangeOhmPerKm: {
    call: (mm2, greatest, overCopper, lowest, highest) =>
      q.resistanceRangeOhmPerKm({ lowest: mm2, highest: mm2 }, greatest, overCopper, { lowest, highest }),
    good: [0.75, 26, 1.2, -10, 60],
    mayBeNegative: [3, 4],
  },
  loopResistanceOhm: { call: q.loopResistanceOhm, good: [120, 39] },
  voltageAtLoadV: { call: q.voltageAtLoadV, good: [24, 9, 0.06] },
  voltageAtSteadyPowerV: { call: q.voltageAtSteadyPowerV, good: [24, 9, 1.5] },
  lowestVoltageAtLoadV: {
    call: (volts, amps, length, perKm, hot) => q.lowestVoltageAtLoadV(volts, amps, run(length, perKm, hot)),
    good: [20.4, 0.06, 120, 39, 60],
    mayBeNegative: [4],
  },
  longestCableM: { call: q.longestCableM, good: [20.4, 18, 0.1, 39] },
  leastCrossSectionMm2: {
    call: (volts, needed, amps, oneWayLengthM, hottestCopperC) =>
      q.leastCrossSectionMm2(volts, needed, amps, { oneWayLengthM, hottestCopperC }, [[0.5, 39]]),
    good: [20.4, 18, 0.1, 120, 60],
    mayBeNegative: [4],
  },
  trunkVoltagesV: {
    call: (volts, loopOhm, takenA) => q.trunkVoltagesV(volts, [{ loopOhm, takenA }]),
    good: [24, 1, 1],
  },
  commonReturnVoltagesV: {
    call: (volts, outgoingOhm, currentA, back) => q.commonReturnVoltagesV(volts, [{ outgoingOhm, currentA }], back),
    good: [24, 2, 0.1, 1],
  },
  supplyBandV: {
    call: (rated, belowPct, abovePct, ripple) => q.supplyBandV(rated, { belowPct, abovePct }, ripple),
    good: [24, 15, 20, 5],
  },
  supplyLoad: { call: (amps, rating, inrush) => q.supplyLoad([0.1, amps], rating, inrush), good: [0.1, 5, 3] },
  mostPointsOnSupply: { call: q.mostPointsOnSupply, good: [0.1, 5, 80] },
  extraLowVoltage: { call: (volts) => q.extraLowVoltage(volts, "dc"), good: [24] },
  waterDigitIncludes: { call: q.waterDigitIncludes, good: [7, 5] },
  ipCodeIncludes: {
    call: (solids, water) => q.ipCodeIncludes({ solids: 6, water: [7] }, { solids, water }),
    good: [6, 7],
  },
  restateSine: { call: (size) => q.restateSine(size, "rms", "peak"), good: [4.5] },
  velocityOfAccelerationMmPerS: { call: q.velocityOfAccelerationMmPerS, good: [9.8, 100] },
  accelerationOfVelocityMPerS2: { call: q.accelerationOfVelocityMPerS2, good: [2.8, 100] },
  displacementOfVelocityUm: { call: q.displacementOfVelocityUm, good: [2.8, 25] },
  velocityOfDisplacementMmPerS: { call: q.velocityOfDisplacementMmPerS, good: [50, 25] },
  noiseInBandMPerS2: { call: q.noiseInBandMPerS2, good: [25, 100] },
  timesAboveNoise: { call: q.timesAboveNoise, good: [1, 0.5, 0.001] },
  leastVelocityAboveNoiseMmPerS: { call: q.leastVelocityAboveNoiseMmPerS, good: [0.5, 0.001, 3] },
  zoneOf: { call: (reading, ab, bc, cd) => q.zoneOf(reading, limits(ab, bc, cd)), good: [2, 1.4, 2.8, 4.5] },
  machineClassOf: { call: (kW) => q.machineClassOf(kW, "ordinary", "rigid"), good: [55] },
  machineGroupOf: { call: q.machineGroupOf, good: [55, 225] },
  supportClassOf: { call: q.supportClassOf, good: [40, 25] },
  alarmFromBaselineMmPerS: {
    call: (baseline, bc) => q.alarmFromBaselineMmPerS(baseline, limits(1, bc, 99)),
    good: [2, 4.5],
  },
  highestTripMmPerS: { call: (cd) => q.highestTripMmPerS(limits(1, 2, cd)), good: [7.1] },
  motorLimits: { call: (height) => q.motorLimits("A", height, "rigid"), good: [225] },
  waitingTimeMin: {
    call: (cold, warm, temperature) => q.waitingTimeMin(table(cold, warm), temperature),
    good: [240, 60, 20],
  },
  waitingTimeBoundsMin: {
    call: (lowest, highest) => q.waitingTimeBoundsMin(table(240, 60), { lowest, highest }),
    good: [12, 25],
  },
  waitingTimeByHalvingMin: { call: q.waitingTimeByHalvingMin, good: [60, 23, 13], mayBeNegative: [1, 2] },
};

/** Every number in a result, at any depth. */
function numbersIn(result: unknown): readonly number[] {
  if (typeof result === "number") return [result];
  return typeof result === "object" && result !== null ? Object.values(result).flatMap(numbersIn) : [];
}

describe("quantities of speed, record, mounting, supply, severity and bond", () => {
  it.each(Object.entries(SAMPLES))("%s gives numbers, and refuses what is none", (_name, sample) => {
    const { call, good, mayBeNegative = [] } = sample;
    expect(numbersIn(call(...good)).some(Number.isNaN)).toBe(false);
    for (const [place] of good.entries()) {
      const bad = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, 1e300, ...negative(place)];
      for (const value of bad)
        expect(() => call(...good.with(place, value)), `${value} at ${place}`).toThrow(RangeError);
    }
    function negative(place: number): readonly number[] {
      return mayBeNegative.includes(place) ? [] : [-1];
    }
  });
});
