import type { Change } from "./mended.js";

const FRICTION =
  "{ bolt_steel: carbon-steel, thread_state: locked, table.friction_min: 0.15, table.friction_max: 0.25 }";

const THREADS: Readonly<Record<string, Change>> = {
  "id that differs from the file": ["id: thread\n", "id: threads\n"],
  "table without sources": ["    rows:\n", "    cites: [measured]\n    rows:\n"],
  "fact looked up by other facts": [", table.wall_left_min]", "]"],
  "keys in another order": ["[thread_state, bolt_steel]", "[bolt_steel, thread_state]"],
  "choice that no row has": ["    rows:\n", `    rows:\n      - ${FRICTION}\n`],
  "row twice": [`      - ${FRICTION}\n      - ${FRICTION}\n`, `      - ${FRICTION}\n`],
  "row without a key": [
    "{ thread_state: locked, table.friction_min: 0.15",
    "{ bolt_steel: carbon-steel, thread_state: locked, table.friction_min: 0.15",
  ],
  "value that the table does not give": [", table.run_out_min: 1", ""],
  "unknown fact in a row": [", table.fricton: 1", ""],
  "value with a unit that it has not": ['"0.25 N"', "0.25"],
  "value of a wrong kind": ["true", "0.25"],
  "value in a list": ["[0.25]", "0.25"],
  "value that cannot be meant": ["table.friction_max: 25 ", "table.friction_max: 0.25 "],
  "citation that nothing cites": ['  idle: { basis: from-memory, says: "x" }\n', ""],
  "end before the start": ["until: 2025-12-31", "until: 2027-12-31"],
  "row without a value": ["table.friction_min: 0.15 }", "table.friction_min: 0.15, table.friction_max: null }"],
  "range upside down": ["table.friction_max: 0.1 }", "table.friction_max: 0.2 }"],
  "review before the start": ["2025-12-31", "2027-12-31"],
  "key fact that no table is looked up by": ["hole_depth", "thread_state"],
};

const GAPS: Readonly<Record<string, Change>> = {
  "entries with a gap": ["from: 2026-08-01", "from: 2026-07-01"],
  "entries that overlap": ["from: 2026-06-01", "from: 2026-07-01"],
  "second row where nothing tells it apart": [", { table.run_out_min: 2, table.run_out_usual: 4 }", ""],
  "no row": ["rows: []", "rows: [{ table.run_out_min: 1, table.run_out_usual: 3 }]"],
  "table looked up by nothing": ["by: [thread_state]", "by: []"],
};

const SUPPLY: Readonly<Record<string, Change>> = {
  "group without a key": ["key: []", "key: [supply_name]"],
  "key that is a number": ["supply_voltage]", "junction_box]"],
  "member without a way": ["current: {}", "current: { sum: sensor_current }"],
  "way that is none": ["total:", "sum:"],
  "condition without a way": ["group.supply_current: { where:", "group.supply_current: { sum: sensor_current, where:"],
  "sum of words": ["sum: supply_name", "sum: sensor_current"],
  "sum in another unit": ["sum: supply_voltage", "sum: sensor_current"],
  "current that is counted": ["{ count: true }", "{ sum: sensor_current }"],
  "condition beside a count": [
    "{ count: true, where: { fact: criticality, operator: equal, value: A } }",
    "{ count: { where: { fact: criticality, operator: equal, value: A } } }",
  ],
  "condition beside what all state": [
    ", where: { fact: criticality, operator: equal, value: A } }\n  group.crit",
    " }\n  group.crit",
  ],
  "condition on another fact": [
    "fact: direction, operator: equal, value: axial",
    "fact: criticality, operator: equal, value: A",
  ],
  "fact of two groups": ["  group.radial_directions: { distinct: direction }\n", ""],
  "id that is not the file name": ["id: suply", "id: supply"],
  "key said twice": ["[supply_name, supply_name]", "[supply_name]"],
  "two ways": ["{ sum: sensor_current, maximum: sensor_current }", "{ sum: sensor_current }"],
  "key that is the site": ["[supply_name, site]", "[supply_name]"],
  "sum of another current": ["sum: starting_current", "sum: sensor_current"],
  "count that is none": ["{ count: false }", "{ sum: sensor_current }"],
};

const LOAD: Readonly<Record<string, Change>> = {
  "fact of a point": ["judges: sensor_current", "judges: group.supply_current"],
  "fact of another group": ["group.radial_directions", "group.critical_points_on_supply"],
  "fact of no group": ["group.axial_points", "group.critical_points_on_supply"],
  "message on a single point": ["{direction}", "{supply_name}"],
  "condition on single points": [
    "{ condition: sideways }",
    '{ fact: supply_name, operator: notEqual, value: "battery" }',
  ],
  "remedy that changes nothing": ["change: [direction]", "change: [supply_name]"],
};

