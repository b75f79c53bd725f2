import { describe, expect, it } from "vitest";
import {
  engagementToBreakBoltMm,
  externalShearAreaMm2,
  internalShearAreaMm2,
  leastEngagementMm,
  strippingLoadN,
  strippingSizes,
} from "../../src/quantities/index.js";
import { truthOf } from "../tools/truth.js";
import { holdAgainst, Inputs } from "./against-truth.js";
import { inTable } from "./from-tables.js";

const MM = 25.4;

const internalAreaMm2 = (inputs: Inputs): number =>
  internalShearAreaMm2(
    {
      pitchMm: inputs.number("pitch_mm"),
      externalMajorMm: inputs.number("external_major_min_mm"),
      internalPitchMm: inputs.number("internal_pitch_max_mm"),
    },
    inputs.has("engagement_mm") ? inputs.number("engagement_mm") : 1,
  );

const externalAreaMm2 = (inputs: Inputs): number =>
  externalShearAreaMm2(
    {
      pitchMm: inputs.number("pitch_mm"),
      externalPitchMm: inputs.number("external_pitch_min_mm"),
      internalMinorMm: inputs.number("internal_minor_max_mm"),
    },
    inputs.number("engagement_mm"),
  );

const internalAreaIn2 = (inputs: Inputs): number =>
  internalShearAreaMm2(
    {
      pitchMm: MM / inputs.number("threads_per_inch"),
      externalMajorMm: inputs.number("external_major_min_in") * MM,
      internalPitchMm: inputs.number("internal_pitch_max_in") * MM,
    },
    inputs.number("engagement_in") * MM,
  ) /
  (MM * MM);

/** Engagement at which a tapped thread holds the load that breaks the bolt, for a shear area per mm. */
const engagementMm = (inputs: Inputs, areaPerMm: number): number =>
  leastEngagementMm(
    inputs.number("stress_area_mm2") * inputs.number("screw_tensile_MPa"),
    inputs.number("shear_ratio") * inputs.number("tapped_tensile_MPa"),
    areaPerMm,
  );

holdAgainst("thread-stripping", [
  [/^strip-m\d+-internal$/, internalAreaMm2],
  [/^strip-m\d+-external$/, externalAreaMm2],
  [/^strip-[\d_]+-\d+-internal$/, internalAreaIn2],
  [
    /^strip-length-1_4-20$/,
    (inputs) => {
      const areaPerMm = externalShearAreaMm2(
        {
          pitchMm: MM / inputs.number("threads_per_inch"),
          externalPitchMm: inputs.number("external_pitch_min_in") * MM,
          internalMinorMm: inputs.number("internal_minor_max_in") * MM,
        },
        1,
      );
      // The published form takes half the tensile strength as shear strength.
      return leastEngagementMm(inputs.number("stress_area_in2") * MM * MM, 0.5, areaPerMm) / MM;
    },
  ],
  [
    /^strip-m10-88-310mpa-basic$/,
    (inputs) => engagementMm(inputs, internalShearAreaMm2(strippingSizes(inputs.thread(), "basic"), 1)),
  ],
  [/^strip-(m10-88-310mpa-worst|m8-88-al200)$/, (inputs) => engagementMm(inputs, internalAreaMm2(inputs))],
  [/^strip-load-/, (inputs) => strippingLoadN(internalAreaMm2(inputs), inputs.number("shear_strength_MPa")) / 1000],
  [
    /^strip-rule-of-thumb$/,
    () => ({
      steel: inTable("table.engagement_min", { wall_metal: "carbon-steel" }) ?? Number.NaN,
      cast_iron: inTable("table.engagement_min", { wall_metal: "grey-cast-iron" }) ?? Number.NaN,
      aluminium: inTable("table.engagement_min", { wall_metal: "aluminium" }) ?? Number.NaN,
    }),
  ],
]);

describe("the sizes between which a thread shears", () => {
  const named = [...truthOf("thread-stripping").values()].filter((entry) => entry.inputs.designation !== undefined);

  it.each(named.map((entry) => [entry.id, entry] as const))("are those printed with %s", (_, entry) => {
    const inputs = new Inputs(entry);
    const sizes = strippingSizes(inputs.thread(), "worst");
    const [unit, scale, within] = inputs.has("engagement_in") ? ["in", MM, 0.00005] : ["mm", 1, 0.0005];
    const printed = [
      [`external_major_min_${unit}`, sizes.externalMajorMm],
      [`external_pitch_min_${unit}`, sizes.externalPitchMm],
      [`internal_pitch_max_${unit}`, sizes.internalPitchMm],
      [`internal_minor_max_${unit}`, sizes.internalMinorMm],
    ] as const;
    const given = printed.filter(([name]) => inputs.has(name));
    expect(given).toHaveLength(2);
    for (const [name, ours] of given) expect(Math.abs(ours / scale - inputs.number(name)), name).toBeLessThan(within);
  });

  it("give the engagement at which the bolt breaks first from the designation alone", () => {
    const entry = truthOf("thread-stripping").get("strip-m8-88-al200");
    if (!entry) throw new Error("no entry");
    const inputs = new Inputs({ ...entry, inputs: { ...entry.inputs, designation: "M8" } });
    const { forHoleMm, forBoltMm } = engagementToBreakBoltMm(inputs.thread(), 36.6, 800, 200);
    expect(Math.abs(forHoleMm / Number(entry.expected) - 1)).toBeLessThan(0.003);
    expect(forBoltMm).toBeLessThan(forHoleMm);
  });
});
