import { describe, expect, it } from "vitest";
import type { KnownFact } from "../../src/facts/index.js";
import { known, surveyOf, unknown } from "../tools/make-record.js";
import { checkRows, checkSurveys, done, proposal, type Row, turnedIn } from "./made.js";

const stated = (value: string, line: number): KnownFact => ({
  known: true,
  value,
  origin: { kind: "statement", file: "site.yaml", line },
});
const assumedAbsent: KnownFact = { ...known("absent"), assumed: "not mentioned, taken as absent" };

describe("the word of the proposal", () => {
  it("counts where the built cell is empty, and shows the cell of the proposal with its file", async () => {
    const weak = proposal("P1", { flat_diameter: known(20, "M8") });
    const { of } = await checkRows(
      [weak],
      [done("P1", { flat_diameter: unknown("missing"), thread_depth: known(5, "D2") })],
    );
    const [finding] = of("P1").turned.flatMap(({ now }) => now ?? []);
    expect(of("P1").carried).toContain("flat_diameter");
    expect(finding?.facts[0]).toMatchObject({ fact: "thread_depth", cells: [{ sheet: "S", cell: "D2" }] });
    const moved = await checkRows([proposal("P1")], [done("P1", { sensor_model: known("SLOW120") })]);
    const torque = moved.of("P1").turned.find(({ rule }) => rule === "hole-depth")?.now;
    expect(torque?.facts[0]).toMatchObject({ cells: [{ sheet: "S", cell: "A1", file: "proposed.xlsx" }] });
  });

  it("never stands in for a built cell that cannot be read", async () => {
    const { of } = await checkRows([proposal("P1")], [done("P1", { flat_diameter: unknown("unreadable") })]);
    expect(turnedIn(of("P1"))).toEqual(["seat-diameter - > undecided"]);
    expect(of("P1").carried).not.toContain("flat_diameter");
  });

  it("counts with its own doubt", async () => {
    const { of } = await checkRows([proposal("P1", { flat_diameter: unknown("doubtful") })], [done("P1")]);
    expect(of("P1")).toMatchObject({ verdictThen: "warn", verdictNow: "warn", turned: [] });
  });

  it("comes before the site's word and before what is taken as absent for not being mentioned", async () => {
    const weak = proposal("P1", { sensor_model: known("SLOW120"), surface_finish: known("painted") });
    const built = done("P1", { sensor_model: stated("baseline", 3), surface_finish: assumedAbsent });
    const { of } = await checkRows([weak], [built]);
    expect(of("P1").differences).toEqual([]);
    expect(of("P1").carried).toEqual(expect.arrayContaining(["sensor_model", "surface_finish"]));
    expect(turnedIn(of("P1"))).toEqual([]);
    expect(of("P1").verdictThen).toBe("fail");
  });

  it("is the site's where the proposal says nothing either", async () => {
    const plan = proposal("P1", { supply_kind: stated("dc", 4) });
    const { of } = await checkRows([plan], [done("P1", { supply_kind: stated("dc", 4) })]);
    expect(of("P1")).toMatchObject({ verdictNow: "pass" });
  });

  it("leaves a point of a survey without sensor models to the baseline, beside one that names them", async () => {
    const without = surveyOf([proposal("P1")], "one.xlsx");
    const naming = surveyOf([proposal("P2", { sensor_model: known("baseline") })], "two.xlsx");
    const built = surveyOf([done("P1"), done("P2")], "built.csv");
    const { of } = await checkSurveys([without, naming], [built]);
    expect([of("P1").verdictNow, of("P2").verdictNow]).toEqual(["pass", "pass"]);
  });
});

describe("a changed method or place", () => {
  const whole: Row = {
    asset_tag: known("P-1"),
    component: known("pump"),
    bearing_position: known("drive-end"),
    direction: known("horizontal"),
  };

  it.each([
    ["mounted_on", "casing", ["flat_diameter", "hole_depth", "thread_depth", "surface_material"], ["nominal_speed"]],
    ["direction", "vertical", ["flat_diameter", "hole_depth"], ["nominal_speed", "variable_speed"]],
    ["component", "motor", ["nominal_speed", "flat_diameter", "hole_depth"], ["supply_voltage", "mounting_method"]],
    ["bearing_position", "non-drive-end", ["nominal_speed", "flat_diameter"], ["supply_voltage"]],
    ["asset_tag", "P-2", ["variable_speed", "nominal_speed", "flat_diameter"], ["supply_voltage"]],
    ["mounting_method", "adhesive-pad", ["hole_depth", "thread_depth", "target_torque"], ["flat_diameter"]],
  ])(
    "%s needs a new verdict, and what was said of the old one is not carried over",
    async (fact, value, back, kept) => {
      const { of, summary } = await checkRows([proposal("P1", whole)], [done("P1", { [fact]: known(value, "E2") })]);
      const point = of("P1");
      expect(point.differences).toMatchObject([{ fact, needsNewVerdict: true, built: { value } }]);
      expect(point.needsNewVerdict).toBe(true);
      expect(point.notCarried).toEqual(expect.arrayContaining(back));
      expect(point.carried).toEqual(expect.arrayContaining(kept));
      expect(point.carried.filter((id) => point.notCarried.includes(id))).toEqual([]);
      expect(summary).toMatchObject({ needsNewVerdict: 1, differing: 1 });
    },
  );

  it("is no better for a speed that was surveyed at another shaft", async () => {
    const { of } = await checkRows([proposal("P1", whole)], [done("P1", { component: known("gearbox") })]);
    expect(turnedIn(of("P1"))).toContain("min-speed - > undecided");
  });

  it("that a built cell leaves open holds back as much, without being a difference", async () => {
    const { of } = await checkRows([proposal("P1", whole)], [done("P1", { mounting_method: unknown("doubtful") })]);
    expect(of("P1").differences).toEqual([]);
    expect(of("P1").notCarried).toContain("hole_depth");
    expect(turnedIn(of("P1"))).toEqual(expect.arrayContaining(["hole-depth - > undecided"]));
  });

  it("leaves alone what the built survey states itself", async () => {
    const built = done("P1", {
      mounted_on: known("casing"),
      flat_diameter: known(40),
      surface_material: known("cast-steel"),
    });
    const { of } = await checkRows([proposal("P1", whole)], [built]);
    expect(of("P1").notCarried).not.toContain("flat_diameter");
    expect(of("P1").differences.map(({ fact }) => fact)).toEqual(["mounted_on", "surface_material", "flat_diameter"]);
  });
});

describe("facts that only make sense together", () => {
  it("mix no speeds of two surveys that disagree", async () => {
    const plan = proposal("P1", {
      nominal_speed: known(1485),
      lowest_speed: known(700),
      variable_speed: known("yes"),
      speed_reference: known("pulses"),
    });
    const { of } = await checkRows([plan], [done("P1", { nominal_speed: known(590) })]);
    expect(of("P1").notCarried).toEqual(["lowest_speed"]);
    expect(turnedIn(of("P1"))).toContain("min-speed - > fail");
  });
});
