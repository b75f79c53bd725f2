import { describe, expect, it } from "vitest";
import type { ColumnGuide, SiteStatements } from "../../src/facts/index.js";
import { readSiteFile } from "../../src/rulebook/index.js";
import { guideOf } from "../tools/guide.js";
import { shippedRulebook, shippedWords } from "../tools/shipped.js";
import { plainFact, surveyOfCsv } from "../tools/survey-of.js";

const { models } = await shippedRulebook();
const { ways = new Map() } = await shippedWords();

interface Read {
  readonly value: unknown;
  readonly accuracy: number | undefined;
  readonly assumed: string | undefined;
}

/** One fact as it is read from one cell under one heading. */
async function read(
  heading: string,
  cell: string,
  fact: string,
  more: { guide?: ColumnGuide; site?: SiteStatements; beside?: readonly [string, string] } = {},
): Promise<Read> {
  const [otherHeading = "Machine", otherCell = "Pump"] = more.beside ?? [];
  const text = `Point ID;${otherHeading};${heading}\nP-1;${otherCell};${cell}\n`;
  const survey = await surveyOfCsv(text, more.site ?? null, more.guide ?? null);
  const state = survey.records[0]?.facts.get(fact);
  return {
    value: plainFact(state),
    accuracy: state?.known ? state.accuracy : undefined,
    assumed: state?.known ? state.assumed : undefined,
  };
}

const stated = (words: string): string => `± ${words} as stated for its column`;

describe("an accuracy in a heading", () => {
  it.each([
    ["Hole depth [mm] ±0.5", "15", "hole_depth", [14.5, 15.5], 0.5, stated("0.5 mm")],
    ["Hole depth (mm) +/- 0.5 mm", "15", "hole_depth", [14.5, 15.5], 0.5, stated("0.5 mm")],
    ["Hole depth (± 2 %) mm", "15", "hole_depth", [14.7, 15.3], 0.3, stated("2 % of the value")],
    ["Bohrtiefe (mm, ±0,5)", "15,2", "hole_depth", [14.7, 15.7], 0.5, stated("0.5 mm")],
    ["Hole depth [in] ±0.02", "0.6", "hole_depth", [14.732, 15.748], 0.508, stated("0.508 mm")],
    ["Hole depth [mm] ±0.02 in", "15", "hole_depth", [14.492, 15.508], 0.508, stated("0.508 mm")],
    ["Surface temperature [°F] ±9", "212", "surface_temperature", [95, 105], 5, stated("5 °C")],
    ["Speed (rpm, ±10)", "900-1500", "lowest_speed", [890, 910], 10, stated("10 r/min")],
    ["Speed (rpm, ±10)", "900-1500", "highest_speed", [1490, 1510], 10, stated("10 r/min")],
    ["Thread depth [mm] ±5", "3", "thread_depth", [0, 8], 5, stated("5 mm")],
    ["Supply voltage (V, ±1)", "24 DC", "supply_voltage", [23, 25], 1, stated("1 V")],
  ] as const)("%s over %s", async (heading, cell, fact, value, accuracy, assumed) => {
    expect(await read(heading, cell, fact)).toEqual({ value, accuracy, assumed });
  });

  it("is said beside what else was taken for granted", async () => {
    const { assumed } = await read("Hole depth ±0.5", "15", "hole_depth");
    expect(assumed).toBe(`no unit stated, taken as mm; ${stated("0.5 mm")}`);
  });

  it("yields to the accuracy of a cell", async () => {
    expect(await read("Hole depth [mm] ±0.5", "15 ± 0.1", "hole_depth")).toEqual({
      value: [14.9, 15.1],
      accuracy: 0.1,
      assumed: undefined,
    });
  });

  it.each([
    ["Profondeur trou [mm] ±1.500", "15 mm", "can be read in two ways"],
    ["Hole depth [mm] ±0.5 V", "15", "which is none of hole depth"],
    ["Surface temperature [°C] ± 2 %", "60", "a temperature has no percent"],
  ])("leaves what it cannot mean in doubt, rather than exact (%s)", async (heading, cell, why) => {
    const survey = await surveyOfCsv(`Point ID;Machine;${heading}\nP-1;Pump;${cell}\n`);
    const [, , column] = survey.columns;
    expect(plainFact(survey.records[0]?.facts.get(column?.facts[0] ?? ""))).toBe("(doubtful)");
    expect(survey.problems.map(({ text }) => text).join("; ")).toContain(why);
    expect(column?.why).toContain(why);
  });

  it.each([
    ["Hole depth 15 ± 0.5 mm", "14,9", "hole_depth"],
    ["Supply voltage 24 V ±10 %", "24 V DC", "supply_voltage"],
    ["Number of blades ±1", "7", "blade_count"],
  ])("is none behind a number, and none of a count (%s)", async (heading, cell, fact) => {
    const { value, accuracy } = await read(heading, cell, fact);
    expect(accuracy).toBeUndefined();
    expect(Array.isArray(value)).toBe(false);
  });
});

