/** Joins the layers of what is said of a point: site, method, part, machine, what follows from those, deviations. */
import { BY_METHOD, EVERYWHERE } from "./layers.mjs";
import { builtOf, measuredAt, setUpFor } from "./measured.mjs";
import { placeOf, TRAINS } from "./parts.mjs";

/** Sensors that share a junction box and its supply. */
const SENSORS_A_BOX = 8;

/**
 * All points of the survey, each with its sheet, its machine and what it says of each fact.
 *
 * @param sheets - halls with their machines
 * @param deviations - what single points say otherwise, with a word why, by machine and place
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
    (machine.points ?? TRAINS[machine.train]).map((place, at) => ({ machine, place, number: at + 1 })),
  );
  return places.map(({ machine, place, number }, i) => {
    const id = `${machine.tag}, ${place}`;
    const box = Math.floor(i / SENSORS_A_BOX);
    const supply = `PS-${sheet.hall}${box + 1}`;
    const shared = {
      junction_box: `JB-${sheet.hall}${box + 1}`,
      channel: String((i % SENSORS_A_BOX) + 1),
      supply_name: supply,
      sensors_on_supply: Math.min(SENSORS_A_BOX, places.length - box * SENSORS_A_BOX),
      ...sheet.supplies[supply],
    };
    const { why, ...other } = deviations[id] ?? {};
    const all = saidOf(machine, place, { ...shared, ...sheet.say }, i, other.mounting_method);
    const said = machine.onlyPlate ? onlyPlateOf(all) : all;
    return {
      id,
      sheet: sheet.name,
      machine,
      facts: { ...said, point_id: `${machine.tag}/${number}`, ...other, notes: why },
    };
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

function saidOf(machine, where, around, i, otherMethod) {
  const place = placeOf(where);
  const parts = Object.entries(machine.parts ?? {}).filter(([prefix]) => where.startsWith(prefix));
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
