/** Joins the layers of what is said of a point: site, method, part, machine, what follows from those, deviations. */
import { BUILT, BY_METHOD, EVERYWHERE } from "./layers.mjs";
import { placeOf, TRAINS } from "./parts.mjs";

/** Sensors that share a junction box and its supply. */
const SENSORS_A_BOX = 8;
const FREQUENCIES_HZ = [200, 500, 1000, 2000, 2500, 5000];
const LINES = [800, 1600, 3200, 6400, 12800, 25600];
const TURNS_WANTED = 22;

/**
 * All points of the survey, each with its sheet, its machine and what it says of each fact.
 *
 * @param sheets - halls with their machines
 * @param deviations - what single points say otherwise, with a word why, by point ID
 * @throws Error if a deviation speaks of a point that there is not
 */
export function allPoints(sheets, deviations) {
  const points = sheets.flatMap((sheet) => pointsOf(sheet, deviations));
  const ids = new Set(points.map(({ id }) => id));
  for (const id of Object.keys(deviations)) {
    if (!ids.has(id)) throw new Error(`a deviation speaks of ${id}, and there is no such point`);
  }
  return points;
}

function pointsOf(sheet, deviations) {
  const places = sheet.machines.flatMap((machine) =>
    (machine.points ?? TRAINS[machine.train]).split(" ").map((code) => ({ machine, code })),
  );
  return places.map(({ machine, code }, i) => {
    const id = `${machine.tag}-${code}`;
    const box = Math.floor(i / SENSORS_A_BOX);
    const shared = {
      junction_box: `JB-${sheet.hall}${box + 1}`,
      channel: String((i % SENSORS_A_BOX) + 1),
      supply_name: `PS-${sheet.hall}${box + 1}`,
      sensors_on_supply: Math.min(SENSORS_A_BOX, places.length - box * SENSORS_A_BOX),
    };
    const { why, ...other } = deviations[id] ?? {};
    const all = saidOf(machine, code, { ...shared, ...sheet.say }, i, other.mounting_method);
    const said = machine.onlyPlate ? onlyPlateOf(all) : all;
    return { id, sheet: sheet.name, machine, facts: { ...said, point_id: id, ...other, notes: why } };
  });
}

/** What can be said of a machine that nobody came near. */
const PLATE = [
  "asset_tag",
  "machine_name",
  "machine_type",
  "surveyed_by",
  "surveyed_on",
  "component",
  "bearing_position",
];

function onlyPlateOf(said) {
  return Object.fromEntries(PLATE.map((fact) => [fact, said[fact]]));
}

function saidOf(machine, code, around, i, otherMethod) {
  const place = placeOf(code);
  const parts = Object.entries(machine.parts ?? {}).filter(([prefix]) => code.startsWith(prefix));
  const own = Object.assign({}, machine.say, ...parts.map(([, part]) => part));
  const method = otherMethod ?? own.mounting_method ?? "tapped-hole";
  const said = {
    ...EVERYWHERE,
    ...BY_METHOD[method],
    mounting_method: method,
    asset_tag: machine.tag,
    machine_name: machine.name,
    machine_type: machine.type,
    criticality: machine.class,
    power: machine.power,
    nominal_speed: machine.speed,
    ...measuredAt(i, method),
    ...around,
    ...place,
    ...own,
  };
  if (said.direction === "axial") delete said.load_zone_angle;
  for (const [fact, value] of Object.entries({ ...setUpFor(said), ...builtOf(said, machine.fitted, i) })) {
    said[fact] ??= value;
  }
  return said;
}

/** Small differences from point to point, as a tape and a caliper give them. */
function measuredAt(i, method) {
  const common = {
    flat_diameter: 34 + (i % 5),
    surface_temperature: 46 + ((i * 7) % 19),
    load_zone_angle: 15 * (i % 4),
    distance_to_bearing: 30 + ((i * 11) % 50),
    axis_deviation: (i * 3) % 8,
    cable_length: 18 + ((i * 13) % 45),
    power_cable_distance: 350 + 50 * (i % 6),
    bend_radius: 65 + 5 * (i % 4),
    strain_relief_distance: 120 + 20 * (i % 7),
  };
  return method === "tapped-hole"
    ? { ...common, wall_thickness: 24 + (i % 7) }
    : { ...common, wall_thickness: 8 + (i % 5) };
}

/** How the measurement is set up: wide enough for bearings, teeth and blades, fine enough for the slowest turn. */
function setUpFor(said) {
  const hz = (said.highest_speed ?? said.nominal_speed) / 60;
  const wanted = [40 * hz, 3 * hz * (said.blade_count ?? 0), 3.25 * hz * (said.gear_teeth ?? 0)];
  const top = FREQUENCIES_HZ.find((frequency) => frequency >= Math.max(...wanted)) ?? 5000;
  const slowest = (said.lowest_speed ?? said.nominal_speed) / 60;
  const lines = LINES.find((count) => (count / top) * slowest >= TURNS_WANTED) ?? 25600;
  const varies = said.variable_speed === "yes";
  return {
    highest_frequency: top,
    spectrum_lines: lines,
    local_resonance: 1.6 * top,
    ...(varies ? { speed_change: Math.floor((80 / lines) * 1000) / 1000 } : {}),
  };
}

/** What the fitters wrote down; of points not yet fitted, nothing. */
function builtOf(said, fittedOn, i) {
  if (!fittedOn) return {};
  const velocity = Math.round((1.1 + ((i * 17) % 23) / 10) * 10) / 10;
  return {
    ...BUILT,
    installed_on: new Date(`${fittedOn}T00:00:00Z`),
    applied_torque:
      said.target_torque === undefined ? undefined : Math.round(said.target_torque * (98 + (i % 5))) / 100,
    voltage_at_sensor: 23.9,
    sensor_serial: `VS${610200 + i}`,
    baseline_velocity: velocity,
    baseline_acceleration: Math.round(velocity * 14) / 10,
    baseline_speed: said.lowest_speed === undefined ? said.nominal_speed : said.lowest_speed + 100,
    baseline_spread: 3 + (i % 4),
    handheld_velocity: Math.round(velocity * 10.4) / 10,
    baseline_on: new Date(`${fittedOn}T00:00:00Z`),
  };
}
