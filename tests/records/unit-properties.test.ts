import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { convert, type Dimension, dimensionsSpelled, unitOf, unitSpelled } from "../../src/base/index.js";
import { factOf } from "../../src/facts/index.js";
import { plainFacts, surveyOfCsv } from "../tools/survey-of.js";

/** Units of the fields that the rules judge, a heading of each field, and a range that can be meant in its own unit. */
const FIELDS: readonly (readonly [
  fact: string,
  heading: string,
  units: readonly string[],
  least: number,
  most: number,
])[] = [
  ["hole_depth", "Hole depth", ["mm", "cm", "m", "in", "ft", "mil", "µm", "dm"], 5, 100],
  ["thread_depth", "Thread depth", ["mm", "cm", "in", "dm"], 4, 80],
  ["flat_diameter", "Flat dia.", ["mm", "cm", "in", "ft"], 8, 300],
  ["nominal_speed", "Shaft speed", ["r/min", "r/s", "Hz", "rad/s", "°/s", "r/h"], 100, 5_000],
  [
    "target_torque",
    "Torque",
    ["N·m", "daN·m", "N·cm", "cN·m", "N·mm", "in·lbf", "ft·lbf", "kgf·m", "kgf·cm", "ozf·in"],
    1,
    40,
  ],
  ["cure_time", "Cure time", ["min", "s", "h", "d", "week"], 5, 5_000],
  ["supply_voltage", "Supply voltage", ["V", "mV", "kV"], 6, 400],
  ["surface_temperature", "Surface temperature", ["°C", "°F", "K"], -20, 150],
];

const anyField = fc.constantFrom(...FIELDS);

describe("a value in any unit of its quantity", () => {
  it("reads equal in the cell, in the heading and in the row of units, and comes back from its conversion", async () => {
    await fc.assert(
      fc.asyncProperty(
        anyField.chain(([fact, heading, units, least, most]) =>
          fc.tuple(
            fc.constant([fact, heading] as const),
            fc.constantFrom(...units),
            fc.integer({ min: least, max: most }),
          ),
        ),
        async ([[fact, heading], unit, wanted]) => {
          const field = factOf(fact);
          const dimension = field.dimension as Dimension;
          const value = Number(convert(wanted, field.unit ?? "", unit, dimension).toPrecision(12));
          // Plain digits: the way in which programs write powers of ten is no way in which people write values.
          const text = value.toFixed(12).replace(/0+$/, "").replace(/\.$/, "");
          const surveys = [
            `Point;${heading}\nA;${text} ${unit}\n`,
            `Point;${heading} (${unit})\nA;${text}\n`,
            `Point;${heading} [${unit}];Photo\nA;${text};x\n`,
            `Point;${heading};Power\n;${unit};kW\nA;${text};75\n`,
          ];
          for (const survey of surveys) {
            const [row] = plainFacts(await surveyOfCsv(survey), fact);
            expect([survey, Number(row?.[0]).toPrecision(9)]).toEqual([survey, wanted.toPrecision(9)]);
          }
        },
      ),
      { numRuns: 120 },
    );
  });

  it("is spelled by its id and by no unit of the same quantity beside it", () => {
    for (const [fact, , units] of FIELDS) {
      const dimension = factOf(fact).dimension as Dimension;
      for (const unit of units) {
        expect(unitSpelled(unit, dimension)).toBe(unitOf(unit, dimension));
        expect(dimensionsSpelled(unit)).toContain(dimension);
      }
    }
  });

  it("is the same torque in every way of writing inch-pounds and foot-pounds", () => {
    const inch =
      "in-lb|in-lbs|in lb|in·lb|inlb|in.lbs|lb-in|lbf-in|lbf·in|inch-pounds|inch pounds|inch-pound|pound-inches|in lbf";
    const foot =
      "ft-lb|ft-lbs|ft lb|ft·lb|ftlb|lb-ft|lbf-ft|lb.ft|foot-pounds|foot pounds|foot-pound|pound-feet|ft lbf|lbs·ft";
    for (const text of inch.split("|")) expect([text, unitSpelled(text, "torque")?.id]).toEqual([text, "in·lbf"]);
    for (const text of foot.split("|")) expect([text, unitSpelled(text, "torque")?.id]).toEqual([text, "ft·lbf"]);
  });
});

describe("the numbers of a column in the four languages", () => {
  const LANGUAGES = [
    { headings: "Point ID;Machine;Speed;Hole depth", decimal: ".", group: "," },
    { headings: "Messstelle;Maschine;Drehzahl;Bohrtiefe", decimal: ",", group: "." },
    { headings: "Punto;Máquina;Velocidad;Prof. taladro", decimal: ",", group: "." },
    { headings: "Repère point;Machine;Vitesse;Prof. perçage", decimal: ",", group: "\u202f" },
    { headings: "Punto;Máquina;Velocidad;Prof. taladro", decimal: ".", group: "," },
  ] as const;

  it("come back as they were", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...LANGUAGES),
        fc.array(fc.tuple(fc.integer({ min: 300, max: 3_600 }), fc.integer({ min: 60, max: 800 })), {
          minLength: 3,
          maxLength: 6,
        }),
        fc.boolean(),
        async ({ headings, decimal, group }, values, grouped) => {
          const rows = values.map(([speed, tenths], i) => {
            const whole = grouped ? String(speed).replace(/\B(?=(?:\d{3})+$)/g, group) : String(speed);
            return `P${i};Pump;${whole};${(tenths / 10).toFixed(1).replace(".", decimal)}`;
          });
          const survey = await surveyOfCsv(`${headings}\n${rows.join("\n")}\n`);
          const wanted = values.map(([speed, tenths]) => [speed, tenths / 10]);
          expect([rows, plainFacts(survey, "nominal_speed", "hole_depth")]).toEqual([rows, wanted]);
        },
      ),
      { numRuns: 60 },
    );
  });
});
