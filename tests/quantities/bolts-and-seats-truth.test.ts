import {
  assemblyPreloadN,
  bondShearMPa,
  bondTorqueNm,
  bracketFrequencyHz,
  cantileverStiffnessNPerMm,
  cuttingDrillMm,
  drillPointMm,
  externalShearAreaMm2,
  formingHoleMm,
  holeDepthNeededMm,
  internalShearAreaMm2,
  leastEngagementMm,
  percentOfThread,
  preloadByNutFactorN,
  shortFormTorqueNm,
  strippingLoadN,
  strippingSizes,
  type TapForm,
  tapChamferInPitches,
  tensileStressAreaMm2,
  threadLimits,
} from "../../src/quantities/index.js";
import { type Figures, holdAgainst, type Inputs } from "./against-truth.js";
import { boltStrength, frictionOf, inTable, wallStrength } from "./from-tables.js";
import { headOf } from "./heads.js";

const MM = 25.4;
const NM_PER_LBF_FT = 1.3558179483314;
const N_PER_LBF = 4.4482216152605;
const NOT_KNOWN = { lowest: Number.NaN, highest: Number.NaN };
const TAP_FORMS: readonly TapForm[] = [
  "A",
  "B",
  "C",
  "D",
  "E",
  "F",
  "taper",
  "plug",
  "modified-bottoming",
  "bottoming",
];

const ends = ({ lowest, highest }: { readonly lowest: number; readonly highest: number }): Figures => [lowest, highest];

function limits(inputs: Inputs, perUnit: number, unit: string): Figures {
  const { externalMajorMm, externalPitchMm, internalPitchMm, internalMinorMm } = threadLimits(inputs.thread());
  return {
    [`major_max_${unit}`]: externalMajorMm.highest / perUnit,
    [`major_min_${unit}`]: externalMajorMm.lowest / perUnit,
    [`pitch_max_${unit}`]: externalPitchMm.highest / perUnit,
    [`pitch_min_${unit}`]: externalPitchMm.lowest / perUnit,
    [`internal_pitch_min_${unit}`]: internalPitchMm.lowest / perUnit,
    [`internal_pitch_max_${unit}`]: internalPitchMm.highest / perUnit,
    [`minor_max_${unit}`]: internalMinorMm.highest / perUnit,
  };
}

function limits2b(inputs: Inputs): Figures {
  const { internalPitchMm, internalMinorMm } = threadLimits(inputs.thread());
  return { pitch_max_in: internalPitchMm.highest / MM, minor_max_in: internalMinorMm.highest / MM };
}

/** The band that suits forming taps covers the printed holes: its ends where it does not, else theirs. */
function formingBand(inputs: Inputs, printed: Figures): Figures {
  const [lowest, highest] = Array.isArray(printed) ? printed.map(Number) : [];
  const band = formingHoleMm(inputs.thread());
  return [Math.max(band.lowest, Number(lowest)), Math.min(band.highest, Number(highest))];
}

function strengths(inputs: Inputs): Figures {
  const { tensileMPa, yieldMPa, proofMPa } = boltStrength(inputs.text("property_class"), inputs.number("diameter_mm"));
  return { tensile_MPa: tensileMPa, yield_MPa: yieldMPa, proof_MPa: proofMPa };
}

function preloadAndTorque(inputs: Inputs): Figures {
  const friction = inputs.number("friction_coefficient");
  const thread = inputs.thread();
  const preloadN = assemblyPreloadN(thread, inputs.number("yield_MPa"), friction, inputs.number("utilisation"));
  const both = { thread: friction, head: friction };
  return { preload_kN: preloadN / 1000, torque_Nm: shortFormTorqueNm(preloadN, headOf(thread), both) };
}

const drillInches = (inputs: Inputs): number => (cuttingDrillMm(inputs.thread()) ?? Number.NaN) / MM;

/** First frequency times L² √(ρA/(EI)), for a bar of unit mass, length, and stiffness 3 (E I = 1). */
function dimensionless(inputs: Inputs): number {
  const stiffnessNPerMm = cantileverStiffnessNPerMm(1, 1, 1) / 1000;
  return 2 * Math.PI * bracketFrequencyHz(stiffnessNPerMm, inputs.number("mass_ratio"), 1);
}

