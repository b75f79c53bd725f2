import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type BearingOrderBounds,
  type BearingOrders,
  bearingOrders,
  bearingOrdersWithin,
  gearPair,
  greatestSpeedChangePct,
  highestFrequencyOfInterestHz,
  inductionMotor,
  leastLines,
  lowestFrequencyOfInterestHz,
  polesOfNameplateSpeed,
  recordLengthForTurnsS,
  shortestRunS,
  smearLines,
  spectrumRecord,
  synchronousSpeedRpm,
  turnsInRecord,
  USUAL_LINES,
  USUAL_MULTIPLES,
  usualBearingOrders,
  withRollingSlipHz,
} from "../../src/quantities/index.js";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const rpm = between(0.5, 60_000);
const teeth = fc.integer({ min: 3, max: 400 });
const elements = fc.integer({ min: 3, max: 60 });

/** A bearing that can be built: elements that fit, and a contact angle below 90°. */
const bearing = fc
  .record({ elements, fill: between(0.05, 1.0099), angle: between(0, 90) })
  .map(({ fill, angle, ...rest }) => ({
    ...rest,
    elementDiameterMm: 100 * fill * Math.sin(Math.PI / rest.elements),
    pitchDiameterMm: 100,
    contactAngleDeg: angle,
  }));

/** The bounds where nothing but the number of elements is known. */
function ofCount(fewest: number, most: number): BearingOrderBounds {
  const elements = { lowest: fewest, highest: most };
  const bounds = bearingOrdersWithin({ elements, diameterRatio: null, contactAngleDeg: null });
  if (!bounds) throw new Error("some elements always fit");
  return bounds;
}

describe("bearing orders", () => {
  it("add up: both races to the elements, cage times elements to the outer race", () => {
    fc.assert(
      fc.property(bearing, (geometry) => {
        const { cage, outerRace, innerRace } = bearingOrders(geometry);
        expect(outerRace + innerRace).toBeCloseTo(geometry.elements, 9);
        expect(cage * geometry.elements).toBeCloseTo(outerRace, 9);
        expect(bearingOrders(geometry, "outer").cage).toBeCloseTo(1 - cage, 12);
      }),
    );
  });

  it("depend on the ratio of the diameters alone", () => {
    fc.assert(
      fc.property(bearing, between(0.01, 100), (geometry, scale) => {
        const scaled = bearingOrders({
          ...geometry,
          elementDiameterMm: geometry.elementDiameterMm * scale,
          pitchDiameterMm: geometry.pitchDiameterMm * scale,
        });
        expect(scaled.innerRace).toBeCloseTo(bearingOrders(geometry).innerRace, 9);
        expect(scaled.elementSpin / bearingOrders(geometry).elementSpin).toBeCloseTo(1, 9);
      }),
    );
  });

  it("lie within the bounds that hold for any bearing of so many elements, and of about so many", () => {
    fc.assert(
      fc.property(bearing, fc.nat(5), (geometry, more) => {
        const fewest = Math.max(3, geometry.elements - more);
        for (const bounds of [
          ofCount(geometry.elements, geometry.elements),
          ofCount(fewest, geometry.elements + more),
        ]) {
          for (const [name, order] of Object.entries(bearingOrders(geometry))) {
            const { lowest, highest } = bounds[name as keyof BearingOrders];
            expect(order).toBeGreaterThanOrEqual(lowest * (1 - 1e-12));
            expect(order).toBeLessThanOrEqual(highest * (1 + 1e-12));
          }
        }
      }),
    );
  });

  it("refuse elements that do not fit, as where a radius was given for a diameter", () => {
    const geometry = { elements: 9, elementDiameterMm: 7.94, pitchDiameterMm: 38.5 / 2, contactAngleDeg: 0 };
    expect(() => bearingOrders(geometry)).toThrow(/do not fit/);
    expect(() => bearingOrders({ ...geometry, elements: 8.5 })).toThrow(/whole number/);
  });

  it("are usual within the certain bounds from 6 elements on, apart from the width of the rule", () => {
    for (let count = 6; count <= 30; count++) {
      const usual = usualBearingOrders(count).outerRace;
      const certain = ofCount(count, count).outerRace;
      expect(usual.lowest).toBeLessThan(certain.highest);
      expect(usual.highest).toBeGreaterThan(certain.lowest);
    }
    expect(withRollingSlipHz(100, 2)).toEqual({ lowest: 98, highest: 100 });
  });
});

describe("motors", () => {
  it("are told by their speed, at any slip up to 10 %", () => {
    const poles = fc.integer({ min: 1, max: 6 }).map((pairs) => 2 * pairs);
    fc.assert(
      fc.property(between(5, 120), poles, between(0, 9.9), (lineHz, count, slipPct) => {
        const speed = synchronousSpeedRpm(lineHz, count) * (1 - slipPct / 100);
        expect(polesOfNameplateSpeed(speed, lineHz)).toBe(count);
        expect(inductionMotor(lineHz, count, speed).slipPct).toBeCloseTo(slipPct, 6);
      }),
    );
  });

  it("of a speed that no pole number has are not guessed at", () => {
    expect(polesOfNameplateSpeed(3100, 50)).toBeNull();
    expect(polesOfNameplateSpeed(1200, 50)).toBeNull();
    expect(polesOfNameplateSpeed(1200, 50, 20)).toBe(4);
    expect(() => inductionMotor(50, 4, 1501)).toThrow(/synchronous/);
    expect(() => synchronousSpeedRpm(50, 3)).toThrow(/even/);
  });
});

