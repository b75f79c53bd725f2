import { expect, it } from "vitest";
import {
  type BearingOrderBounds,
  type BearingOrders,
  bearingOrders,
  componentFrequencyHz,
  shaftFrequencyHz,
  usualBearingOrders,
} from "../../src/quantities/index.js";
import { compareWithTruth, type Given } from "./truth-figures.js";

const NAMES = {
  ftf: "cage",
  bpfo: "outerRace",
  bpfi: "innerRace",
  bsf: "elementSpin",
  twice_bsf: "elementFault",
} as const;

function geometryOf(given: Given) {
  return {
    elements: given.number("elements"),
    elementDiameterMm: given.number("element_diameter"),
    pitchDiameterMm: given.number("pitch_diameter"),
    contactAngleDeg: given.number("contact_angle_deg"),
  };
}

const asked = (given: Given): readonly string[] => Object.keys(Object(given.entry.expected));
const nameOf = (key: string): keyof BearingOrders => NAMES[key.replace(/_hz$/, "") as keyof typeof NAMES];

function orders(given: Given): unknown {
  const ours = bearingOrders(geometryOf(given));
  return Object.fromEntries(asked(given).map((key) => [key, ours[nameOf(key)]]));
}

function frequencies(given: Given): unknown {
  const rpm = "shaft_rpm" in given.entry.inputs ? given.number("shaft_rpm") : 60 * given.number("shaft_hz");
  const ours = bearingOrders(geometryOf(given));
  return Object.fromEntries(asked(given).map((key) => [key, componentFrequencyHz(ours[nameOf(key)], rpm)]));
}

/** The middle of each usual band; the tolerance of the source is its width. */
function usual(given: Given): unknown {
  const bounds: BearingOrderBounds = usualBearingOrders(given.number("elements"));
  const middle = (key: string) => (bounds[nameOf(key)].lowest + bounds[nameOf(key)].highest) / 2;
  return Object.fromEntries(asked(given).map((key) => [key, middle(key)]));
}

/** Cage given in Hz: the outer race sees every element once in a turn of the cage. */
function fromCage(given: Given): unknown {
  const rpm = given.number("shaft_rpm");
  const elements = given.number("elements");
  const cageOrder = given.number("cage_hz") / shaftFrequencyHz(rpm);
  // The element diameter that gives this cage order at 0° contact.
  const ours = bearingOrders({
    elements,
    elementDiameterMm: 1 - 2 * cageOrder,
    pitchDiameterMm: 1,
    contactAngleDeg: 0,
  });
  return { shaft_hz: shaftFrequencyHz(rpm), bpfo_hz: componentFrequencyHz(ours.outerRace, rpm) };
}

compareWithTruth("bearing-frequencies", {
  "brg-6205-bpfo": orders,
  "brg-6205-bpfi": orders,
  "brg-6205-2bsf": orders,
  "brg-6205-1797rpm": frequencies,
  "brg-6205-1774rpm": frequencies,
  "brg-6205-1730rpm": frequencies,
  "brg-6203fe-bpfo-bpfi": orders,
  "brg-er16k-bpfo": orders,
  "brg-er16k-bpfi": orders,
  "brg-er16k-29hz": frequencies,
  "brg-6203-2855-bpfo-bpfi": orders,
  "brg-6203-2905-bpfo": orders,
  "brg-6203-2855-bpfo4": orders,
  "brg-uer204-40hz": frequencies,
  "brg-nu330-1000": fromCage,
  "brg-nu330-1800": fromCage,
  "brg-mfpt-bpfo": frequencies,
  "brg-mfpt-bpfi": frequencies,
  "brg-6804-1800": frequencies,
  "brg-angle15": frequencies,
  "brg-identity-sum": (given) => {
    const { outerRace, innerRace } = bearingOrders(geometryOf(given));
    return outerRace + innerRace;
  },
  "brg-rule-04-06": usual,
  "brg-6205-cage": orders,
  "brg-6203fe-cage-element": orders,
  "brg-er16k-cage-spin": orders,
  "brg-6205-1500rpm": frequencies,
  "brg-8-10-50": frequencies,
  "brg-12-20-120": frequencies,
  "brg-usual-9": usual,
  "brg-usual-14": usual,
  "brg-outer-turning": (given) => ({ ftf: bearingOrders(geometryOf(given), "outer").cage }),
});

it("prints the usual bands as wide as their source", () => {
  const { outerRace } = usualBearingOrders(10);
  expect(outerRace.lowest).toBeCloseTo(3.2, 12);
  expect(outerRace.highest).toBeCloseTo(4.8, 12);
});