const GAUGE: Readonly<Record<string, Change>> = {
  "way with another id than its file": ["id: ruler", "id: rule"],
  "way that measures nothing": [
    "measures: {}",
    "measures: { length: [{ from: 2026-01-01, until: null, plusMinus: 0.5 mm, cites: [half] }] }",
  ],
  "quantity that no survey holds": ["  charge:", "  temperature:"],
  "accuracy without a number": ["until: null, cites", "until: null, plusMinus: 0.5 mm, percent: 2, cites"],
  "accuracy in a unit of something else": ["0.5 V", "0.5 mm"],
  "accuracy in a unit that nobody knows": ["0.5 mn", "0.5 mm"],
  "accuracy of a temperature in degrees Celsius": ["2 °C", "2 K"],
  "percent of a temperature": ["percent: 2,", "plusMinus: 2 K,"],
  "percent below nothing": ["percent: -1", "percent: 1"],
  "accuracy without a source": [" }\n  temperature", ", cites: [half] }\n  temperature"],
  "accuracy that ends before it begins": ["until: 2025-01-01", "until: 2027-01-01"],
  "word of another way": ['en: ["gauge"]', 'en: ["rule"]'],
  "words in a language that is not known": ["  it: [", "  es: ["],
  "fact that it does not measure": ["only: [nominal_speed]", "only: [hole_depth]"],
  "fact that is not measured at all": ["only: [direction]", "only: [hole_depth]"],
  "accuracy below nothing": ["-0.5 mm", "0.5 mm"],
  "percent with a sign": ["percent: 1 %", "percent: 1"],
};

const MODEL: Readonly<Record<string, Change>> = {
  "value in a wrong unit": ["9 V", "9 mm"],
  "torque in volts": ["10 V", "10 N·m"],
  "name that is the title": ['["A Model"]', '["BASE-1"]'],
  "name that stands twice": [', "base‐1"', ""],
  "torque of zero": ["0 N·m", "5 N·m"],
  "length that cannot be meant": ["value: 9 m,", "value: 9 mm,"],
  "highest voltage below the lowest": ["until: null, value: 18 V", "until: null, value: 19 V"],
  "values with a gap": ["from: 2027-02-01", "from: 2027-01-01"],
  "values out of order": ["from: 2025-02-01", "from: 2027-01-01"],
  "model citation that nothing cites": ['  idle: { basis: from-memory, says: "x" }\n', ""],
  "length below zero": ["-9 mm", "9 mm"],
  "name that is the id": ['["Baseline"]', '["BASE-1"]'],
};

const SLOW: Readonly<Record<string, Change>> = {
  "stage judged that the rule is not for": [", proposed: nominal_speed", ""],
  "case at a stage that the rule is not for": ["stage: proposed", "stage: installed"],
  "choices that are all of them": ["oneOf: [dc, ac]", "oneOf: [ac]"],
  "choices that leave none": ["noneOf: [dc, ac]", "noneOf: [dc]"],
  "band where nothing is judged": ["limits:\n", "judges: { installed: nominal_speed }\nlimits:\n"],
  "number band for a choice": ["{ below: 600 r/min }", "{ oneOf: [jets] }"],
};

const OTHERS: Readonly<Record<string, Change>> = {
  "groups/bearing.yaml: condition that is not there": ["sidewise", "sideways"],
  "groups/bearing.yaml: distinct numbers": [
    "distinct: nominal_speed",
    "distinct: direction, where: { condition: sideways }",
  ],
  "words/few.yaml: language of headings": ["{ it:", "{ en:"],
  "conditions/outdoors.yaml: condition that names itself": [
    "{ condition: outdoors }",
    "{ fact: wetting, operator: equal, value: jets }",
  ],
  "rulebook.yaml: version without quotes": ["version: 1.0", 'version: "1.0.0"'],
  "rulebook.yaml: include": ["\ninclude: [../other.yaml]", ""],
};

function inFile(file: string, changes: Readonly<Record<string, Change>>): Readonly<Record<string, Change>> {
  return Object.fromEntries(Object.entries(changes).map(([name, change]) => [`${file}: ${name}`, change]));
}

/** Of all files but the rule of points, by file and name of the mistake. */
export const MENDED_DATA: Readonly<Record<string, Change>> = {
  ...inFile("tables/threads.yaml", THREADS),
  ...inFile("tables/gaps.yaml", GAPS),
  ...inFile("groups/supply.yaml", SUPPLY),
  ...inFile("supply/load.yaml", LOAD),
  ...inFile("measuring/rule.yaml", GAUGE),
  ...inFile("models/baseline.yaml", MODEL),
  ...inFile("speed/slow.yaml", SLOW),
  ...OTHERS,
};
