/** Strengths of a bolt, MPa: least tensile strength, yield point (ReL or Rp0.2), stress under proof load. */
export interface BoltStrength {
  readonly tensileMPa: number;
  readonly yieldMPa: number;
  readonly proofMPa: number;
}

/** Strengths of one property class up to a nominal diameter in mm. */
interface StrengthRow extends BoltStrength {
  readonly upToMm: number;
}

const row = (tensileMPa: number, yieldMPa: number, proofMPa: number, upToMm = 39): StrengthRow => ({
  tensileMPa,
  yieldMPa,
  proofMPa,
  upToMm,
});

/**
 * Strengths by property class, smallest diameters first.
 *
 * Source: carbon steel, ISO 898-1:2013 table 3 as a supplier's page reprints it (read 2026-11-26): ReL for 4.6 and 5.6,
 * Rpf for 4.8, 5.8 and 6.8, Rp0.2 above. Austenitic stainless steel, ISO 3506-1 as tables quote it (class 100 from
 * memory); it gives no proof stress, so the 0.2 per cent limit stands in its place. The standards were not opened.
 */
export const PROPERTY_CLASSES = {
  "4.6": [row(400, 240, 225)],
  "4.8": [row(420, 340, 310)],
  "5.6": [row(500, 300, 280)],
  "5.8": [row(520, 420, 380)],
  "6.8": [row(600, 480, 440)],
  "8.8": [row(800, 640, 580, 16), row(830, 660, 600)],
  "9.8": [row(900, 720, 650, 16)],
  "10.9": [row(1040, 940, 830)],
  "12.9": [row(1220, 1100, 970)],
  "A2-50": [row(500, 210, 210)],
  "A2-70": [row(700, 450, 450, 24)],
  "A2-80": [row(800, 600, 600, 24)],
  "A4-50": [row(500, 210, 210)],
  "A4-70": [row(700, 450, 450, 24)],
  "A4-80": [row(800, 600, 600, 24)],
  "A4-100": [row(1000, 800, 800, 24)],
} as const satisfies Record<string, readonly StrengthRow[]>;

/** Property class of a bolt as marked on its head. */
export type PropertyClass = keyof typeof PROPERTY_CLASSES;
