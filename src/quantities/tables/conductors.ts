/** Classes of IEC 60228: 1 solid, 2 stranded, 5 flexible. */
export type ConductorClass = 1 | 2 | 5;

/** Bare copper, or copper with a coat of another metal (tin). */
export type ConductorCoat = "plain" | "metal-coated";

type Row = readonly [crossSectionMm2: number, ohmPerKm: number];

// Greatest resistance of one conductor at 20 °C, Ω/km, annealed copper. IEC 60228:2004, tables 1 to 3; read 2026-11-26 as
// reprinted by two cable makers, a catalogue of connectors and a page of a cable sizing service, which agree. The standard
// itself was not read. Sizes up to 10 mm², as a point is not fed by more.
const SOLID_OR_STRANDED_PLAIN: readonly Row[] = [
  [0.5, 36.0],
  [0.75, 24.5],
  [1, 18.1],
  [1.5, 12.1],
  [2.5, 7.41],
  [4, 4.61],
  [6, 3.08],
  [10, 1.83],
];
const SOLID_OR_STRANDED_COATED: readonly Row[] = [
  [0.5, 36.7],
  [0.75, 24.8],
  [1, 18.2],
  [1.5, 12.2],
  [2.5, 7.56],
  [4, 4.7],
  [6, 3.11],
  [10, 1.84],
];
const FLEXIBLE_PLAIN: readonly Row[] = [
  [0.5, 39.0],
  [0.75, 26.0],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
  [4, 4.95],
  [6, 3.3],
  [10, 1.91],
];
const FLEXIBLE_COATED: readonly Row[] = [
  [0.5, 40.1],
  [0.75, 26.7],
  [1, 20.0],
  [1.5, 13.7],
  [2.5, 8.21],
  [4, 5.09],
  [6, 3.39],
  [10, 1.95],
];

/** Rows of cross-section in mm² and greatest resistance in Ω/km, rising in cross-section. */
export const GREATEST_RESISTANCE: Readonly<Record<ConductorClass, Readonly<Record<ConductorCoat, readonly Row[]>>>> = {
  1: { plain: SOLID_OR_STRANDED_PLAIN, "metal-coated": SOLID_OR_STRANDED_COATED },
  2: { plain: SOLID_OR_STRANDED_PLAIN, "metal-coated": SOLID_OR_STRANDED_COATED },
  5: { plain: FLEXIBLE_PLAIN, "metal-coated": FLEXIBLE_COATED },
};
