import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { SURVEY_FACTS } from "../../src/facts/index.js";
import { readExample } from "../tools/read-example.js";
import { shippedRulebook } from "../tools/shipped.js";
import { plainFacts, surveyOfCsv } from "../tools/survey-of.js";

const { words } = await shippedRulebook();

function read(field: string, heading: string, cell: string): unknown {
  const reading = readExample(field, { heading, cell, locale: "en", expect: {} }, words);
  if (reading === "heading not matched") throw new Error(`"${heading}" is not matched to ${field}`);
  if (!reading.ok) return reading.code;
  return reading.kind === "word" ? reading.value : reading.interval.lowest;
}

/** Words for doubt and for missing that are words, not signs or single letters. */
const UNCERTAIN = [...words.common.doubt, ...words.common.missing].filter(
  (word) => (word.match(/\p{L}/gu)?.length ?? 0) > 1 && !/[?#]/.test(word),
);
const uncertain = fc.constantFrom(...UNCERTAIN);

describe("a word of doubt beside a value", () => {
  it("leaves no number standing, wherever it stands and whatever the unit", () => {
    fc.assert(
      fc.property(
        uncertain,
        fc.integer({ min: 6, max: 90 }),
        fc.constantFrom("", " mm", "mm", " in"),
        fc.constantFrom("# @", "#, @", "# (@)", "# - @", "@ #", "@: #", "# [@]"),
        (word, number, unit, form) => {
          const cell = form.replace("#", `${number}${unit}`).replace("@", word);
          expect([cell, read("hole_depth", "Hole depth", cell)]).toEqual([cell, expect.any(String)]);
        },
      ),
      { numRuns: 1_500 },
    );
  });

  const listed = SURVEY_FACTS.filter(({ kind }) => kind === "choice").flatMap(({ id }) => {
    const { headings, choices = {} } = words.fields.get(id) ?? { headings: {} };
    const heading = headings.en?.[0] ?? "";
    return Object.entries(choices).flatMap(([choice, texts]) => texts.map((text) => ({ id, heading, choice, text })));
  });

  it("leaves no choice standing", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...listed.filter(({ choice, text }) => choice !== "unknown" && /^\p{L}{3,}$/u.test(text))),
        fc.constantFrom(
          "tbc",
          "unclear?",
          "probably",
          "unklar",
          "vermutlich",
          "por confirmar",
          "à vérifier",
          "peut-être",
        ),
        fc.constantFrom("# @", "#, @", "# (@)", "#\n@"),
        ({ id, heading, choice, text }, word, form) => {
          const cell = form.replace("#", text).replace("@", word);
          const value = read(id, heading, cell);
          expect([cell, value === choice]).toEqual([cell, false]);
        },
      ),
      { numRuns: 1_500 },
    );
  });

  it("leaves no choice standing that is said to be impossible", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...listed.filter(({ id }) => id === "mounting_method")),
        fc.constantFrom(
          "impossible",
          "not possible",
          "unmöglich",
          "nicht möglich",
          "imposible",
          "prohibido",
          "interdit",
          "verboten",
          "forbidden",
          "ausgeschlossen",
        ),
        fc.constantFrom("# @", "#: @", "# (@)", "@: #", "#\n@", "@\n#"),
        ({ id, heading, choice, text }, word, form) => {
          const cell = form.replace("#", text).replace("@", word);
          expect([cell, read(id, heading, cell) === choice]).toEqual([cell, false]);
        },
      ),
      { numRuns: 1_500 },
    );
  });

  it.each([
    ["surface_finish", "Finish", "probably painted", "doubtful"],
    ["surface_finish", "Finish", "painted (tbc)", "doubtful"],
    ["surface_finish", "Oberfläche", "lackiert, zu prüfen", "doubtful"],
    ["variable_speed", "Drive", "VFD tbc", "doubtful"],
    ["mounting_method", "Fixation", "collé, à confirmer", "doubtful"],
    ["mounting_method", "Mounting", "tapped\nhole\nimpossible", "unknown-choice"],
    ["mounting_method", "Mounting", "no drilling, glue", "adhesive-pad"],
    ["mounting_method", "Mounting", "glue, drilling impossible", "adhesive-pad"],
    ["hole_depth", "Hole depth", "16 mm deep", 16],
    ["hole_depth", "Hole depth", "16 mm (with drill point)", "doubtful"],
    ["hole_depth", "Prof. taladro", "16 (hasta la punta)", "doubtful"],
    ["hole_depth", "Prof. perçage", "16 mm (sans pointe)", 16],
    ["target_torque", "Torque", "10 (limit)", "doubtful"],
    ["supply_voltage", "Supply", "24 VDC nom.", 24],
    ["supply_voltage", "Supply", "24 VDC not available", "doubtful"],
    ["supply_voltage", "Speisespannung", "24 V nicht vorhanden", "unknown-unit"],
    ["nominal_speed", "Speed", "1480 rpm, VFD", 1480],
    ["nominal_speed", "Speed", "1480 no", "unknown-unit"],
  ])("%s under %s: %s", (field, heading, cell, value) => expect(read(field, heading, cell)).toBe(value));

  it("speaks of its own clause, or of the part that it names", async () => {
    const text = [
      "Point;Seat",
      'A;"bearing housing, cast iron, finish tbc"',
      'B;"bearing housing, cast iron, painted tbc"',
      'C;"bearing housing tbc, cast iron, machined"',
      'D;"bearing housing, cast iron, machined"',
    ].join("\n");
    expect(plainFacts(await surveyOfCsv(text), "mounted_on", "surface_material", "surface_finish")).toEqual([
      ["bearing-housing", "grey-cast-iron", "(doubtful)"],
      ["bearing-housing", "grey-cast-iron", "(doubtful)"],
      ["(doubtful)", "grey-cast-iron", "bare-machined"],
      ["bearing-housing", "grey-cast-iron", "bare-machined"],
    ]);
  });
});