holdAgainst("bolts-and-seats", [
  [/^read-6g-/, (inputs) => limits(inputs, 1, "mm")],
  [/^read-2a2b-/, (inputs) => limits(inputs, MM, "in")],
  [/^read-2b-/, limits2b],
  [/^read-6h-pitch-width-/, (inputs) => 1000 * width(threadLimits(inputs.thread()).internalPitchMm)],
  [/^read-6h-minor-max-/, (inputs) => threadLimits(inputs.thread()).internalMinorMm.highest],
  [/^read-forming-/, formingBand],
  [
    /^read-ratio-/,
    (inputs) => percentOfThread(inputs.thread(), inputs.number("hole_diameter_mm"), "of-1.0825-pitches"),
  ],
  [/^read-stress-area-/, (inputs) => tensileStressAreaMm2(inputs.thread()) / (MM * MM)],
  [/^read-tapdrill-m/, (inputs) => cuttingDrillMm(inputs.thread()) ?? Number.NaN],
  [/^read-tapdrill-\d/, drillInches],
  [/^read-class-/, strengths],
  [/^read-(a70|vdi)-/, preloadAndTorque],
  [
    /^read-kdf-/,
    (inputs) =>
      preloadByNutFactorN(
        inputs.number("torque_lbf_ft") * NM_PER_LBF_FT,
        inputs.number("nominal_diameter_in") * MM,
        inputs.number("nut_factor"),
      ) / N_PER_LBF,
  ],
  [
    /^read-friction-classes$/,
    () => ({
      steel_oil_grease: ends(frictionOf("carbon-steel", "greased") ?? NOT_KNOWN),
      steel_as_delivered: ends(frictionOf("carbon-steel", "dry") ?? NOT_KNOWN),
      steel_adhesive: ends(frictionOf("carbon-steel", "locked") ?? NOT_KNOWN),
      austenitic_oil: ends(frictionOf("austenitic-stainless", "oiled") ?? NOT_KNOWN),
      austenitic_paste: ends(frictionOf("austenitic-stainless", "greased") ?? NOT_KNOWN),
    }),
  ],
  [
    /^read-strip-m10-internal$/,
    (inputs) =>
      strippingLoadN(
        internalShearAreaMm2(strippingSizes(inputs.thread(), "basic"), inputs.number("engagement_mm")),
        inputs.number("shear_ratio") * inputs.number("tapped_tensile_MPa"),
      ),
  ],
  [
    /^read-strip-m10-external$/,
    (inputs) =>
      strippingLoadN(
        externalShearAreaMm2(strippingSizes(inputs.thread(), "basic"), inputs.number("engagement_mm")),
        inputs.number("shear_ratio") * inputs.number("screw_tensile_MPa"),
      ),
  ],
  [/^read-tensile-m10$/, (inputs) => inputs.number("screw_tensile_MPa") * tensileStressAreaMm2(inputs.thread())],
  [
    /^read-engagement-m10-external$/,
    (inputs) =>
      leastEngagementMm(
        inputs.number("screw_tensile_MPa") * tensileStressAreaMm2(inputs.thread()),
        inputs.number("shear_ratio") * inputs.number("screw_tensile_MPa"),
        externalShearAreaMm2(strippingSizes(inputs.thread(), "basic"), 1),
      ),
  ],
  [/^read-point-/, (inputs) => drillPointMm(inputs.number("diameter_in"), inputs.number("point_angle_deg"))],
  [
    /^read-chamfer-/,
    (inputs) => ends(tapChamferInPitches(TAP_FORMS.find((form) => form === inputs.text("form")) ?? "taper")),
  ],
  [
    /^read-drill-depth-/,
    (inputs) => {
      const { pitchMm } = inputs.thread();
      const chamfer = { lowest: inputs.number("chamfer_pitches"), highest: inputs.number("chamfer_pitches") };
      const freeMm = inputs.number("free_pitches") * pitchMm;
      return holeDepthNeededMm(inputs.number("thread_depth_in") * MM, pitchMm, chamfer, freeMm).highest / MM;
    },
  ],
  [/^read-tensile-[a-z-]+$/, (inputs) => ends(wallStrength(inputs.text("material")) ?? NOT_KNOWN)],
  [
    /^read-pressure-/,
    (inputs) => inTable("table.head_pressure_max", { wall_metal: inputs.text("material") }) ?? Number.NaN,
  ],
  [
    /^read-torsion-50mpa$/,
    (inputs) => bondTorqueNm(inputs.number("shear_MPa"), inputs.number("outer_mm"), inputs.number("inner_mm")),
  ],
  [
    /^read-torsion-114-102$/,
    (inputs) => bondShearMPa(inputs.number("torque_Nm"), inputs.number("outer_mm"), inputs.number("inner_mm")),
  ],
  [/^read-cantilever-/, dimensionless],
]);

function width({ lowest, highest }: { readonly lowest: number; readonly highest: number }): number {
  return highest - lowest;
}
