export type { ComponentsOfInterest } from "./band-of-interest.js";
export { highestFrequencyOfInterestHz, lowestFrequencyOfInterestHz, USUAL_MULTIPLES } from "./band-of-interest.js";
export type { BearingGeometryBounds } from "./bearing-bounds.js";
export { bearingOrdersWithin } from "./bearing-bounds.js";
export type { BearingGeometry, BearingOrderBounds, BearingOrders } from "./bearing-frequencies.js";
export { bearingOrders, usualBearingOrders, withRollingSlipHz } from "./bearing-frequencies.js";
export type { BlindHole, BoltInHole, TapForm } from "./blind-hole.js";
export {
  boltInBlindHole,
  drillPointMm,
  fullThreadDepthMm,
  holeDepthNeededMm,
  tapChamferInPitches,
  wallLeftMm,
  wallNeededMm,
} from "./blind-hole.js";
export type { BoltUtilisation, TorsionModel } from "./bolt-preload.js";
export {
  assemblyPreloadN,
  boltUtilisation,
  equivalentStressMPa,
  preloadRangeByNutFactorN,
  preloadRangeN,
} from "./bolt-preload.js";
export type { BoltStrength } from "./bolt-strength.js";
export { boltLoadN } from "./bolt-strength.js";
export type { Friction, TorqueGeometry } from "./bolt-torque.js";
export {
  headFrictionDiameterMm,
  nutFactor,
  preloadByNutFactorN,
  preloadForTorqueN,
  shortFormPreloadN,
  shortFormTorqueNm,
  torqueByNutFactorNm,
  torqueForPreloadNm,
  torqueShares,
} from "./bolt-torque.js";
export type { CurePoint } from "./bond.js";
export { waitingTimeBoundsMin, waitingTimeByHalvingMin, waitingTimeMin } from "./bond.js";
export { bondShearMPa, bondTorqueNm } from "./bonded-pad.js";
export {
  bracketFrequencyHz,
  bracketFrequencyRangeHz,
  cantileverStiffnessNPerMm,
  rectangleSecondMomentMm4,
  roundSecondMomentMm4,
} from "./bracket.js";
export {
  CABLE_TABLE_COEFFICIENT_PER_K,
  COPPER_COEFFICIENT_PER_K,
  COPPER_RESISTIVITY_OHM_MM2_PER_KM,
  COPPER_TEMPERATURES_C,
  copperResistanceOhmPerKm,
  resistanceAtTemperature,
  resistanceRangeOhmPerKm,
} from "./conductors.js";
export type { IpCode, WaterExposure, WaterProtection } from "./ip-code.js";
export { ipCodeIncludes, readIpCode, waterDigitIncludes, waterProtection } from "./ip-code.js";
export { lowestFrequencyShownHz, shareShownAbove } from "./lower-corner.js";
export type { GearPair } from "./machine-frequencies.js";
export { componentFrequencyHz, gearPair, shaftFrequencyHz } from "./machine-frequencies.js";
export type { InductionMotor } from "./motor-frequencies.js";
export { inductionMotor, polesOfNameplateSpeed, synchronousSpeedRpm } from "./motor-frequencies.js";
export {
  heaviestSensorKg,
  massForShiftKg,
  naturalFrequencyShiftPct,
  neededResonanceHz,
  overReadingDb,
  overReadingPct,
  resonanceOnContactHz,
  usableShareOfResonance,
  usableUpperFrequencyHz,
} from "./mounting-resonance.js";
export { preloadPct } from "./preload-share.js";
export type { Drive, LowestRunning } from "./running-speed.js";
export { lowestRunningSpeed, speedVaries } from "./running-speed.js";
export type { Seat } from "./seat.js";
export { seatOf } from "./seat.js";
export {
  bearingAreaMm2,
  bearingPressureMPa,
  flatNeededMm,
  flatWidthMm,
  rimGapMm,
  rimGapRangeMm,
  smallestCylinderMm,
  tiltGapMm,
} from "./seat-geometry.js";
export type { PointOnCommonReturn, TrunkSection } from "./shared-conductors.js";
export { commonReturnVoltagesV, trunkVoltagesV } from "./shared-conductors.js";
export type { Detector } from "./sine-vibration.js";
export {
  accelerationOfVelocityMPerS2,
  displacementOfVelocityUm,
  leastVelocityAboveNoiseMmPerS,
  noiseInBandMPerS2,
  restateSine,
  STANDARD_GRAVITY_M_PER_S2,
  timesAboveNoise,
  velocityOfAccelerationMmPerS,
  velocityOfDisplacementMmPerS,
} from "./sine-vibration.js";
export type { SpectrumRecord } from "./spectrum-record.js";
export {
  greatestSpeedChangePct,
  leastLines,
  recordLengthForTurnsS,
  shortestRunS,
  smearLines,
  spectrumRecord,
  turnsInRecord,
  USUAL_LINES,
} from "./spectrum-record.js";
export type { ExtraLowVoltage, SupplyLoad, SupplyTolerance } from "./supply.js";
export {
  CONTROL_SUPPLY_TOLERANCE,
  EXTRA_LOW_VOLTAGE,
  extraLowVoltage,
  mostPointsOnSupply,
  supplyBandV,
  supplyLoad,
} from "./supply.js";
export type { OnceBuilt, Steps } from "./tables/changes.js";
export { MEASURED_STEPS, STEPS } from "./tables/changes.js";
export { SMALLEST_OBJECT_KEPT_OUT_MM, WATER_TESTS } from "./tables/ip-code.js";
export type { HoldingMethod } from "./tables/mounting-methods.js";
export { USUAL_UPPER_FREQUENCY_HZ } from "./tables/mounting-methods.js";
export type {
  GroupLimits,
  MachineClass,
  MachineGroup,
  MotorLimits,
  SupportClass,
  ZoneLimits,
} from "./tables/vibration-severity.js";
export type { PercentConvention, TapHoleUse } from "./tap-drill.js";
export {
  cuttingDrillMm,
  drilledHoleMm,
  formingHoleMm,
  holeForPercentMm,
  percentOfThread,
  tapHoleUse,
  tapHoleUseWithin,
} from "./tap-drill.js";
export type { JointStrength, WeakestPart } from "./tapped-joint.js";
export { holeStrippingLoadN, jointStrength } from "./tapped-joint.js";
export type { Thread } from "./thread-designation.js";
export { threadDesignated } from "./thread-designation.js";
export type { ThreadLimits } from "./thread-limits.js";
export { threadLimits } from "./thread-limits.js";
export type { ThreadDiameters } from "./thread-profile.js";
export { rootAreaMm2, tensileStressAreaMm2, threadDiameters } from "./thread-profile.js";
export type { StrippingFit, StrippingSizes } from "./thread-stripping.js";
export {
  engagementToBreakBoltMm,
  externalShearAreaMm2,
  internalShearAreaMm2,
  leastEngagementMm,
  SHEAR_OVER_TENSILE,
  strippingLoadN,
  strippingSizes,
} from "./thread-stripping.js";
export type { Zone } from "./vibration-severity.js";
export {
  alarmFromBaselineMmPerS,
  highestTripMmPerS,
  limitsOfClassMmPerS,
  limitsOfGroup,
  machineClassOf,
  machineGroupOf,
  machineGroupsWithin,
  motorLimits,
  supportClassOf,
  worstZone,
  ZONED_SPEEDS_RPM,
  zoneOf,
} from "./vibration-severity.js";
export type { CableRun } from "./voltage-drop.js";
export {
  leastCrossSectionMm2,
  longestCableM,
  loopResistanceOhm,
  lowestVoltageAtLoadV,
  voltageAtLoadV,
  voltageAtSteadyPowerV,
} from "./voltage-drop.js";
export { wallMetalOf } from "./wall-metal.js";
