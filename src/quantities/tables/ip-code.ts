// IEC 60529 as test houses, lighting makers and device manuals reprint it; the standard itself was not read.

/** First digit 1 to 4: diameter of the smallest object kept out, mm. 5 keeps out harmful dust, 6 all dust. */
export const SMALLEST_OBJECT_KEPT_OUT_MM = { 1: 50, 2: 12.5, 3: 2.5, 4: 1 } as const;

/** What a second digit is tested with: least duration in minutes, and what the sources print besides. */
export const WATER_TESTS = {
  1: { test: "drops from above", minutes: 10 },
  2: { test: "drops, tilted by 15°", minutes: 10 },
  5: { test: "jet", minutes: 3, nozzleMm: 6.3 },
  6: { test: "strong jet", minutes: 3, nozzleMm: 12.5, flowLPerMin: 100 },
  7: { test: "immersion", minutes: 30, depthM: 1, headOverTopM: 0.15 },
  /** From memory (IEC 60529:2013). */
  9: {
    test: "hot high-pressure jet",
    temperatureC: 80,
    pressureMinMPa: 8,
    pressureMaxMPa: 10,
    flowMinLPerMin: 14,
    flowMaxLPerMin: 16,
  },
} as const;