describe("gears", () => {
  it("mesh alike on both shafts, and meet again after the least common multiple of teeth", () => {
    fc.assert(
      fc.property(teeth, teeth, rpm, (driving, driven, speed) => {
        const pair = gearPair(driving, driven, speed);
        const turnedBack = gearPair(driven, driving, pair.drivenRpm);
        expect(turnedBack.toothMeshHz / pair.toothMeshHz).toBeCloseTo(1, 12);
        expect(turnedBack.huntingToothHz / pair.huntingToothHz).toBeCloseTo(1, 12);
        expect((pair.huntingToothHz * pair.drivingTurnsToRepeat) / (speed / 60)).toBeCloseTo(1, 9);
        expect((driving * pair.drivingTurnsToRepeat) % driven).toBe(0);
        expect(driving % pair.assemblyPhases).toBe(0);
        expect(driven % pair.assemblyPhases).toBe(0);
      }),
    );
  });
});

describe("the band of interest", () => {
  it("reaches the highest of what is on the shaft", () => {
    const bearings = highestFrequencyOfInterestHz(3000, { rollingBearing: true });
    expect(bearings).toEqual({ lowest: 2000, highest: 3500 });
    expect(highestFrequencyOfInterestHz(3000, { rollingBearing: true, blades: 7 })).toEqual(bearings);
    expect(highestFrequencyOfInterestHz(3000, { rollingBearing: true, gearTeeth: 60 }).highest).toBe(
      60 * 50 * USUAL_MULTIPLES.toothMesh.highest,
    );
    expect(lowestFrequencyOfInterestHz(600)).toBe(10);
    expect(lowestFrequencyOfInterestHz(600, 0.4)).toBeCloseTo(4, 12);
    expect(() => highestFrequencyOfInterestHz(3000, {})).toThrow(/must name/);
  });
});

describe("spectra and their records", () => {
  it("take as long as one line spacing asks for, and turn back into the turns they were made for", () => {
    fc.assert(
      fc.property(between(1, 40_000), fc.integer({ min: 1, max: 25_600 }), rpm, (top, lines, speed) => {
        const { lineSpacingHz, recordLengthS, samples, sampleRateHz } = spectrumRecord(top, lines);
        expect(lineSpacingHz * recordLengthS).toBeCloseTo(1, 12);
        expect(samples / sampleRateHz / recordLengthS).toBeCloseTo(1, 12);
        const turns = turnsInRecord(speed, recordLengthS);
        expect(recordLengthForTurnsS(speed, turns) / recordLengthS).toBeCloseTo(1, 12);
      }),
    );
  });

  it("smear by just the lines that the greatest change of speed allows, and more at a higher order", () => {
    fc.assert(
      fc.property(between(0.3, 200), rpm, between(0.01, 100), between(0.1, 10), (order, speed, spacing, lines) => {
        const change = greatestSpeedChangePct(order, speed, spacing, lines);
        expect(smearLines(order, speed, change, spacing) / lines).toBeCloseTo(1, 9);
        expect(smearLines(2 * order, speed, change, spacing) / lines).toBeCloseTo(2, 9);
      }),
    );
    expect(smearLines(50, 1500, 0, 1)).toBe(0);
  });

  it("have the least lines that keep two frequencies apart, or none", () => {
    fc.assert(
      fc.property(between(10, 20_000), between(0.01, 100), between(1, 10), (top, apart, linesApart) => {
        const lines = leastLines(top, apart, linesApart);
        const apartOf = (count: number) => apart / (top / count);
        const fewer = USUAL_LINES.filter((count) => lines === null || count < lines);
        for (const count of fewer) expect(apartOf(count)).toBeLessThan(linesApart * (1 + 1e-9));
        if (lines !== null) expect(apartOf(lines)).toBeGreaterThan(linesApart * (1 - 1e-9));
      }),
    );
  });

  it("run the longer the more averages and the less overlap; one average is one record after settling", () => {
    expect(shortestRunS(3, 0.8, 1, 50)).toBeCloseTo(3.8, 12);
    fc.assert(
      fc.property(between(0.1, 60), fc.integer({ min: 2, max: 64 }), between(0, 90), (length, averages, overlap) => {
        const run = shortestRunS(0, length, averages, overlap);
        expect(shortestRunS(0, length, averages + 1, overlap)).toBeGreaterThan(run);
        expect(shortestRunS(0, length, averages, overlap + 5)).toBeLessThan(run);
        expect(run).toBeLessThanOrEqual(length * averages * (1 + 1e-12));
      }),
    );
  });
});
