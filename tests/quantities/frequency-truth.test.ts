import { convert } from "../../src/base/index.js";
import {
  componentFrequencyHz,
  gearPair,
  greatestSpeedChangePct,
  inductionMotor,
  leastLines,
  polesOfNameplateSpeed,
  shaftFrequencyHz,
  shortestRunS,
  smearLines,
  spectrumRecord,
  synchronousSpeedRpm,
  turnsInRecord,
} from "../../src/quantities/index.js";
import { compareWithTruth, type Given } from "./truth-figures.js";

const POLES = [2, 4, 6, 8, 12];

const synchronous = (given: Given) =>
  Object.fromEntries(POLES.map((poles) => [poles, synchronousSpeedRpm(given.number("line_hz"), poles)]));
const motor = (given: Given) =>
  inductionMotor(given.number("line_hz"), given.number("poles"), given.number("shaft_rpm"));
const blades = (given: Given) => componentFrequencyHz(given.number("blades"), given.number("shaft_rpm"));
const record = (given: Given) => spectrumRecord(given.number("fmax_hz"), given.number("lines"));

function gear(given: Given) {
  const pair = gearPair(given.number("pinion_teeth"), given.number("gear_teeth"), given.number("pinion_rpm"));
  return { mesh_hz: pair.toothMeshHz, gear_rpm: pair.drivenRpm };
}

const phases = (given: Given) => gearPair(given.number("driving_teeth"), given.number("driven_teeth"), 1000);

function recordInFull(given: Given) {
  const { lineSpacingHz, recordLengthS, sampleRateHz, samples } = record(given);
  return {
    line_spacing_hz: lineSpacingHz,
    acquisition_s: recordLengthS,
    sample_rate_hz: sampleRateHz,
    samples,
  };
}

function smear(given: Given) {
  const changed = (componentFrequencyHz(given.number("order"), given.number("shaft_rpm")) / 100) * change(given);
  return {
    component_change_hz: changed,
    lines_smeared: smearLines(
      given.number("order"),
      given.number("shaft_rpm"),
      change(given),
      record(given).lineSpacingHz,
    ),
  };
}
const change = (given: Given) => given.number("speed_change_percent");

compareWithTruth("frequencies-and-fft", {
  "frq-sync-50": synchronous,
  "frq-sync-60": synchronous,
  // The slip is given and the speed asked for: the speed that has this slip is the expected one.
  "frq-slip-1440": (given) => {
    const { slipPct, synchronousRpm } = inductionMotor(given.number("line_hz"), given.number("poles"), 1440);
    return Math.abs(slipPct - given.number("slip_percent")) < 1e-9 ? synchronousRpm * (1 - slipPct / 100) : slipPct;
  },
  "frq-slip-120hz": (given) => ({
    synchronous_rpm: motor(given).synchronousRpm,
    slip: motor(given).slipPct / 100,
  }),
  "frq-slip-1746": (given) => ({ slip_percent: motor(given).slipPct, rotor_hz: motor(given).rotorCurrentHz }),
  "frq-slip-1160": (given) => motor(given).slipPct,
  "frq-2fl-60": (given) => ({
    line_cpm: convert(given.number("line_hz"), "Hz", "cpm", "frequency"),
    twice_line_cpm: convert(inductionMotor(given.number("line_hz"), 4, 1750).twiceLineHz, "Hz", "cpm", "frequency"),
  }),
  "frq-ppf-4p-1440": (given) => motor(given).polePassHz,
  "frq-ppf-2p-2950": (given) => motor(given).polePassHz,
  "frq-bpf-5-1200": blades,
  "frq-bpf-52-3360": blades,
  "frq-cogging-24": (given) => componentFrequencyHz(given.number("events_per_rev"), given.number("shaft_rpm")),
  "frq-bpf-12-1480": blades,
  "frq-bpf-7-980": blades,
  "frq-gmf-20-60-1500": gear,
  "frq-gmf-18-89-2950": gear,
  "frq-gmf-32-96-1800": gear,
  "frq-fft-60k-400": (given) => spectrumRecord(given.number("fmax_cpm"), given.number("lines")).lineSpacingHz,
  "frq-fft-60kcpm-hz": (given) => shaftFrequencyHz(given.number("fmax_cpm")),
  "frq-fft-sample-factor": () => spectrumRecord(1000, 400).sampleRateHz / 1000,
  "frq-fft-1000-400": recordInFull,
  "frq-fft-10000-6400": recordInFull,
  "frq-fft-200-1600": recordInFull,
  "frq-fft-min-lines": (given) => {
    const apart = given.number("frequency_1_hz") - componentFrequencyHz(2, given.number("shaft_rpm"));
    return leastLines(given.number("fmax_hz"), apart, given.number("lines_between"));
  },
  "frq-smear-bpfo": smear,
  "frq-smear-1x": smear,
  "frq-max-speed-change": (given) =>
    greatestSpeedChangePct(given.number("order"), given.number("shaft_rpm"), record(given).lineSpacingHz),
  "frq-revs-in-record": (given) => turnsInRecord(given.number("shaft_rpm"), record(given).recordLengthS),
  "frq-gear-8-42": (given) => {
    const pair = gearPair(given.number("driving_teeth"), given.number("driven_teeth"), given.number("driving_rpm"));
    return {
      driven_rpm: pair.drivenRpm,
      assembly_phase_cpm: 60 * pair.assemblyPhaseHz,
      mesh_cpm: 60 * pair.toothMeshHz,
    };
  },
  "frq-gear-phases-23-67": (given) => phases(given).assemblyPhases,
  "frq-gear-phases-20-60": (given) => phases(given).assemblyPhases,
  "frq-gear-phases-18-54": (given) => phases(given).assemblyPhases,
  "frq-gear-turns-11-30": (given) => phases(given).drivingTurnsToRepeat,
  "frq-gear-turns-rule": (given) => phases(given).drivingTurnsToRepeat,
  "frq-poles-1450": (given) => {
    const poles = polesOfNameplateSpeed(given.number("shaft_rpm"), given.number("line_hz"));
    return { poles, synchronous_rpm: poles && synchronousSpeedRpm(given.number("line_hz"), poles) };
  },
  "frq-poles-60": (given) =>
    Object.fromEntries([3450, 1750, 1175].map((rpm) => [rpm, polesOfNameplateSpeed(rpm, given.number("line_hz"))])),
  "frq-fft-1600-800": (given) => ({ line_spacing_hz: record(given).lineSpacingHz }),
  "frq-fft-1000-800": (given) => ({
    samples: record(given).samples,
    sample_rate_hz: record(given).sampleRateHz,
    acquisition_s: record(given).recordLengthS,
  }),
  "frq-fft-100-3200": (given) => ({ acquisition_s: record(given).recordLengthS }),
  "frq-fft-800-1600": (given) => ({ line_spacing_hz: record(given).lineSpacingHz }),
  "frq-run-400-4-50": (given) =>
    shortestRunS(0, record(given).recordLengthS, given.number("averages"), given.number("overlap_percent")),
});
