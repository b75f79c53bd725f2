import {
  boltLoadN,
  cuttingDrillMm,
  holeForPercentMm,
  percentOfThread,
  rootAreaMm2,
  tensileStressAreaMm2,
  threadDiameters,
  threadLimits,
} from "../../src/quantities/index.js";
import { type Figures, holdAgainst, type Inputs, threadOf } from "./against-truth.js";
import { boltStrength } from "./from-tables.js";

const IN2 = 25.4 * 25.4;

function diameters(inputs: Inputs): Figures {
  const { pitchDiameterMm, internalMinorMm, externalMinorMm } = threadDiameters(inputs.thread());
  return {
    pitch_diameter_mm: pitchDiameterMm,
    minor_diameter_external_d3_mm: externalMinorMm,
    minor_diameter_internal_D1_mm: internalMinorMm,
    pitch_diameter_in: pitchDiameterMm / 25.4,
    minor_diameter_internal_in: internalMinorMm / 25.4,
    stress_area_in2: tensileStressAreaMm2(inputs.thread()) / IN2,
  };
}

const areas = (inputs: Inputs): Figures => ({
  stress_area_in2: tensileStressAreaMm2(inputs.thread()) / IN2,
  root_area_in2: rootAreaMm2(inputs.thread()) / IN2,
});

function limits6g(inputs: Inputs): Figures {
  const { externalMajorMm, externalPitchMm } = threadLimits(inputs.thread());
  return {
    major_max_mm: externalMajorMm.highest,
    major_min_mm: externalMajorMm.lowest,
    pitch_max_mm: externalPitchMm.highest,
    pitch_min_mm: externalPitchMm.lowest,
  };
}

function limits6h(which: "internalPitchMm" | "internalMinorMm"): (inputs: Inputs) => Figures {
  return (inputs) => {
    const limits = threadLimits(inputs.thread())[which];
    return { min_mm: limits.lowest, max_mm: limits.highest };
  };
}

function loads(which: "tensileMPa" | "proofMPa"): (inputs: Inputs) => Figures {
  return (inputs) => {
    const thread = inputs.thread();
    const area = inputs.number("stress_area_nominal_mm2");
    const of = (name: string): number => boltLoadN(boltStrength(name, thread.majorMm)[which], area);
    return { "8.8": of("8.8"), "10.9": of("10.9"), "12.9": of("12.9") };
  };
}

function stainlessLoads(inputs: Inputs): Figures {
  const { tensileMPa, yieldMPa } = boltStrength("A2-70", inputs.thread().majorMm);
  const area = inputs.number("stress_area_nominal_mm2");
  return { tensile_load_N: boltLoadN(tensileMPa, area), proof_load_02_N: boltLoadN(yieldMPa, area) };
}

const stainless = (name: string): Figures => {
  const { tensileMPa, yieldMPa } = boltStrength(name, 8);
  return { tensile_strength_MPa: tensileMPa, proof_stress_02_MPa: yieldMPa };
};

const steel = (name: string): Figures => {
  const { tensileMPa, yieldMPa, proofMPa } = boltStrength(name, 8);
  return { tensile_MPa: tensileMPa, yield_MPa: yieldMPa, proof_MPa: proofMPa };
};

function percent(convention: "of-1.299-pitches" | "of-1.0825-pitches"): (inputs: Inputs) => Figures {
  return (inputs) =>
    inputs.has("threads_per_inch")
      ? percentOfThread(
          { majorMm: inputs.number("major_diameter_in"), pitchMm: 1 / inputs.number("threads_per_inch") },
          inputs.number("hole_diameter_in"),
          convention,
        )
      : percentOfThread(inputs.thread(), inputs.number("hole_diameter_mm"), convention);
}

holdAgainst("threads", [
  [/^thr-(m.*|1_4-20-unc)-basic$/, (inputs) => (inputs.has("threads_per_inch") ? diameters1420() : diameters(inputs))],
  [/^thr-(10-32|1_4-28)-unf$/, diameters],
  [/-6h-pitch$/, limits6h("internalPitchMm")],
  [/-6h-minor$/, limits6h("internalMinorMm")],
  [/-tapdrill$/, (inputs) => cuttingDrillMm(inputs.thread()) ?? Number.NaN],
  [/-6g$/, limits6g],
  [/^thr-area-/, areas],
  [/-pitch-mm$/, () => threadOf("1/4-28 UNF").pitchMm],
  [/-stress-area(-full)?$/, (inputs) => tensileStressAreaMm2(inputs.thread())],
  [/-root-area$/, (inputs) => rootAreaMm2(inputs.thread())],
  [/^thr-m\d+-tensile-load$/, loads("tensileMPa")],
  [/^thr-m\d+-proof-load$/, loads("proofMPa")],
  [/^thr-a2-70-stress$/, () => stainless("A2-70")],
  [/^thr-a2-50-a2-80-stress$/, () => ({ class_50: stainless("A2-50"), class_80: stainless("A2-80") })],
  [/^thr-class-stress/, () => ({ "10.9": steel("10.9"), "12.9": steel("12.9") })],
  [/a2-70-loads$/, stainlessLoads],
  [
    /a2-70-tensile-table$/,
    (inputs) =>
      boltLoadN(boltStrength("A2-70", inputs.thread().majorMm).tensileMPa, tensileStressAreaMm2(inputs.thread())),
  ],
  [/^thr-percent-/, percent("of-1.299-pitches")],
  [/^thr-percent5h8-/, percent("of-1.0825-pitches")],
  [
    /^thr-drill-m10-75pct$/,
    (inputs) => holeForPercentMm(inputs.thread(), inputs.number("percent_thread"), "of-1.299-pitches"),
  ],
]);

function diameters1420(): Figures {
  const { pitchDiameterMm, internalMinorMm } = threadDiameters(threadOf("1/4-20 UNC"));
  return { pitch_diameter_in: pitchDiameterMm / 25.4, minor_diameter_internal_in: internalMinorMm / 25.4 };
}
