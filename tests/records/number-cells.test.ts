import { describe, expect, it } from "vitest";
import type { Locale } from "../../src/facts/index.js";
import { readExample } from "../tools/read-example.js";
import { shippedRulebook } from "../tools/shipped.js";

const { words } = await shippedRulebook();

const HEADINGS: Readonly<Record<string, string>> = {
  nominal_speed: "Speed",
  hole_depth: "Hole depth (mm)",
  flat_diameter: "Flat dia.",
  cure_time: "Cure time",
  target_torque: "Torque",
  supply_voltage: "Supply",
  surface_temperature: "Surface temperature",
};

/** What a cell gives: the ends of a range, the value (with the kind of supply), or the code of what is wrong. */
function read(field: string, cell: string, locale: Locale | null = "en", heading = HEADINGS[field] ?? ""): unknown {
  const reading = readExample(field, { heading, cell, locale, expect: {} }, words);
  if (reading === "heading not matched") throw new Error(`"${heading}" is not matched to ${field}`);
  if (!reading.ok) return reading.code;
  if (reading.kind === "word") return reading.value;
  const { lowest, highest } = reading.interval;
  const number = lowest === highest ? lowest : [lowest, highest];
  return field === "supply_voltage" ? [number, reading.supply] : number;
}

describe("a number cell never becomes another number", () => {
  it.each([
    ["hole_depth", "20/16", "several-values"],
    ["hole_depth", "18/16 mm", "several-values"],
    ["hole_depth", "15/16", "several-values"],
    ["hole_depth", "15 (N)", "wrong-dimension"],
    ["hole_depth", "15 (tbc)", "doubtful"],
    ["hole_depth", "15 [?]", "doubtful"],
    ["hole_depth", "M6 x 15", "not-a-number"],
    ["hole_depth", "6 x 15", "several-values"],
    ["hole_depth", "15(9)", "several-values"],
    ["hole_depth", "15.5.", "unknown-unit"],
    ["target_torque", "10 (kg)", "wrong-dimension"],
    ["target_torque", "10 N", "wrong-dimension"],
    ["target_torque", "1 dkNm", "unknown-unit"],
    ["nominal_speed", "from 900", "inequality"],
    ["nominal_speed", "from 900 rpm", "inequality"],
    ["nominal_speed", "up to 1500", "inequality"],
    ["nominal_speed", "900 and 1500", "several-values"],
    ["nominal_speed", "1485 1500", "unknown-unit"],
    ["nominal_speed", "1.5E3", "not-a-number"],
    ["nominal_speed", "1.5 krpm", "unknown-unit"],
    ["nominal_speed", "1500 rpm @ 50 Hz", "unknown-unit"],
    ["nominal_speed", "1500²", "unknown-unit"],
    ["nominal_speed", "1500 (mm)", "wrong-dimension"],
    ["cure_time", "15'", "wrong-dimension"],
    ["cure_time", "0:15", "ambiguous-number"],
    ["cure_time", "15 m", "wrong-dimension"],
    ["surface_temperature", "-20..60 °C", "several-values"],
  ])("%s: %s", (field, cell, wanted) => expect(read(field, cell)).toBe(wanted));

  it("leaves one sign before three digits open where no language settles it", () => {
    for (const cell of ["1.485", "1,485", "1.485 rpm", "~1.485"]) {
      expect(read("nominal_speed", cell, null)).toBe("ambiguous-number");
    }
    expect(read("nominal_speed", "1.485", "fr")).toBe("ambiguous-number");
    expect(read("nominal_speed", "1.485", "de")).toBe(1485);
    expect(read("nominal_speed", "1,485", "en")).toBe(1485);
    expect(read("nominal_speed", "1,485", "es-MX")).toBe(1485);
  });
});

