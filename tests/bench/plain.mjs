/**
 * The plain way to do the job with the same two libraries, for the bench: exceljs reads the workbook, headings are
 * looked up in a list, json-rules-engine judges row by row, the events are written as JSON. It knows nothing of
 * units, doubtful cells, accuracy, derived facts or what is not known. `node tests/bench/plain.mjs FILE OUT SET DAY`
 */

import { once } from "node:events";
import { createWriteStream } from "node:fs";
import ExcelJS from "exceljs";
import { Engine } from "json-rules-engine";
import { openRulebook } from "../../dist/index.js";
import { engineRules } from "../../dist/rulebook/index.js";

const [file, out, set, asOf] = process.argv.slice(2);
const FACTS = {
  "Point ID": "point_id",
  "Asset tag": "asset_tag",
  Machine: "machine_name",
  "Machine type": "machine_type",
  Component: "component",
  "Bearing position": "bearing_position",
  Direction: "direction",
  "Rated power (kW)": "power",
  "Speed (rpm)": "nominal_speed",
  "VSD / DOL": "variable_speed",
  Tacho: "speed_reference",
  Duty: "duty",
  "Mounted on": "mounted_on",
  Material: "surface_material",
  "Surface finish": "surface_finish",
  "Flat dia. (mm)": "flat_diameter",
  "Wall thickness (mm)": "wall_thickness",
  "Roughness Ra (µm)": "roughness",
  "Surface temp. (°C)": "surface_temperature",
  "Mounting method": "mounting_method",
  Thread: "thread",
  "Hole depth (mm)": "hole_depth",
  "Thread depth (mm)": "thread_depth",
  "Torque (N·m)": "target_torque",
  "Cure time (min)": "cure_time",
  "Supply voltage": "supply_voltage",
  "Cable length (m)": "cable_length",
  "Conductor size (mm²)": "conductor_size",
  "Hazardous area": "hazardous_area",
};

const { rulebook } = await openRulebook(null);
const engine = new Engine([], { allowUndefinedFacts: true });
for (const rule of rulebook.rules.filter(({ sets }) => sets.includes(set))) {
  const plain = engineRules(rule, rulebook, { stage: "proposed", asOf });
  if (plain === null) continue;
  const applies = plain.applies?.all ?? [];
  for (const outcome of ["fail", "warn"]) {
    if (plain[outcome] === null) continue;
    engine.addRule({
      conditions: { all: [...applies, ...plain[outcome].all] },
      event: { type: `${rule.id} ${outcome}` },
    });
  }
  for (const { id, needs, compute } of plain.computed) {
    engine.addFact(id, async (_, almanac) => {
      const values = await Promise.all(needs.map((need) => almanac.factValue(need)));
      return values.includes(undefined) ? undefined : compute(values);
    });
  }
}
const baseline = rulebook.models.get(rulebook.baselineModel);
for (const [id, [{ state }]] of baseline.facts) engine.addFact(id, state.value.lowest ?? state.value);

const book = new ExcelJS.Workbook();
await book.xlsx.readFile(file);
const [sheet] = book.worksheets;
const headings = sheet.getRow(2).values;
const writing = createWriteStream(out);
writing.write("[\n");
for (let row = 3; row <= sheet.rowCount; row++) {
  const facts = {};
  for (const [column, value] of sheet.getRow(row).values.entries()) {
    const fact = FACTS[headings[column]];
    if (fact !== undefined && value !== null && value !== undefined) facts[fact] = value;
  }
  const { events } = await engine.run(facts);
  const line = JSON.stringify({ row, facts, findings: events.map(({ type }) => type) });
  if (!writing.write(row === 3 ? line : `,\n${line}`)) await once(writing, "drain");
}
writing.end("\n]\n");
await once(writing, "finish");
