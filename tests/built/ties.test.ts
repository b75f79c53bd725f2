import { describe, expect, it } from "vitest";
import { known, unknown } from "../tools/make-record.js";
import { checkRows, done, proposal, type Row } from "./made.js";

/** A proposal that states something of every kind. */
const STATED: Row = {
  asset_tag: known("P-1"),
  component: known("pump"),
  bearing_position: known("drive-end"),
  direction: known("horizontal"),
  mounted_on: known("bearing-housing"),
  bearing_type: known("rolling"),
  gear_teeth: known(21),
  blade_count: known(6),
  power: known(75),
  nominal_speed: known(1485),
  lowest_speed: known(900),
  highest_speed: known(1485),
  variable_speed: known("yes"),
  speed_reference: known("pulses"),
  isolation_possible: known(true),
  ambient_max: known(40),
  criticality: known("A"),
  joints_in_path: known(0),
  behind_wall: known("solid"),
  surface_finish: known("painted"),
  paint_thickness: known(80),
  flat_diameter: known(40),
  working_height: known(1),
  sensor_model: known("baseline"),
  sensor_thread: known("M6"),
  sensor_current: known(20),
  sensor_certified: known(false),
  ip_rating: known("IP67"),
  mounting_method: known("tapped-hole"),
  thread: known("M6"),
  thread_depth: known(12),
  hole_depth: known(18),
  drill_diameter: known(5),
  bolt_reach: known(10),
  bolt_class: known("8.8"),
  target_torque: known(8),
  supply_name: known("PSU 1"),
  supply_voltage: known(24),
  supply_kind: known("dc"),
  supply_rating: known(2500),
  supply_separation: known("selv"),
  cable_type: known("LiYCY"),
  cable_length: known(12),
  conductor_size: known(0.5),
  cable_diameter: known(6),
  bend_radius: known(60),
};

const SPEEDS = ["highest_speed", "lowest_speed", "nominal_speed"];
const HOLE = ["bolt_class", "bolt_reach", "drill_diameter", "hole_depth", "target_torque", "thread", "thread_depth"];
const SPOT = [
  ...HOLE,
  ...["behind_wall", "direction", "flat_diameter", "joints_in_path", "mounted_on", "paint_thickness"],
  ...["surface_finish", "working_height"],
];
const SHAFT = ["bearing_position", "bearing_type", "blade_count", "component", "gear_teeth"];

/** The facts held back where one was built otherwise, the changed one itself left out. */
const TIED: readonly (readonly [fact: string, value: string | number, held: readonly string[]])[] = [
  [
    "asset_tag",
    "P-2",
    [
      ...[...SHAFT, ...SPEEDS, ...SPOT, "variable_speed", "speed_reference", "power", "isolation_possible"],
      ...["ambient_max", "criticality", "sensor_certified", "ip_rating"],
    ],
  ],
  ["component", "motor", [...SHAFT, ...SPEEDS, ...SPOT]],
  ["bearing_position", "non-drive-end", [...SHAFT, ...SPEEDS, ...SPOT]],
  ["direction", "vertical", SPOT],
  ["mounted_on", "casing", SPOT],
  ["mounting_method", "adhesive-pad", HOLE],
  ["thread", "M8", ["bolt_reach", "drill_diameter", "hole_depth", "target_torque", "thread_depth"]],
  ["nominal_speed", 990, SPEEDS],
  ["variable_speed", "no", SPEEDS],
  ["sensor_model", "SLOW120", ["ip_rating", "sensor_certified", "sensor_current", "sensor_thread", "target_torque"]],
  ["supply_name", "PSU 2", ["supply_kind", "supply_rating", "supply_separation", "supply_voltage"]],
  ["supply_voltage", 48, ["supply_kind", "supply_rating", "supply_separation"]],
  ["cable_type", "PUR 4 x 0.5", ["bend_radius", "cable_diameter", "conductor_size"]],
  ["surface_finish", "bare-machined", ["paint_thickness"]],
  ["flat_diameter", 44, []],
  ["conductor_size", 0.75, []],
  ["criticality", "B", []],
];

async function heldBack(facts: Row): Promise<readonly string[]> {
  const { of } = await checkRows([proposal("P1", STATED)], [done("P1", facts)]);
  const { notCarried, carried } = of("P1");
  expect(carried.filter((fact) => notCarried.includes(fact))).toEqual([]);
  return notCarried.filter((fact) => fact in STATED).sort();
}

describe("what belongs to a thing that was built otherwise", () => {
  it.each(TIED)("%s as %s", async (fact, value, held) => {
    expect(await heldBack({ [fact]: known(value) })).toEqual(held.filter((one) => one !== fact).sort());
  });

  it.each(TIED)("%s that cannot be read, as one that is another", async (fact, _value, held) => {
    expect(await heldBack({ [fact]: unknown("unreadable") })).toEqual(held.filter((one) => one !== fact).sort());
  });

  it("is nothing where what was built is what was proposed", async () => {
    expect(await heldBack(Object.fromEntries(TIED.map(([fact]) => [fact, STATED[fact] ?? known("")])))).toEqual([]);
  });

  it("adds up", async () => {
    const both = await heldBack({ thread: known("M8"), cable_type: known("PUR 4 x 0.5") });
    expect(both).toEqual(
      [
        ...["bolt_reach", "drill_diameter", "hole_depth", "target_torque", "thread_depth"],
        ...["bend_radius", "cable_diameter", "conductor_size"],
      ].sort(),
    );
  });
});
