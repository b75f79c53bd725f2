import { describe, expect, it } from "vitest";
import type { FactState } from "../../src/facts/index.js";
import type { Finding } from "../../src/screening/index.js";
import { known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";

const rulebook = await shippedRulebook();

function of(row: Readonly<Record<string, FactState>>, rule: string): Finding {
  const [point] = screenRows(rulebook, [surveyOf([row])], { set: "full", allFindings: true }).points;
  const finding = point?.findings.find((one) => one.rule === rule);
  if (!finding) throw new Error(`nothing is said of ${rule}`);
  return finding;
}

describe("what is said of the supply", () => {
  const MODEL = { sensor_model: known("example-slow-shaft"), sensors_on_supply: known(30), supply_rating: known(2000) };

  it("names the current of the model where the survey states none", () => {
    expect(of(MODEL, "supply-load").message).toBe("30 sensors of 80 mA load the supply (2000 mA) to 120 %");
    expect(of(MODEL, "supply-start").message).toBe(
      "at the start 30 sensors of 400 mA load the supply (2000 mA) to 600 %",
    );
  });

  it("names the current of the survey where it states one", () => {
    const stated = { ...MODEL, sensor_current: known(100), starting_current: known(90) };
    expect(of(stated, "supply-load").message).toContain("30 sensors of 100 mA load");
    expect(of(stated, "supply-start").message).toContain("30 sensors of 90 mA load");
  });

  it("says that a supply set as high as a long, thin cable wants destroys the sensor", () => {
    // 2 × 0.9 km × 40.1 Ω/km × (1 + 0.00393 × 20) at 0.2 A: 15.57 V are lost, so that 35.98 V would be wanted for 20.4 V.
    const cable = {
      sensor_model: known("baseline"),
      supply_voltage_min: known(24),
      sensor_current: known(200),
      conductor_class: known("flexible"),
      conductor_size: known(0.5),
      ambient_max: known(40),
      cable_length: known(900),
    };
    expect(of(cable, "voltage-at-point").changes).toContainEqual(
      expect.objectContaining({
        fact: "supply_voltage_min",
        to: 36,
        breaks: ["lowest-supply-voltage"],
      }),
    );
  });

  it("adds up the currents of the models of rows that state none, and those of rows that state one", () => {
    const row = { sensor_model: known("example-slow-shaft"), supply_name: known("PSU 1"), supply_rating: known(200) };
    const rows = [row, { ...row, sensor_current: unknown("missing") }, { ...row, sensor_current: known(100) }];
    const { screening } = screenRows(rulebook, [surveyOf(rows)], { set: "full" });
    // Twice the 80 mA of the model, and 100 mA as stated.
    expect(screening.head.groups[0]?.findings[0]).toMatchObject({
      rule: "supply-current",
      outcome: "fail",
      facts: [{ fact: "group.supply_current", lowest: 260, highest: 260 }, { fact: "group.supply_rating" }],
    });
  });
});
