import { convert } from "../../src/base/index.js";
import {
  accelerationOfVelocityMPerS2,
  alarmFromBaselineMmPerS,
  displacementOfVelocityUm,
  highestTripMmPerS,
  limitsOfClassMmPerS,
  limitsOfGroup,
  type MachineClass,
  type MachineGroup,
  machineClassOf,
  machineGroupOf,
  motorLimits,
  restateSine,
  STANDARD_GRAVITY_M_PER_S2,
  type SupportClass,
  supportClassOf,
  velocityOfAccelerationMmPerS,
  velocityOfDisplacementMmPerS,
  worstZone,
  ZONED_SPEEDS_RPM,
  type ZoneLimits,
  zoneOf,
} from "../../src/quantities/index.js";
import { compareWithTruth, type Given } from "./truth-figures.js";

const printed = ({ ab, bc, cd }: ZoneLimits) => ({ A_B: ab, B_C: bc, C_D: cd });
const byClass = (given: Given) => printed(limitsOfClassMmPerS(given.text("machine_class") as MachineClass));
const groupOf = (given: Given) =>
  limitsOfGroup(given.number("group") as MachineGroup, given.text("support") as SupportClass);
const velocityLimits = (given: Given) => printed(groupOf(given).velocityMmPerS);
const displacementLimits = (given: Given) => printed(groupOf(given).displacementUm);
const zoneInGroup = (given: Given) => zoneOf(given.number("velocity_mm_per_s"), groupOf(given).velocityMmPerS);

function zone(given: Given): string {
  const [ab = 0, bc = 0, cd = 0] = given.numbers("limits_mm_per_s");
  return zoneOf(given.number("velocity_mm_per_s"), { ab, bc, cd });
}

/** Limits of velocity by shaft height, as far as the entry lists them. */
function motors(given: Given): unknown {
  const mounting = given.text("mounting") === "rigid" ? "rigid" : "free-suspension";
  const grade = given.text("grade") as "A" | "B";
  const heights = { "56-132": 132, "132-280": 280, "over-280": 281 };
  return Object.fromEntries(
    Object.entries(heights)
      .map(([range, height]) => [range, motorLimits(grade, height, mounting)?.velocityMmPerS])
      .filter(([, limit]) => limit !== undefined),
  );
}

/** One quantity of every grade and mounting at a shaft height. */
function motorQuantity(given: Given, quantity: "displacementUm" | "accelerationMPerS2"): unknown {
  const of = (grade: "A" | "B", mounting: "rigid" | "free-suspension") =>
    motorLimits(grade, given.number("shaft_height_mm"), mounting)?.[quantity];
  return {
    A_free: of("A", "free-suspension"),
    A_rigid: of("A", "rigid"),
    B_free: of("B", "free-suspension"),
    B_rigid: of("B", "rigid"),
  };
}

const g = (mPerS2: number) => convert(mPerS2, "m/s²", "g", "vibration-acceleration");
const ips = (mmPerS: number) => convert(mmPerS, "mm/s", "in/s", "vibration-velocity");
const ipsPeak = (mmPerSRms: number) => ips(restateSine(mmPerSRms, "rms", "peak"));

