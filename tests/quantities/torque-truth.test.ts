import {
  assemblyPreloadN,
  headFrictionDiameterMm,
  preloadByNutFactorN,
  shortFormPreloadN,
  shortFormTorqueNm,
  type TorqueGeometry,
  type TorsionModel,
  threadDiameters,
  torqueByNutFactorNm,
  torqueForPreloadNm,
  torqueShares,
} from "../../src/quantities/index.js";
import { type Figures, holdAgainst, type Inputs, threadOf } from "./against-truth.js";
import { boltStrength, nutFactorOf } from "./from-tables.js";
import { headOf } from "./heads.js";

function geometry(inputs: Inputs): TorqueGeometry {
  const thread = inputs.thread();
  return {
    pitchMm: thread.pitchMm,
    pitchDiameterMm: threadDiameters(thread).pitchDiameterMm,
    headFrictionDiameterMm: headFrictionDiameterMm(
      inputs.number("bearing_face_diameter_mm"),
      inputs.number("hole_diameter_mm"),
    ),
  };
}

const sameFriction = (inputs: Inputs): { thread: number; head: number } => {
  const friction = inputs.number("friction_coefficient");
  return { thread: friction, head: friction };
};

/** Torque of the usual tables: 90 per cent of the yield point, hexagon head on a medium clearance hole. */
function tableTorqueNm(designation: string, propertyClass: string, friction: number, torsion?: TorsionModel): number {
  const thread = threadOf(designation);
  const yieldMPa = boltStrength(propertyClass, thread.majorMm).yieldMPa;
  const both = { thread: friction, head: friction };
  return shortFormTorqueNm(assemblyPreloadN(thread, yieldMPa, friction, 0.9, torsion), headOf(thread), both);
}

function kdf(inputs: Inputs): Figures {
  const diameter = inputs.number("nominal_diameter_mm");
  const preloadN =
    inputs.number("preload_fraction") * inputs.number("proof_stress_MPa") * inputs.number("stress_area_mm2");
  return {
    preload_N: preloadN,
    preload_kN: preloadN / 1000,
    torque_Nm: torqueByNutFactorNm(preloadN, diameter, inputs.number("nut_factor")),
  };
}

const ends = ({ lowest, highest }: { readonly lowest: number; readonly highest: number }): Figures => [lowest, highest];

holdAgainst("torque-preload", [
  [
    /^tq-m[\dx.]+-mu1\d-[\d.]+-torque$/,
    (inputs) => shortFormTorqueNm(inputs.number("preload_kN") * 1000, geometry(inputs), sameFriction(inputs)),
  ],
  [
    /-preload90$/,
    (inputs) =>
      assemblyPreloadN(
        inputs.thread(),
        inputs.number("yield_MPa"),
        inputs.number("friction_coefficient"),
        inputs.number("utilisation"),
      ) / 1000,
  ],
  [/^tq-kdf-m(16|12|10-310)$/, kdf],
  [
    /^tq-kdf-m12-rusty$/,
    (inputs) =>
      preloadByNutFactorN(
        inputs.number("torque_Nm"),
        inputs.number("nominal_diameter_mm"),
        inputs.number("nut_factor"),
      ) / 1000,
  ],
  [/^tq-k-values$/, () => ({ lubricated: nutFactorOf("oiled").lowest, dry: nutFactorOf("dry").lowest })],
  [
    /^tq-k-ranges$/,
    () => ({
      dry: ends(nutFactorOf("dry")),
      oiled: ends(nutFactorOf("oiled")),
      anti_seize: ends(nutFactorOf("greased")),
    }),
  ],
  [
    /^tq-table-m\d+$/,
    (inputs) => {
      const of = (name: string): number => tableTorqueNm(inputs.text("designation"), name, 0.12);
      return { "8.8": of("8.8"), "10.9": of("10.9"), "12.9": of("12.9") };
    },
  ],
  [
    // Figures of the edition before 2001: torsion taken as elastic.
    /^tq-table-mu14-88$/,
    (_, expected) =>
      Object.fromEntries(
        Object.keys(expected).map((designation) => [designation, tableTorqueNm(designation, "8.8", 0.14, "elastic")]),
      ),
  ],
  [
    /^tq-m10-split$/,
    (inputs) => {
      const shares = torqueShares(geometry(inputs), sameFriction(inputs));
      return {
        lead_percent: 100 * shares.lead,
        thread_friction_percent: 100 * shares.thread,
        head_friction_percent: 100 * shares.head,
      };
    },
  ],
  [
    /^tq-inverse-/,
    (inputs) =>
      shortFormPreloadN(inputs.number("torque_Nm"), geometry(inputs), {
        thread: inputs.number("thread_friction"),
        head: inputs.number("head_friction"),
      }) / 1000,
  ],
  [
    /^tq-iso16047-/,
    (inputs) => torqueForPreloadNm(inputs.number("preload_kN") * 1000, geometry(inputs), sameFriction(inputs)),
  ],
]);
