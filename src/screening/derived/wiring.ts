import { convert, type Interval } from "../../base/index.js";
import type { FactState, Facts } from "../../facts/index.js";
import {
  COPPER_TEMPERATURES_C,
  loopResistanceOhm,
  resistanceRangeOhmPerKm,
  supplyLoad,
  voltageAtLoadV,
} from "../../quantities/index.js";
import { type Derivation, intervalOf, known, lackingAmong, rounded, stateOf, unknownFor } from "./deriving.js";
import { monotone } from "./monotone.js";

/** Cable and supply. */
export const WIRING_DERIVED: Readonly<Record<string, Derivation>> = {
  current_drawn: (facts) => deriveCurrent(facts, "sensor_current", "model.running_current"),
  current_at_start: (facts) => deriveCurrent(facts, "starting_current", "model.starting_current"),
  loop_resistance: deriveLoopResistance,
  wire_gauge: (facts) =>
    monotone(facts, { conductor_size: "falls" }, (areaMm2) => convert(areaMm2, "mm²", "AWG", "area")),
  voltage_at_point: (facts) => deriveVoltage(facts, "supply_voltage_min", hottestCopper),
  expected_voltage: (facts) => deriveVoltage(facts, "supply_voltage", anyCopper),
  supply_load: (facts) => deriveLoad(facts, "current_drawn"),
  supply_starting_load: (facts) => deriveLoad(facts, "current_at_start"),
};

const MA_PER_A = 1000;
const OF_TABLES = ["table.resistance_plain_max", "table.resistance_coated_max"];

/** What an accuracy may carry the lower end of a number to, and numbers that count as nothing, have no use as a divisor. */
const LEAST = 1e-6;

/** The ends of a number that must be above 0; null for one that is not known, or not surely above 0. */
function positiveEnds(facts: Facts, id: string): Interval | null {
  const ends = intervalOf(stateOf(facts, id));
  return ends !== null && ends.lowest >= LEAST && Number.isFinite(ends.highest) ? ends : null;
}

/**
 * How hot the copper can get. The current of a sensor does not warm it, so that it follows the air; where nothing is
 * said of either, it can be anything that a cable bears.
 */
function hottestCopper(facts: Facts): Interval {
  const stated = heatStated(facts);
  if (stated === null) return COPPER_TEMPERATURES_C;
  const { lowest, highest } = COPPER_TEMPERATURES_C;
  const within = (end: number): number => Math.min(highest, Math.max(lowest, end));
  return { lowest: within(stated.lowest), highest: within(stated.highest) };
}

/** Of the copper, else of the air; what somebody wrote of the copper and nobody can read is not what the air says. */
function heatStated(facts: Facts): Interval | null {
  return isOpen(stateOf(facts, "conductor_temperature"))
    ? null
    : (intervalOf(stateOf(facts, "conductor_temperature")) ?? intervalOf(stateOf(facts, "ambient_max")));
}

/** Written down, and of no use. */
function isOpen(state: FactState): boolean {
  return !state.known && state.reason !== "missing";
}

/** A measurement can fall on a cold day as well. */
function anyCopper(facts: Facts): Interval {
  return { lowest: COPPER_TEMPERATURES_C.lowest, highest: hottestCopper(facts).highest };
}

/**
 * Voltage at the far end of the cable. It rises with the voltage of the supply and falls with length, resistance and
 * current; resistance falls with the area and rises with the temperature. So the worst ends together give the lowest
 * voltage and the best ends together the highest, and every completion lies between.
 */
function deriveVoltage(facts: Facts, supplyId: string, copper: (facts: Facts) => Interval): FactState {
  const needed = [supplyId, "cable_length", "conductor_size", "current_drawn"];
  const [supply, length, area, current] = needed.map((id) => positiveEnds(facts, id));
  const lacking = lackingAmong(needed, facts, (id) => positiveEnds(facts, id) !== null);
  if (!supply || !length || !area || !current || lacking !== undefined) {
    return unknownFor(lacking ?? supplyId, needed, facts);
  }
  const loop = loopWithin(length, area, copper(facts), facts);
  if (!loop) return unknownFor("table.over_copper_max", needed, facts);
  const voltage = {
    lowest: voltageAtLoadV(supply.lowest, loop.highest, current.highest / MA_PER_A),
    highest: voltageAtLoadV(supply.highest, loop.lowest, current.lowest / MA_PER_A),
  };
  return known(rounded(voltage), [...narrowing(facts), ...needed, ...OF_TABLES], facts);
}