describe("ordinary writing is read", () => {
  it.each([
    ["nominal_speed", "1500/min", 1500],
    ["nominal_speed", "n = 1485 rpm", 1485],
    ["nominal_speed", "between 900 and 1500 rpm", [900, 1500]],
    ["nominal_speed", "900...1500 rpm", [900, 1500]],
    ["nominal_speed", "1500 ±10", [1490, 1510]],
    ["hole_depth", "3/4 in", 19.05],
    ["hole_depth", "15 (cm)", 150],
    ["hole_depth", "min 15", 15],
    ["cure_time", "1h 30min", 90],
    ["surface_temperature", "176 ℉", 80],
    ["surface_temperature", "80 ℃", 80],
    ["surface_temperature", "80º", 80],
    ["target_torque", "88 in lbs", 9.94266495443],
    ["supply_voltage", "24 V (AC)", [24, "ac"]],
    ["supply_voltage", "24 V (DC)", [24, "dc"]],
    ["supply_voltage", "24 DC", [24, "dc"]],
    ["supply_voltage", "24 V CA", [24, "ac"]],
    ["supply_voltage", "CA 24 V", [24, "ac"]],
    ["supply_voltage", "ca. 24 V", [24, null]],
    ["supply_voltage", "24 V c.c.", [24, "dc"]],
    ["supply_voltage", "24 V Gleichspannung", [24, "dc"]],
    ["supply_voltage", "24 V alterna", [24, "ac"]],
    ["supply_voltage", "24 V, DC", [24, "dc"]],
    ["supply_voltage", "24 V DC ±10 %", [[21.6, 26.4], "dc"]],
  ])("%s: %s", (field, cell, wanted) => expect(read(field, cell)).toEqual(wanted));
});

describe("the unit of a heading is not missed", () => {
  it.each([
    ["Hole depth/in", 12.7],
    ["Hole depth (in inches)", 12.7],
    ["Hole depth (drilled) (inch)", 12.7],
    ["Hole depth inch (drilled)", 12.7],
    ["Lochtiefe / Zoll", 12.7],
    ["Hole depth (unit: inch)", 12.7],
    ["Hole depth (measured in cm)", 5],
    ["Profundidad del taladro en pulgadas", 12.7],
    ["Profondeur du trou (pouces)", 12.7],
    ["Hole depth (mm or inch)", "unknown-unit"],
    ["Hole depth mm/inch", "unknown-unit"],
    ["Hole depth (inch/mm)", "unknown-unit"],
    ["Hole depth (1/16 in)", "unknown-unit"],
    ["Hole depth (x10 mm)", "unknown-unit"],
  ])("hole depth 0.5 under %s", (heading, wanted) => expect(read("hole_depth", "0.5", "en", heading)).toBe(wanted));

  it.each([
    ["target_torque", "Torque lbf ft", 13.5581794833],
    ["target_torque", "Torque (ft lb)", 13.5581794833],
    ["target_torque", "Torque (daNm)", 100],
    ["target_torque", "Torque (mN·m)", "unknown-unit"],
    ["target_torque", "Torque (inch-pounds)", 1.12984829028],
    ["target_torque", "Torque [foot pounds]", 13.5581794833],
    ["nominal_speed", "Speed (x1000 rpm)", "unknown-unit"],
    ["nominal_speed", "Speed (krpm)", "unknown-unit"],
    ["nominal_speed", "Speed ft/min", "unknown-unit"],
    ["flat_diameter", "Flat area (cm²)", "unknown-unit"],
    ["cure_time", "Cure time (h:mm)", "unknown-unit"],
    ["supply_voltage", "Supply (AC)", [10, "ac"]],
    ["supply_voltage", "Supply voltage DC", [10, "dc"]],
  ])("%s 10 under %s", (field, heading, wanted) => expect(read(field, "10", "en", heading)).toEqual(wanted));

  it("a unit in the cell still counts where the heading settles none", () => {
    expect(read("hole_depth", "0.5 in", "en", "Hole depth (mm or inch)")).toBe(12.7);
  });
});

describe("a heading about another thing is not taken for the field", () => {
  it.each([
    ["target_torque", "Foundation bolt torque"],
    ["target_torque", "Motor torque (Nm)"],
    ["supply_voltage", "Motor voltage"],
    ["supply_voltage", "Mains voltage"],
    ["supply_voltage", "Motorspannung"],
    ["supply_voltage", "Supply pressure"],
    ["nominal_speed", "Critical speed"],
    ["nominal_speed", "Belt speed m/s"],
    ["flat_diameter", "Spot face depth"],
    ["baseline_load", "Last reading mm/s"],
  ])("%s: %s", (field, heading) => expect(() => read(field, "10", "en", heading)).toThrow("not matched"));
});
