import { describe, expect, it } from "vitest";
import { loadRulebook, readSiteFile } from "../../src/rulebook/index.js";
import { smallFiles } from "./small-book.js";

const loading = loadRulebook(smallFiles());
const models = loading.ok ? loading.rulebook.models : new Map();

const GOOD = `# what holds for the whole works
site: "North works"
states:
  hazardous_area: none
  supply_voltage: 24 V
  supply_kind: dc
  ambient_max: 104 °F
  certified_enclosure: false
machineTypes:
  pump: { sensor_model: BASE-1 }
machines:
  P-1101A: { lowest_speed: 10 r/s, variable_speed: "yes", sensor_model: baseline }
  "0815": { joints_in_path: 2, next_outage: 2026-03-01 }
`;

function read(text: string) {
  return readSiteFile({ path: "north/site.yaml", text }, models);
}

function findings(text: string): readonly string[] {
  const reading = read(text);
  return reading.ok ? [] : reading.findings.map(({ line, column, code }) => `${line}:${column} ${code}`);
}

describe("a site file", () => {
  it("states facts for the site, a type of machine and a machine, each with its line", () => {
    const reading = read(GOOD);
    if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
    const { file, digest, siteName, wholeSite, byMachineType, byMachine } = reading.statements;
    expect({ file, siteName }).toEqual({ file: "north/site.yaml", siteName: "North works" });
    expect(digest).toMatch(/^[0-9a-f]{64}$/);
    const at = (line: number) => ({ kind: "statement", file: "north/site.yaml", line });
    expect([...wholeSite]).toEqual([
      ["hazardous_area", { known: true, value: "none", origin: at(4) }],
      ["supply_voltage", { known: true, value: { lowest: 24, highest: 24 }, origin: at(5) }],
      ["supply_kind", { known: true, value: "dc", origin: at(6) }],
      ["ambient_max", { known: true, value: { lowest: 40, highest: 40 }, origin: at(7) }],
      ["certified_enclosure", { known: true, value: false, origin: at(8) }],
    ]);
    expect(byMachineType.get("pump")?.get("sensor_model")).toMatchObject({ value: "BASE-1", origin: at(10) });
    expect(byMachine.get("P-1101A")?.get("lowest_speed")).toMatchObject({ value: { lowest: 600, highest: 600 } });
    expect(byMachine.get("0815")?.get("joints_in_path")).toMatchObject({ value: { lowest: 2, highest: 2 } });
    expect(byMachine.get("0815")?.get("next_outage")).toMatchObject({ value: "2026-03-01" });
  });

  it("has a digest of its data, not of its layout", () => {
    const digestOf = (text: string) => {
      const reading = read(text);
      return reading.ok ? reading.statements.digest : null;
    };
    expect(digestOf(`${GOOD}\n# another remark\n`)).toBe(digestOf(GOOD));
    expect(digestOf(GOOD.replace("24 V", "24.0 V"))).not.toBe(digestOf(GOOD));
  });

  it.each([
    ["fact that is not there", "hazardous_area:", "hazardus_area:", "4:3 unknown-key"],
    ["identity of a point", "hazardous_area: none", "point_id: P1", "4:3 unknown-key"],
    ["fact of the model", "hazardous_area: none", "model.torque_max: 5 N·m", "4:3 unknown-key"],
    ["derived fact", "hazardous_area: none", "seat: solid", "4:3 unknown-key"],
    ["choice that is not there", "none", "zone-3", "4:19 unknown-choice"],
    ["number without unit", "24 V", "24", "5:19 no-unit"],
    ["unit of another dimension", "24 V", "24 mA", "5:19 wrong-dimension"],
    ["number that cannot be meant", "24 V", "24 kV", "5:19 implausible"],
    ["yes as a word", "certified_enclosure: false", "certified_enclosure: no", "8:24 wrong-kind"],
    ["type of machine that is not there", "pump:", "pumpe:", "10:3 unknown-key"],
    ["model that is not there", "BASE-1", "BASE-9", "10:25 unknown-model"],
    ["day that is not there", "2026-03-01", "2026-02-30", "13:45 bad-date"],
    ["machine by a bare number", '"0815"', "815", "13:3 bad-key"],
    ["machine twice", '"0815"', "P-1101A", "13:3 duplicate-key"],
    ["nothing stated", "{ sensor_model: BASE-1 }", "{}", "10:9 too-few-keys"],
    ["alias", "hazardous_area: none", "hazardous_area: *x", "4:19 alias"],
  ])("refuses: %s", (_name, from, to, place) => {
    expect(GOOD.split(from).length).toBeGreaterThan(1);
    expect(findings(GOOD.replace(from, to))).toEqual([place]);
  });

  it("says which mounting methods are allowed, each list with its line, and states no fact by that", () => {
    const text = `states: { methodsAllowed: [tapped-hole, adhesive-pad], supply_kind: dc }
machineTypes:
  pump: { methodsAllowed: [adhesive-pad] }
machines:
  P-1: { methodsAllowed: [clamp] }
  P-2: { supply_kind: ac }
`;
    const reading = read(text);
    if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
    const { methodsAllowed, wholeSite, byMachine } = reading.statements;
    const at = (methods: readonly string[], line: number) => ({ methods, file: "north/site.yaml", line });
    expect(methodsAllowed).toEqual({
      wholeSite: at(["tapped-hole", "adhesive-pad"], 1),
      byMachineType: new Map([["pump", at(["adhesive-pad"], 3)]]),
      byMachine: new Map([["P-1", at(["clamp"], 5)]]),
    });
    expect([...wholeSite.keys()]).toEqual(["supply_kind"]);
    expect(byMachine.get("P-1")?.size).toBe(0);
    const without = read(GOOD);
    expect(without.ok && without.statements.methodsAllowed).toBeUndefined();
  });

  it.each([
    ["no list", "methodsAllowed: clamp", "1:27 wrong-kind"],
    ["an empty list", "methodsAllowed: []", "1:27 list-too-short"],
    ["a method that is not there", "methodsAllowed: [glue]", "1:28 unknown-mounting-method"],
    ["a method twice", "methodsAllowed: [clamp, clamp]", "1:27 said-twice"],
  ])("refuses as methods allowed: %s", (_name, line, place) => {
    expect(findings(`states: { ${line} }\n`)).toEqual([place]);
  });

  it("may name every machine of a large works", () => {
    const machines = Array.from({ length: 5000 }, (_, i) => `  M-${i}: { sensor_model: baseline }`).join("\n");
    const reading = read(`machines:\n${machines}\n`);
    expect(reading.ok && reading.statements.byMachine.size).toBe(5000);
  });
});