/** Both conductors of a cable; what is not said of class or heat is taken as anything that it can be. */
function loopWithin(lengthM: Interval, areaMm2: Interval, copper: Interval, facts: Facts): Interval | null {
  const overCopper = positiveEnds(facts, "table.over_copper_max");
  if (!overCopper) return null;
  const { lowest, highest } = resistanceRangeOhmPerKm(areaMm2, greatestListed(facts), overCopper.highest, copper);
  return { lowest: loopResistanceOhm(lengthM.lowest, lowest), highest: loopResistanceOhm(lengthM.highest, highest) };
}

function deriveLoopResistance(facts: Facts): FactState {
  const needed = ["cable_length", "conductor_size"];
  const [length, area] = needed.map((id) => positiveEnds(facts, id));
  const lacking = lackingAmong(needed, facts, (id) => positiveEnds(facts, id) !== null);
  if (!length || !area || lacking !== undefined) return unknownFor(lacking ?? "cable_length", needed, facts);
  const loop = loopWithin(length, area, anyCopper(facts), facts);
  if (!loop) return unknownFor("table.over_copper_max", needed, facts);
  return known(rounded(loop), [...narrowing(facts), ...needed, ...OF_TABLES], facts);
}

/** As stated, else as the model says; what somebody wrote down and nobody can read is not the same as not stated. */
function deriveCurrent(facts: Facts, statedId: string, modelId: string): FactState {
  const stated = stateOf(facts, statedId);
  if (stated.known && typeof stated.value === "object") return known(stated.value, [statedId], facts);
  const ofModel = intervalOf(stateOf(facts, modelId));
  return ofModel && !isOpen(stated)
    ? known(ofModel, [modelId], facts)
    : unknownFor(statedId, [statedId, modelId], facts);
}

/** The greatest that a listed size can have, of the class stated or of all of them, plain or coated; null for others. */
function greatestListed(facts: Facts): number | null {
  const [plain, coated] = OF_TABLES.map((id) => positiveEnds(facts, id));
  return plain && coated ? Math.max(plain.highest, coated.highest) : null;
}

/** What would narrow the voltage and is not known comes first: it is what to ask for where the voltage is too close. */
function narrowing(facts: Facts): readonly string[] {
  const unknown = (id: string): boolean => !stateOf(facts, id).known;
  const heat = isOpen(stateOf(facts, "conductor_temperature")) ? "conductor_temperature" : "ambient_max";
  const temperature = heatStated(facts) === null ? [heat] : [];
  return [...(unknown("conductor_class") ? ["conductor_class"] : []), ...temperature];
}

/** Load of a supply by equal sensors. It rises with their number and current and falls with the rating. */
function deriveLoad(facts: Facts, currentId: string): FactState {
  const needed = ["sensors_on_supply", "supply_rating", currentId];
  const [sensors, rating, current] = needed.map((id) => positiveEnds(facts, id));
  const lacking = lackingAmong(needed, facts, (id) => positiveEnds(facts, id) !== null);
  if (!sensors || !rating || !current || lacking !== undefined) {
    return unknownFor(lacking ?? currentId, needed, facts);
  }
  const percent = (count: number, currentMa: number, ratingMa: number): number =>
    supplyLoad([(count * currentMa) / MA_PER_A], ratingMa / MA_PER_A, 1).runningPct;
  const load = {
    lowest: percent(sensors.lowest, current.lowest, rating.highest),
    highest: percent(sensors.highest, current.highest, rating.lowest),
  };
  return known(rounded(load), needed, facts);
}
