import type { Interval } from "../base/index.js";
import { requireCount, requirePositive, requireWithin } from "./require-number.js";

/** What the frequencies of a rolling bearing depend on. Diameters enter as a ratio only. */
export interface BearingGeometry {
  /** Rolling elements of one row. */
  readonly elements: number;
  /** Ball or mean roller diameter, mm. */
  readonly elementDiameterMm: number;
  /** Diameter of the circle through the centres of the elements, mm. */
  readonly pitchDiameterMm: number;
  /** 0 for radial contact, 90 for a thrust bearing, degrees. */
  readonly contactAngleDeg: number;
}

/** Frequencies as multiples of the shaft's turning frequency. */
export interface BearingOrders {
  /** Turning of the cage (fundamental train). */
  readonly cage: number;
  /** Elements passing a point of the outer race. */
  readonly outerRace: number;
  /** Elements passing a point of the inner race. */
  readonly innerRace: number;
  /** Turning of an element about itself. */
  readonly elementSpin: number;
  /** Blows of a fault on an element, which meets both races in each turn: twice the spin. */
  readonly elementFault: number;
}

/** Pitch diameters are printed rounded; full complements would otherwise fail to fit by a hair. */
export const FITTING_SLACK = 1.01;

/**
 * The characteristic frequencies of a rolling bearing in orders of the turning ring.
 *
 * Source: kinematics of pure rolling without slip, as printed in handbooks; the other ring stands still.
 * Some publications print the fault multiple of an element under the name of its spin; both are given here.
 *
 * @param geometry - see there; mean values for tapered rollers, one row for bearings of two rows
 * @param turningRing - the ring that turns with the shaft
 * @throws RangeError where a value is out of range or the elements do not fit on their circle
 */
export function bearingOrders(geometry: BearingGeometry, turningRing: "inner" | "outer" = "inner"): BearingOrders {
  const { elements, elementDiameterMm, pitchDiameterMm, contactAngleDeg } = geometry;
  requireCount("elements", elements, 3);
  requirePositive("elementDiameterMm", elementDiameterMm);
  requirePositive("pitchDiameterMm", pitchDiameterMm);
  requireWithin("contactAngleDeg", contactAngleDeg, 0, 90);
  const diameterRatio = elementDiameterMm / pitchDiameterMm;
  if (!(diameterRatio <= Math.sin(Math.PI / elements) * FITTING_SLACK)) {
    throw new RangeError(
      `${elements} elements of ${elementDiameterMm} mm do not fit on a circle of ${pitchDiameterMm} mm; ` +
        "check whether one of the two is a radius, or the count is that of two rows",
    );
  }
  const k = diameterRatio * Math.cos((contactAngleDeg * Math.PI) / 180);
  const elementSpin = (1 - k * k) / (2 * diameterRatio);
  return {
    cage: (turningRing === "inner" ? 1 - k : 1 + k) / 2,
    outerRace: (elements * (1 - k)) / 2,
    innerRace: (elements * (1 + k)) / 2,
    elementSpin,
    elementFault: 2 * elementSpin,
  };
}

/** Where each order can lie when not all of the geometry is known. */
export type BearingOrderBounds = Readonly<Record<keyof BearingOrders, Interval>>;

/** Half width of the rule of thumb below, as its source prints it. */
const RULE_OF_THUMB_WIDTH = 0.2;

/**
 * Usual orders when only the number of elements is known: cage 0.4, outer race 0.4 n, inner race 0.6 n,
 * spin 0.23 n below 10 elements and 0.18 n from 10 on; each ± 20 %. Turning inner ring.
 *
 * Source: manual of a portable vibration analyser, "approximate calculation formulae (± 20 %)", read 2026-11-26.
 * A rule of thumb: a bearing can lie outside. Use `bearingOrdersWithin` where a verdict hangs on it.
 *
 * @param elements - rolling elements of one row, at least 3
 */
export function usualBearingOrders(elements: number): BearingOrderBounds {
  requireCount("elements", elements, 3);
  const spin = (elements < 10 ? 0.23 : 0.18) * elements;
  return {
    cage: around(0.4),
    outerRace: around(0.4 * elements),
    innerRace: around(0.6 * elements),
    elementSpin: around(spin),
    elementFault: around(2 * spin),
  };
}

function around(order: number): Interval {
  return { lowest: order * (1 - RULE_OF_THUMB_WIDTH), highest: order * (1 + RULE_OF_THUMB_WIDTH) };
}

/**
 * Where a bearing frequency really lies: at, or a little below, the value of pure rolling.
 *
 * Source: trade pages on bearing frequencies, "1–3 % slip under light load" (read 2026-11-26); common practice.
 *
 * @param frequencyHz - of pure rolling, Hz, above 0
 * @param greatestSlipPct - per cent, 0 to 10
 * @returns Hz
 */
export function withRollingSlipHz(frequencyHz: number, greatestSlipPct = 3): Interval {
  requirePositive("frequencyHz", frequencyHz);
  requireWithin("greatestSlipPct", greatestSlipPct, 0, 10);
  return { lowest: frequencyHz * (1 - greatestSlipPct / 100), highest: frequencyHz };
}
