import {
  bearingAreaMm2,
  bracketFrequencyHz,
  cantileverStiffnessNPerMm,
  drillPointMm,
  rectangleSecondMomentMm4,
  rimGapMm,
  roundSecondMomentMm4,
  smallestCylinderMm,
  wallLeftMm,
} from "../../src/quantities/index.js";
import { holdAgainst, type Inputs } from "./against-truth.js";

const spotFaceMm = (inputs: Inputs): number =>
  rimGapMm(inputs.number("housing_diameter_mm") / 2, inputs.number("spot_face_diameter_mm"));

holdAgainst("spotface-geometry", [
  [/^geo-sagitta-\d+-\d+$/, (inputs) => rimGapMm(inputs.number("radius"), inputs.number("chord"))],
  [
    /^geo-sagitta-.*-other-root$/,
    (inputs) => 2 * inputs.number("radius") - rimGapMm(inputs.number("radius"), inputs.number("chord")),
  ],
  [/^geo-spot-\d+-\d+$/, spotFaceMm],
  [
    /^geo-spot-approx-/,
    (inputs) => {
      const short = inputs.number("spot_face_diameter_mm") ** 2 / (4 * inputs.number("housing_diameter_mm"));
      return { approx_mm: short, error_percent: 100 * (short / spotFaceMm(inputs) - 1) };
    },
  ],
  [/^geo-min-diameter$/, (inputs) => smallestCylinderMm(inputs.number("base_diameter_mm"), inputs.number("gap_mm"))],
  [
    /^geo-wall-left$/,
    (inputs) =>
      wallLeftMm({
        wallMm: inputs.number("wall_mm"),
        seatDepthMm: spotFaceMm(inputs),
        holeDepthMm: inputs.number("hole_depth_mm"),
        drillPointMm: 0,
      }),
  ],
  [/^geo-drill-point$/, (inputs) => drillPointMm(inputs.number("drill_diameter_mm"), inputs.number("point_angle_deg"))],
  [/^geo-i-circle-/, (inputs) => roundSecondMomentMm4(inputs.number("diameter_mm"))],
  [/^geo-i-tube-/, (inputs) => roundSecondMomentMm4(inputs.number("outer_mm"), inputs.number("inner_mm"))],
  [
    /^geo-bracket-f/,
    (inputs) =>
      bracketFrequencyHz(
        cantileverStiffnessNPerMm(
          inputs.number("youngs_modulus_GPa") * 1000,
          rectangleSecondMomentMm4(inputs.number("width_mm"), inputs.number("height_mm")),
          inputs.number("length_mm"),
        ),
        inputs.number("tip_mass_kg"),
      ),
  ],
  [
    /^geo-contact-area$/,
    (inputs) => bearingAreaMm2(inputs.number("base_diameter_mm"), inputs.number("hole_diameter_mm")),
  ],
]);
