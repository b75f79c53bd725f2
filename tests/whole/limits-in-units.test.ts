import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Outcome } from "../../src/base/index.js";
import { shippedRulebook } from "../tools/shipped.js";
import { surveyOfCsv } from "../tools/survey-of.js";
import { screenWith } from "../tools/with-deviations.js";

/** A row that passes all nine rules by the usual values, heading by heading. */
const GOOD: Readonly<Record<string, string>> = {
  "Point ID": "A",
  "Shaft speed": "1485 r/min",
  "Variable speed": "no",
  Surface: "cast steel, bare",
  "Flat dia.": "40 mm",
  Mounting: "tapped hole",
  "Hole depth": "20 mm",
  "Thread depth": "14 mm",
  Torque: "8 N·m",
  "Supply voltage": "24 V",
  "Supply kind": "DC",
};
const BONDED = { Mounting: "adhesive pad", "Cure time": "60 min" };

const FAIL_BELOW = ["fail", "pass", "pass"] as const;
const FAIL_ABOVE = ["pass", "pass", "fail"] as const;
const FAIL_UP_TO = ["fail", "fail", "pass"] as const;

/** The limits of the nine rules in the units of surveys, as exact decimals; what is said just below, at and just above. */
const LIMITS: readonly {
  readonly rule: string;
  readonly heading: string;
  readonly says: readonly [below: Outcome, at: Outcome, above: Outcome];
  readonly at: Readonly<Record<string, number>>;
  readonly with?: Readonly<Record<string, string>>;
}[] = [
  {
    rule: "min-speed",
    heading: "Shaft speed",
    says: FAIL_UP_TO,
    at: { "r/min": 600, Hz: 10, "r/s": 10, "r/h": 36_000 },
  },
  {
    rule: "seat-diameter",
    heading: "Flat dia.",
    says: FAIL_BELOW,
    at: { mm: 30, cm: 3, m: 0.03, dm: 0.3, µm: 30_000 },
  },
  { rule: "hole-depth", heading: "Hole depth", says: FAIL_BELOW, at: { mm: 15, cm: 1.5, m: 0.015, µm: 15_000 } },
  { rule: "thread-depth", heading: "Thread depth", says: FAIL_BELOW, at: { mm: 9, cm: 0.9, m: 0.009, dm: 0.09 } },
  {
    rule: "tightening-torque",
    heading: "Torque",
    says: FAIL_ABOVE,
    at: { N·m: 10, N·cm: 1000, cN·m: 1000, daN·m: 1, N·mm: 10_000 },
  },
  { rule: "supply-voltage", heading: "Supply voltage", says: FAIL_BELOW, at: { V: 20.4, mV: 20_400, kV: 0.0204 } },
  { rule: "supply-voltage", heading: "Supply voltage", says: FAIL_ABOVE, at: { V: 28.8, mV: 28_800, kV: 0.0288 } },
  {
    rule: "adhesive-cure",
    heading: "Cure time",
    says: FAIL_BELOW,
    at: { min: 15, s: 900, h: 0.25 },
    with: BONDED,
  },
];

const STEP = 1e-7;
const cases = LIMITS.flatMap(({ at, ...limit }) =>
  Object.entries(at).map(([unit, value]) => ({ ...limit, unit, value, name: `${limit.rule} at ${value} ${unit}` })),
);

/** What each rule says of one row. */
async function said(row: Readonly<Record<string, string>>): Promise<ReadonlyMap<string, Outcome>> {
  const survey = await surveyOfCsv(`${Object.keys(row).join(";")}\n${Object.values(row).join(";")}\n`);
  const { points } = screenWith(await shippedRulebook(), [survey], null, { allFindings: true });
  expect(points).toHaveLength(1);
  return new Map(points[0]?.findings.map(({ rule, outcome }) => [rule, outcome]));
}

/** The row with one value in a unit, beside the number or in the heading. */
function rowWith(
  heading: string,
  number: string,
  unit: string,
  inHeading: boolean,
  more: Readonly<Record<string, string>> = {},
): Readonly<Record<string, string>> {
  const { [heading]: _, ...others } = { ...GOOD, ...more };
  return inHeading ? { ...others, [`${heading} (${unit})`]: number } : { ...others, [heading]: `${number} ${unit}` };
}