describe("a way of measuring", () => {
  const caliper = "± 0.05 mm of a caliper";

  it.each([
    ["Hole depth (mm, caliper)", "15", "hole_depth", [14.95, 15.05], caliper],
    ["Bohrtiefe mit Messschieber [mm]", "15", "hole_depth", [14.95, 15.05], caliper],
    ["Bohrtiefe [mm]", "14,9 (Messschieber)", "hole_depth", [14.85, 14.95], caliper],
    ["Bohrtiefe [mm]", "14,9 (mit Stahllineal)", "hole_depth", [14.4, 15.4], "± 0.5 mm of a steel rule"],
    ["Torque [Nm]", "10 (clé dynamométrique)", "target_torque", [9.4, 10.6], "± 6 % of the value of a torque wrench"],
    [
      "Speed [rpm], stroboscope",
      "1000",
      "nominal_speed",
      [994, 1006],
      "± (1 r/min + 0.5 % of the value) of a stroboscope",
    ],
  ] as const)("is named by %s over %s", async (heading, cell, fact, value, assumed) => {
    expect(await read(heading, cell, fact)).toMatchObject({ value, assumed });
  });

  it("that a cell names comes before the one of the heading, and is no remark that is dropped", async () => {
    const survey = await surveyOfCsv("Point ID;Machine;Hole depth (mm, steel rule)\nP-1;Pump;15 (caliper)\n");
    expect(plainFact(survey.records[0]?.facts.get("hole_depth"))).toEqual([14.95, 15.05]);
    expect(survey.problems.filter(({ code }) => code === "dropped-remark")).toEqual([]);
  });

  it.each([
    ["Hole depth [mm]", "15 (torque wrench)", "hole_depth", 15],
    ["Hole depth [mm], torque wrench", "15", "hole_depth", 15],
    ["Nameplate speed [rpm]", "1480", "nominal_speed", 1480],
    ["Speed [rpm]", "1480 (nameplate)", "nominal_speed", 1480],
  ] as const)("counts for nothing where it cannot have measured (%s, %s)", async (heading, cell, fact, value) => {
    expect(await read(heading, cell, fact)).toMatchObject({ value, accuracy: undefined });
  });

  it("is named by a column file and by the option, which come before the heading", async () => {
    const file = guideOf(
      'columns: [{ heading: "Hole depth", fact: hole_depth, unit: "mm", measuredBy: depth-gauge }]',
      {},
      ways,
    );
    const one = await read("Hole depth (mm, steel rule)", "15", "hole_depth", { guide: file });
    expect(one).toEqual({ value: [14.9, 15.1], accuracy: 0.1, assumed: "± 0.1 mm of a depth gauge" });
    const option = guideOf("", { column: ["Loch=hole_depth mm ±0.2"] });
    expect(await read("Loch ±1", "15", "hole_depth", { guide: option })).toMatchObject({
      value: [14.8, 15.2],
      accuracy: 0.2,
    });
    const exact = guideOf('columns: [{ heading: "Hole depth", fact: hole_depth, accuracy: "0 mm" }]', {}, ways);
    expect(await read("Hole depth [mm] ±1", "15", "hole_depth", { guide: exact })).toMatchObject({
      value: 15,
      accuracy: 0,
    });
  });
});

describe("a way of measuring of the site", () => {
  function site(text: string): SiteStatements {
    const reading = readSiteFile({ path: "site.yaml", text }, models, ways);
    if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
    return reading.statements;
  }
  const named = site(`states: { supply_voltage: 24 V }
measuredBy: { hole_depth: steel-rule, supply_voltage: multimeter }
machineTypes: { pump: { measuredBy: { hole_depth: depth-gauge } } }
machines: { P-7: { measuredBy: { hole_depth: caliper } } }
`);

  it.each([
    ["Machine type", "fan", [14.5, 15.5], "± 0.5 mm of a steel rule"],
    ["Machine type", "pump", [14.9, 15.1], "± 0.1 mm of a depth gauge"],
    ["Asset tag", "P-7", [14.95, 15.05], "± 0.05 mm of a caliper"],
  ] as const)("holds for its machines, the narrower one first (%s %s)", async (...row) => {
    const [heading, cell, value, assumed] = row;
    const beside = [heading, cell] as const;
    expect(await read("Hole depth [mm]", "15", "hole_depth", { site: named, beside })).toMatchObject({
      value,
      assumed,
    });
  });

  it("yields to heading and cell, and widens what the site states itself", async () => {
    expect(await read("Hole depth [mm] ±0.2", "15", "hole_depth", { site: named })).toMatchObject({
      value: [14.8, 15.2],
    });
    expect(await read("Hole depth [mm]", "15 ± 0.3", "hole_depth", { site: named })).toMatchObject({
      value: [14.7, 15.3],
    });
    expect(await read("Hole depth [mm]", "15", "supply_voltage", { site: named })).toMatchObject({
      value: [23.83, 24.17],
    });
  });
});

describe("two measurements of one number", () => {
  it("agree where their accuracies let them, and are then known no better than both", async () => {
    const rows = "P-1;15;15.3\nP-2;15;16\nP-3;15;15\n";
    const survey = await surveyOfCsv(`Point ID;Hole depth (mm, caliper);Hole depth [mm] ±0.5\n${rows}`);
    const facts = survey.records.map(({ facts: states }) => states.get("hole_depth"));
    expect(facts.map(plainFact)).toEqual([[14.8, 15.8], "(conflicting)", [14.5, 15.5]]);
    const [first] = facts;
    expect(first?.known && [first.accuracy, first.assumed]).toEqual([
      0.5,
      `± 0.05 mm of a caliper; ${stated("0.5 mm")}`,
    ]);
  });
});
