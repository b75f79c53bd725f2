import {
  CONTROL_SUPPLY_TOLERANCE,
  EXTRA_LOW_VOLTAGE,
  extraLowVoltage,
  ipCodeIncludes,
  readIpCode,
  SMALLEST_OBJECT_KEPT_OUT_MM,
  supplyBandV,
  WATER_TESTS,
  waterDigitIncludes,
  waterProtection,
} from "../../src/quantities/index.js";
import { compareWithTruth, type Given } from "./truth-figures.js";

function band(given: Given) {
  const tolerance = { belowPct: given.number("minus_percent"), abovePct: given.number("plus_percent") };
  const { lowest, highest } = supplyBandV(given.number("rated_V"), tolerance);
  return { min_V: lowest, max_V: highest };
}

/** The highest whole voltage that a circuit may have to count as `kind` at least. */
function highestAs(kinds: readonly string[], current: "dc" | "ac"): number {
  const volts = Array.from({ length: 200 }, (_, index) => index + 1);
  return Math.max(...volts.filter((volt) => kinds.includes(extraLowVoltage(volt, current))));
}
const ANYWHERE = ["touchable-anywhere"];
const DRY = [...ANYWHERE, "touchable-when-dry"];
const SYSTEM = [...DRY, "extra-low"];

compareWithTruth(
  "supply-and-ip",
  {
    "sup-24v-tolerance": () => ({
      minus_percent: CONTROL_SUPPLY_TOLERANCE.belowPct,
      plus_percent: CONTROL_SUPPLY_TOLERANCE.abovePct,
    }),
    "sup-24v-limits": band,
    "sup-12v-limits": band,
    "sup-48v-limits": band,
    "elv-selv-limit": () => ({ ac_rms_V: highestAs(SYSTEM, "ac"), dc_ripple_free_V: highestAs(SYSTEM, "dc") }),
    "elv-basic-dry": () => ({ ac_V: highestAs(DRY, "ac"), dc_V: EXTRA_LOW_VOLTAGE.dry.dcV }),
    "elv-basic-other": () => ({ ac_V: highestAs(ANYWHERE, "ac"), dc_V: highestAs(ANYWHERE, "dc") }),
    "ip-first-digit-sizes": () => SMALLEST_OBJECT_KEPT_OUT_MM,
    "ip-second-digit-durations": (given) =>
      Object.fromEntries(
        ([1, 2, 5, 6, 7] as const)
          .filter((digit) => String(digit) in Object(given.entry.expected))
          .map((digit) => [digit, WATER_TESTS[digit].minutes]),
      ),
    "ip-x6": () => ({
      nozzle_mm: WATER_TESTS[6].nozzleMm,
      flow_l_per_min: WATER_TESTS[6].flowLPerMin,
      duration_min: WATER_TESTS[6].minutes,
    }),
    "ip-x7": () => ({
      depth_m: WATER_TESTS[7].depthM,
      head_over_top_m: WATER_TESTS[7].headOverTopM,
      duration_min: WATER_TESTS[7].minutes,
    }),
    "ip-implied-levels": () => {
      const all = [0, 1, 2, 3, 4, 5, 6, 7, 8, 9];
      const impliesAllLower = all.filter((marked) =>
        all.every((asked) => asked > marked || waterDigitIncludes(marked, asked) === true),
      );
      return Math.max(...impliesAllLower);
    },
    "ip-x9": () => ({
      temperature_C: WATER_TESTS[9].temperatureC,
      pressure_min_MPa: WATER_TESTS[9].pressureMinMPa,
      pressure_max_MPa: WATER_TESTS[9].pressureMaxMPa,
      flow_min_l_per_min: WATER_TESTS[9].flowMinLPerMin,
      flow_max_l_per_min: WATER_TESTS[9].flowMaxLPerMin,
    }),
    "ip-first-digit-dust": () => {
      const keepsOut = (solids: number) => ipCodeIncludes({ solids, water: [4] }, { solids: 6, water: 4 });
      return {
        5: keepsOut(5) === false ? "dust protected" : "no",
        6: keepsOut(6) === true ? "dust tight" : "no",
      };
    },
    "ip-x7-temporary": () => {
      const under = (mark: string) => waterProtection(readIpCode(mark) ?? { solids: null, water: [] }, "submerged");
      return { 7: under("IPX7"), 8: under("IPX8"), 9: under("IPX9") };
    },
    "ip-x5-nozzle": () => ({ 5: WATER_TESTS[5].nozzleMm, 6: WATER_TESTS[6].nozzleMm }),
    "ip-solids-others": () => {
      const { 2: _, ...others } = SMALLEST_OBJECT_KEPT_OUT_MM;
      return others;
    },
  },
  {
    "sup-24v-dynamic": "one maker's range, not the standard's",
    "sup-24v-interruption": "a time to be bridged by the device; nothing computed here",
    "elv-ripple-peak": "peaks of rippled direct current; the limits here are of ripple-free voltages",
  },
);