compareWithTruth(
  "vibration-severity",
  {
    "sev-class-i": byClass,
    "sev-class-ii": byClass,
    "sev-class-iv": byClass,
    "sev-class-i-power": () => [14, 15, 16].filter((kW) => machineClassOf(kW, "ordinary", null) === "I").at(-1),
    "sev-class-ii-power": () => {
      const powers = Array.from({ length: 400 }, (_, index) => index + 1);
      const ofII = (foundation: "ordinary" | "special") =>
        powers.filter((kW) => machineClassOf(kW, foundation, null) === "II");
      return {
        min_kW: Math.min(...ofII("ordinary")) - 1,
        max_kW: Math.max(...ofII("ordinary")),
        special_foundation_max_kW: Math.max(...ofII("special")),
      };
    },
    "sev-support-default": () => supportClassOf(null, 25),
    "sev-g1-rigid": velocityLimits,
    "sev-g1-power": () => ({
      min_kW: machineGroupOf(300, null) === 2 && machineGroupOf(300.1, null) === 1 ? 300 : null,
      max_MW: machineGroupOf(50_000, null) === 1 && machineGroupOf(50_001, null) === null ? 50 : null,
      shaft_height_min_mm: machineGroupOf(200, 314.9) === 2 && machineGroupOf(200, 315) === 1 ? 315 : null,
    }),
    // The share by which the alarm lies above a baseline of nothing.
    "sev-alarm-step": () => (100 * alarmFromBaselineMmPerS(0, limitsOfGroup(1, "rigid").velocityMmPerS)) / 4.5,
    "sev-g2-rigid": velocityLimits,
    "sev-scope-speed": () => ({ min_rpm: ZONED_SPEEDS_RPM.lowest, max_rpm: ZONED_SPEEDS_RPM.highest }),
    "sev-scope-lower": () => ({
      power_above_kW: machineGroupOf(15, null) === null && machineGroupOf(15.1, null) === 2 ? 15 : null,
      speed_min_rpm: ZONED_SPEEDS_RPM.lowest,
    }),
    "sev-60034-a-free": motors,
    "sev-60034-b-free": motors,
    "sev-60034-b-rigid": motors,
    "sev-eval-ii-3_2": zone,
    "sev-eval-i-4_6": zone,
    "sev-eval-iv-7_1": zone,
    "sev-eval-g1f-11_0": zone,
    "sev-peak-from-rms": (given) => restateSine(given.number("rms_mm_per_s"), "rms", "peak"),
    "sev-acc-from-vel": (given) =>
      g(accelerationOfVelocityMPerS2(given.number("rms_mm_per_s"), given.number("frequency_hz"))),
    "sev-class-iii": byClass,
    "sev-g1-rigid-um": displacementLimits,
    "sev-g1-flexible": velocityLimits,
    "sev-g1-flexible-um": displacementLimits,
    "sev-g2-rigid-printed": velocityLimits,
    "sev-g2-rigid-um": displacementLimits,
    "sev-g2-flexible": velocityLimits,
    "sev-g2-flexible-um": displacementLimits,
    "sev-eval-g2r-3_0": zoneInGroup,
    "sev-eval-g1f-3_0": zoneInGroup,
    "sev-eval-both": (given) =>
      worstZone([zoneInGroup(given), zoneOf(given.number("displacement_um"), groupOf(given).displacementUm)]),
    "sev-alarm-2_0": (given) =>
      alarmFromBaselineMmPerS(given.number("baseline_mm_per_s"), { ab: 2.3, bc: given.number("B_C"), cd: 7.1 }),
    "sev-alarm-capped": (given) =>
      alarmFromBaselineMmPerS(given.number("baseline_mm_per_s"), { ab: 2.3, bc: given.number("B_C"), cd: 7.1 }),
    "sev-trip": (given) => highestTripMmPerS({ ab: 2.3, bc: 4.5, cd: given.number("C_D") }),
    "sev-60034-a-rigid": motors,
    "sev-60034-um": (given) => motorQuantity(given, "displacementUm"),
    "sev-60034-acc": (given) => motorQuantity(given, "accelerationMPerS2"),
    "sev-60034-servo": (given) => motorLimits("A", given.number("shaft_height_mm"), "free-suspension")?.velocityMmPerS,
    "sev-150hp": (given) => {
      const { ab, bc } = limitsOfGroup(machineGroupOf(given.number("power_kW"), null) ?? 1, "rigid").velocityMmPerS;
      return { A_B_mm_per_s: ab, B_C_mm_per_s: bc, A_B_ips_peak: ipsPeak(ab), B_C_ips_peak: ipsPeak(bc) };
    },
    "sine-chart": () => {
      const oneG = convert(1, "g", "m/s²", "vibration-acceleration");
      const velocityOfG = velocityOfAccelerationMmPerS(oneG, 1);
      return {
        in_of_in_per_s: displacementOfVelocityUm(25.4, 1) / 25_400,
        in_per_s_of_g: ips(velocityOfG),
        in_of_g: displacementOfVelocityUm(velocityOfG, 1) / 25_400,
      };
    },
    "sine-detectors": (given) => ({
      rms: restateSine(given.number("peak"), "peak", "rms"),
      peak_to_peak: restateSine(given.number("peak"), "peak", "peak-to-peak"),
      peak_to_peak_of_rms: restateSine(1, "rms", "peak-to-peak"),
    }),
    "sine-grms-ips": () => {
      const oneG = convert(1, "g", "m/s²", "vibration-acceleration");
      return ipsPeak(velocityOfAccelerationMmPerS(oneG, 1));
    },
    "sine-ips-mils": () => restateSine(displacementOfVelocityUm(25.4, 1), "peak", "peak-to-peak") / 25.4,
    "sine-0_38hz": (given) => {
      const hz = given.number("frequency_hz");
      const peakUm = restateSine(1e6 * given.number("displacement_m_rms"), "rms", "peak");
      return g(accelerationOfVelocityMPerS2(velocityOfDisplacementMmPerS(peakUm, hz), hz));
    },
    "sine-30rpm-1mm": (given) => {
      const hz = given.number("shaft_rpm") / 60;
      const velocity = velocityOfDisplacementMmPerS(1000 * given.number("displacement_mm"), hz);
      return accelerationOfVelocityMPerS2(velocity, hz);
    },
    "sine-30rpm-1g": (given) => velocityOfAccelerationMmPerS(STANDARD_GRAVITY_M_PER_S2, given.number("shaft_rpm") / 60),
  },
  { "sev-ladder": "the series from which limits are taken; nothing computed here" },
);
