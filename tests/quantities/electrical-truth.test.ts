import { convert } from "../../src/base/index.js";
import {
  CABLE_TABLE_COEFFICIENT_PER_K,
  COPPER_RESISTIVITY_OHM_MM2_PER_KM,
  commonReturnVoltagesV,
  longestCableM,
  loopResistanceOhm,
  lowestVoltageAtLoadV,
  resistanceAtTemperature,
  trunkVoltagesV,
  voltageAtLoadV,
} from "../../src/quantities/index.js";
import { type ConductorClass, type ConductorCoat, greatestResistance } from "./from-tables.js";
import { compareWithTruth, type Given } from "./truth-figures.js";

function classOf(given: Given): ConductorClass {
  const found = given.number("conductor_class");
  if (found !== 1 && found !== 2 && found !== 5) throw new Error(`no class ${found}`);
  return found;
}

const size = (given: Given) => greatestResistance(given.number("cross_section_mm2"), classOf(given));

/** Every size that the entry lists. */
function sizes(given: Given): unknown {
  const coat: ConductorCoat = given.text("coating") === "plain" ? "plain" : "coated";
  const listed = Object.keys(Object(given.entry.expected));
  return Object.fromEntries(listed.map((mm2) => [mm2, greatestResistance(Number(mm2), classOf(given), coat)]));
}

const warm = (given: Given) =>
  resistanceAtTemperature(
    given.number("resistance_20_ohm_per_km"),
    given.number("temperature_C"),
    given.number("alpha_per_K"),
  );

/** Drop in a conductor that is as long as the whole loop. */
function dropInLoop(given: Given): number {
  const perKm = given.number("resistivity_ohm_mm2_per_km") / given.number("cross_section_mm2");
  return drop(loopResistanceOhm(given.number("loop_length_m") / 2, perKm), given.number("current_A"));
}

const drop = (loopOhm: number, currentA: number) => 100_000 - voltageAtLoadV(100_000, loopOhm, currentA);
const perMetre = (given: Given) =>
  drop(
    loopResistanceOhm(given.number("one_way_length_m"), 1000 * given.number("resistance_ohm_per_m")),
    given.number("current_A"),
  );

function atLoad(given: Given) {
  const at20 = given.number("resistance_20_ohm_per_km");
  const hottestCopperC = given.number("temperature_C");
  const oneWayLengthM = given.number("one_way_length_m");
  const loopOhm = loopResistanceOhm(oneWayLengthM, resistanceAtTemperature(at20, hottestCopperC));
  const currentA = given.number("current_A");
  return {
    loop_resistance_ohm: loopOhm,
    drop_V: loopOhm * currentA,
    load_V: lowestVoltageAtLoadV(given.number("supply_V"), currentA, {
      oneWayLengthM,
      resistanceAt20OhmPerKm: at20,
      hottestCopperC,
    }),
  };
}

compareWithTruth("conductors", {
  "cu-cl2-0_5": size,
  "cu-cl2-0_75": size,
  "cu-cl2-1_5": size,
  "cu-cl2-2_5": size,
  "cu-cl2-6": size,
  "cu-cl2-10": size,
  "cu-cl5-0_5": size,
  "cu-cl5-1_0": size,
  "cu-cl5-1_5": size,
  "cu-cl5-4": size,
  "cu-cl5-6": size,
  "cu-cl5-tinned": sizes,
  "cu-cl2-tinned": sizes,
  "cu-iacs-volume-resistivity": () => COPPER_RESISTIVITY_OHM_MM2_PER_KM,
  "cu-rho-30": (given) =>
    resistanceAtTemperature(
      given.number("resistivity_20_ohm_mm2_per_km"),
      given.number("temperature_C"),
      given.number("alpha_per_K"),
    ),
  "vd-20a-2_5": dropInLoop,
  "vd-20a-2_5-30c": dropInLoop,
  "cu-table-factor-70": (given) =>
    1 / resistanceAtTemperature(1, given.number("temperature_C"), CABLE_TABLE_COEFFICIENT_PER_K),
  "cu-rt-1_5-cl5-70": warm,
  "cu-rt-0_75-cl5-m10": warm,
  "vd-16awg-100ft": (given) => {
    const oneWayM = convert(given.number("length_ft"), "ft", "m", "length");
    const perKm = given.number("resistance_ohm_per_kft") / 0.3048;
    return drop(loopResistanceOhm(oneWayM, perKm), given.number("current_A"));
  },
  "vd-sensor-loop": (given) => {
    const loopOhm = loopResistanceOhm(500 * given.number("loop_length_km"), given.number("resistance_ohm_per_km"));
    const sensorV = voltageAtLoadV(given.number("supply_V"), loopOhm, given.number("current_A"));
    return { loop_resistance_ohm: loopOhm, drop_V: given.number("supply_V") - sensorV, sensor_V: sensorV };
  },
  "vd-380m": (given) => {
    const loopOhm = loopResistanceOhm(given.number("one_way_length_m"), given.number("resistance_ohm_per_km"));
    return { loop_resistance_ohm: loopOhm, drop_V: drop(loopOhm, given.number("current_A")) };
  },
  "vd-100ma-0_5": perMetre,
  "vd-100ma-0_14": perMetre,
  "vd-calc-a": atLoad,
  "vd-calc-c": atLoad,
  "vd-max-length": (given) =>
    longestCableM(
      given.number("supply_V"),
      given.number("minimum_V"),
      given.number("current_A"),
      resistanceAtTemperature(given.number("resistance_20_ohm_per_km"), given.number("temperature_C")),
    ),
  "cu-cl1-plain": sizes,
  "cu-cl1-coated": sizes,
  "cu-cl2-plain": sizes,
  "cu-cl2-coated": sizes,
  "cu-cl5-plain": sizes,
  "cu-cl5-coated": sizes,
  "cu-table-factors": (given) =>
    Object.fromEntries(
      Object.keys(Object(given.entry.expected)).map((temperatureC) => [
        temperatureC,
        1 / resistanceAtTemperature(1, Number(temperatureC), given.number("alpha_per_K")),
      ]),
    ),
  "vd-feeder-60m": (given) => {
    const perKm = given.number("resistivity_ohm_mm2_per_km") / given.number("cross_section_mm2");
    return drop(loopResistanceOhm(given.number("one_way_length_m"), perKm), given.number("current_A"));
  },
  "vd-distributor": (given) => {
    const takenA = given.numbers("taken_A");
    return trunkVoltagesV(
      given.number("supply_V"),
      given.numbers("section_lengths_km").map((km, index) => ({
        loopOhm: loopResistanceOhm(1000 * km, given.number("resistance_ohm_per_km")),
        takenA: takenA[index] ?? Number.NaN,
      })),
    );
  },
  "vd-power-trunk": (given) => {
    const takenVA = given.numbers("taken_VA");
    const voltages = trunkVoltagesV(
      given.number("supply_V"),
      given.numbers("section_lengths_ft").map((ft, index) => ({
        loopOhm: ft * given.number("loop_ohm_per_ft"),
        takenA: (takenVA[index] ?? Number.NaN) / given.number("rated_V"),
      })),
    );
    const last = voltages.at(-1) ?? Number.NaN;
    return { drop_V: given.number("supply_V") - last, last_V: last };
  },
  "vd-common-ground": (given) => {
    const point = { outgoingOhm: 0, currentA: given.number("current_A") };
    return 24 - (commonReturnVoltagesV(24, [point], given.number("return_ohm"))[0] ?? Number.NaN);
  },
});