it("is passed by the row that the others are made of, by either method", async () => {
  for (const [row, other] of [
    [GOOD, "adhesive-cure"],
    [{ ...GOOD, ...BONDED }, "hole-depth"],
  ] as const) {
    const outcomes = await said(row);
    expect(outcomes.size).toBe(9);
    for (const [rule, outcome] of outcomes)
      if (outcome !== "not-applicable") expect([rule, outcome]).toEqual([rule, "pass"]);
    expect(outcomes.get(other)).toBe("not-applicable");
  }
});

describe.each(cases)("$name", ({ rule, heading, says, unit, value, with: more }) => {
  it.each([false, true])("is decided at the limit and next to it (unit in the heading: %s)", async (inHeading) => {
    const numbers = [-STEP, 0, STEP].map((step) => (value + step).toFixed(7));
    const found = await Promise.all(
      numbers.map(async (number) => (await said(rowWith(heading, number, unit, inHeading, more))).get(rule)),
    );
    expect(found).toEqual(says);
  });
});

/** Limits that are no exact decimal in inches and foot-pounds: six digits on either side of them. */
it.each<[rule: string, heading: string, unit: string, below: string, above: string, says: readonly Outcome[]]>([
  // 1.181102 in is 29.9999908 mm, 1.181103 in is 30.0000162 mm; and so on.
  ["seat-diameter", "Flat dia.", "in", "1.181102", "1.181103", ["fail", "pass"]],
  ["hole-depth", "Hole depth", "in", "0.590551", "0.590552", ["fail", "pass"]],
  ["thread-depth", "Thread depth", "in", "0.354330", "0.354331", ["fail", "pass"]],
  // 7.375621 ft·lbf is 9.99999933 N·m, 7.375622 ft·lbf is 10.0000007 N·m.
  ["tightening-torque", "Torque", "ft·lbf", "7.375621", "7.375622", ["pass", "fail"]],
  ["tightening-torque", "Torque", "in·lbf", "88.507457", "88.507458", ["pass", "fail"]],
])("%s is decided on both sides of its limit in %s %s", async (rule, heading, unit, below, above, says) => {
  for (const inHeading of [false, true]) {
    const found = await Promise.all(
      [below, above].map(async (number) => (await said(rowWith(heading, number, unit, inHeading))).get(rule)),
    );
    expect(found).toEqual(says);
  }
});

/** Two units of which one is so many times the other, exactly; from and to in ten-thousandths of the first. */
const EXACT: readonly (readonly [
  heading: string,
  unit: string,
  times: bigint,
  per: bigint,
  other: string,
  ends: readonly [number, number],
])[] = [
  ["Flat dia.", "in", 254n, 10n, "mm", [11_000, 12_500]],
  ["Hole depth", "in", 254n, 10n, "mm", [5_500, 6_300]],
  ["Thread depth", "in", 254n, 10n, "mm", [3_200, 3_900]],
  ["Torque", "N·m", 100n, 1n, "N·cm", [95_000, 105_000]],
  ["Shaft speed", "Hz", 60n, 1n, "r/min", [95_000, 105_000]],
  ["Supply voltage", "V", 1000n, 1n, "mV", [200_000, 292_000]],
];

it("says the same of a number and of its exact conversion", async () => {
  const number = fc.constantFrom(...EXACT).chain(([heading, unit, times, per, other, [min, max]]) =>
    fc.record({ value: fc.integer({ min, max }), inHeading: fc.boolean() }).map(({ value, inHeading }) => {
      // In hundred-thousandths of the other unit, so that nothing is rounded.
      const converted = (BigInt(value) * times * 10n) / per;
      return {
        heading,
        inHeading,
        one: [decimal(BigInt(value), 4), unit],
        two: [decimal(converted, 5), other],
      } as const;
    }),
  );
  await fc.assert(
    fc.asyncProperty(number, async ({ heading, inHeading, one, two }) => {
      const [first, second] = await Promise.all(
        [one, two].map(([digits, unit]) => said(rowWith(heading, digits, unit, inHeading))),
      );
      expect([one, two, second]).toEqual([one, two, first]);
    }),
    { numRuns: 60 },
  );
});

function decimal(value: bigint, places: number): string {
  const digits = value.toString().padStart(places + 1, "0");
  return `${digits.slice(0, -places)}.${digits.slice(-places)}`;
}
