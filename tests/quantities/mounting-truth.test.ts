import { expect, it } from "vitest";
import {
  heaviestSensorKg,
  naturalFrequencyShiftPct,
  overReadingDb,
  overReadingPct,
  resonanceOnContactHz,
  shareShownAbove,
  USUAL_UPPER_FREQUENCY_HZ,
  usableShareOfResonance,
  usableUpperFrequencyHz,
} from "../../src/quantities/index.js";
import { truthOf } from "../tools/truth.js";
import { compareWithTruth, type Given } from "./truth-figures.js";

const error = (given: Given) => overReadingPct(given.number("frequency_ratio"));
const damped = (given: Given) => overReadingPct(given.number("frequency_ratio"), given.number("damping_ratio"));
const share = (given: Given) => usableShareOfResonance(given.number("error_percent"));
const shift = (given: Given) =>
  naturalFrequencyShiftPct(given.number("structure_mass_kg"), given.number("sensor_mass_kg"));
const natural = (given: Given) => resonanceOnContactHz(given.number("stiffness_N_per_m"), given.number("mass_kg"));
const usualMassShare = () => heaviestSensorKg(1);
const errorOfDb = (level: number) => 100 * (10 ** (level / 20) - 1);

/** Our row of a method has the published figure inside, and no end outside its tolerance. */
function usualLimit(given: Given): unknown {
  const expected = Number(given.entry.expected);
  const row = Object.entries(USUAL_UPPER_FREQUENCY_HZ).find(([method]) => method === given.text("method"))?.[1];
  if (!row || row.lowest > expected || row.highest < expected) return row;
  return Math.abs(row.lowest - expected) > Math.abs(row.highest - expected) ? row.lowest : row.highest;
}

compareWithTruth(
  "mounting",
  {
    "mnt-error-tenth": error,
    "mnt-error-fifth": error,
    "mnt-error-three-tenths": error,
    "mnt-error-third": error,
    "mnt-error-db-third": (given) => overReadingDb(given.number("frequency_ratio")),
    "mnt-ratio-5pct": share,
    "mnt-ratio-10pct": share,
    "mnt-ratio-1pct": share,
    "mnt-ratio-3db": (given) => usableShareOfResonance(errorOfDb(given.number("level_dB"))),
    "mnt-error-2200-600": (given) =>
      overReadingPct(given.number("frequency_hz") / given.number("natural_frequency_hz")),
    "mnt-error-at-006": error,
    "mnt-error-damped-07-05": damped,
    "mnt-error-damped-002-third": damped,
    "mnt-mass-ratio": usualMassShare,
    "mnt-course-10pct": usualMassShare,
    "mnt-massload-10pct": shift,
    "mnt-massload-25pct": shift,
    "mnt-resonance-a": natural,
    "mnt-usable-from-resonance": (given) => ({
      rigid_hz: usableUpperFrequencyHz(given.number("resonance_rigid_hz"), given.number("error_percent")),
      soft_hz: usableUpperFrequencyHz(given.number("resonance_soft_hz"), given.number("error_percent")),
    }),
    "mnt-limit-stud": usualLimit,
    "mnt-limit-flat-magnet": usualLimit,
    "mnt-limit-two-pole-magnet": usualLimit,
    "mnt-limit-order": () =>
      Object.entries(USUAL_UPPER_FREQUENCY_HZ)
        .sort(([, a], [, b]) => b.highest - a.highest)
        .map(([method]) => method),
    "mnt-iso5348-third": error,
    "mnt-natural-200-5": natural,
    "mnt-natural-654-1": natural,
    "mnt-natural-980-0_5": natural,
    "mnt-mass-manual": usualMassShare,
    "mnt-corner-share": (given) => shareShownAbove(given.number("frequency_over_corner"), 1),
    "mnt-corner-tenth": (given) => 20 * Math.log10(shareShownAbove(given.number("frequency_over_corner"), 1)),
    "mnt-3db-high": (given) => {
      const atPlus = usableShareOfResonance(errorOfDb(given.number("level_dB")));
      return { plus_percent: overReadingPct(atPlus), minus_percent: 100 * (shareShownAbove(1, 1) - 1) };
    },
  },
  {
    "mnt-roughness": "surface finish; nothing computed here",
    "mnt-roughness-um": "a conversion of length",
    "mnt-tilt-gap": "geometry of the seat",
    "mnt-flatness": "surface finish; nothing computed here",
    "mnt-iso5348-five-times": "a ratio for a rule to ask for; what it leaves is tested as mnt-error-fifth",
    "mnt-course-ufr": "the band of a sensor, not of a mounting",
    "mnt-thomson-07": "contradicted below",
    "mnt-thomson-piezo": "a bound, tested below",
  },
);

it("finds twice the greatest error that Thomson's text gives for a damping of 0.7 below a fifth of the resonance", () => {
  const printed = Number(truthOf("mounting").get("mnt-thomson-07")?.expected);
  const errors = Array.from({ length: 201 }, (_, step) => overReadingPct((0.2 * step) / 200, 0.7));
  expect(Math.max(...errors.map(Math.abs))).toBeCloseTo(2 * printed, 4);
});

it("calls a reading at 0.06 of the resonance free of distortion, as he does: below half a per cent", () => {
  const ratio = Number(truthOf("mounting").get("mnt-thomson-piezo")?.expected);
  expect(overReadingPct(ratio)).toBeLessThan(0.5);
});
