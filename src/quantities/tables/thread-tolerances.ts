/**
 * Tolerances in µm that depend on the pitch alone: fundamental deviation of position g (below basic), major diameter of
 * the external thread at grade 6, minor diameter of the internal thread at grade 6.
 *
 * Source: ISO 965-1 as a public program and thread charts reprint its tables (read 2026-11-26; the standard itself was
 * not opened).
 */
export const TOLERANCES_BY_PITCH: readonly (readonly [pitchMm: number, g: number, major6: number, minor6: number])[] = [
  [0.35, 19, 85, 100],
  [0.4, 19, 95, 112],
  [0.45, 20, 100, 125],
  [0.5, 20, 106, 140],
  [0.6, 21, 125, 160],
  [0.7, 22, 140, 180],
  [0.75, 22, 140, 190],
  [0.8, 24, 150, 200],
  [1, 26, 180, 236],
  [1.25, 28, 212, 265],
  [1.5, 32, 236, 300],
  [1.75, 34, 265, 335],
  [2, 38, 280, 375],
  [2.5, 42, 335, 450],
  [3, 48, 375, 500],
  [3.5, 53, 425, 560],
  [4, 60, 475, 600],
];

/**
 * Tolerances of the pitch diameter at grade 6 in µm, by nominal diameter (above, up to and including, mm) and pitch:
 * external, internal.
 *
 * Source: as above.
 */
export const PITCH_DIAMETER_TOLERANCES: readonly {
  readonly aboveMm: number;
  readonly upToMm: number;
  readonly rows: readonly (readonly [pitchMm: number, external6: number, internal6: number])[];
}[] = [
  {
    aboveMm: 1.4,
    upToMm: 2.8,
    rows: [
      [0.35, 63, 85],
      [0.4, 67, 90],
      [0.45, 71, 95],
    ],
  },
  {
    aboveMm: 2.8,
    upToMm: 5.6,
    rows: [
      [0.35, 67, 90],
      [0.5, 75, 100],
      [0.6, 85, 112],
      [0.7, 90, 118],
      [0.75, 90, 118],
      [0.8, 95, 125],
    ],
  },
  {
    aboveMm: 5.6,
    upToMm: 11.2,
    rows: [
      [0.75, 100, 132],
      [1, 112, 150],
      [1.25, 118, 160],
      [1.5, 132, 180],
    ],
  },
  {
    aboveMm: 11.2,
    upToMm: 22.4,
    rows: [
      [1, 118, 160],
      [1.25, 132, 180],
      [1.5, 140, 190],
      [1.75, 150, 200],
      [2, 160, 212],
      [2.5, 170, 224],
    ],
  },
  {
    aboveMm: 22.4,
    upToMm: 45,
    rows: [
      [1, 125, 170],
      [1.5, 150, 200],
      [2, 170, 224],
      [3, 200, 265],
      [3.5, 212, 280],
      [4, 224, 300],
    ],
  },
];
