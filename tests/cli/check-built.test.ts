import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { parse } from "csv-parse/sync";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { BUILT_SCHEMA } from "../../src/outputs/index.js";
import { type CommandRun, runCommand, steersTerminal } from "../tools/run-command.js";

let folder = "";
const here = (name: string): string => join(folder, name);
const PLAN = [
  "Point ID,Asset tag,Speed (rpm),VSD,Mounted on,Material,Finish,Flat dia. (mm),Method of mounting,Hole depth (mm),Thread depth (mm),Planned torque (N·m),Supply",
  "V-1,M-1,1485,DOL,bearing housing,cast iron,machined,35,tapped hole,16,10,8,24 V DC",
  "V-2,M-1,1485,DOL,bearing housing,cast iron,machined,35,tapped hole,16,10,8,24 V DC",
  "V-3,M-2,1485,DOL,bearing housing,cast iron,machined,35,tapped hole,16,10,8,24 V DC",
];
const BUILT = [
  "Point ID,Asset tag,Hole depth (mm),Applied torque (N·m),Voltage at sensor (V),Notes",
  "V-1,M-1,16,8,23.8,\u001b[31mred",
  "V-2,M-1,12,8,23.8,",
  "V-9,=M-2,16,8,23.8,",
];

function write(name: string, lines: readonly string[]): string {
  writeFileSync(here(name), `${lines.join("\n")}\n`);
  return here(name);
}

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "spotface-built-"));
  write("plan.csv", PLAN);
  write("built.csv", BUILT);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const validates = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true }).compile(BUILT_SCHEMA);

/** The parts of the document that these tests look at. */
interface Document {
  readonly sameSurvey: boolean;
  readonly remarks: readonly { readonly text: string }[];
  readonly issued: { readonly rulebookChanged: boolean; readonly gone: readonly unknown[] } | null;
  readonly points: readonly {
    readonly point: string;
    readonly status: string;
    readonly verdictThen: string | null;
    readonly verdictNow: string | null;
    readonly recall: boolean;
    readonly differences: readonly { readonly fact: string }[];
    readonly turned: readonly {
      readonly now: { readonly facts: readonly { readonly cells: readonly { readonly file: string }[] }[] };
    }[];
  }[];
}

function documentOf(run: CommandRun): Document {
  const document: unknown = JSON.parse(run.out);
  if (!validates(document)) throw new Error(JSON.stringify(validates.errors?.slice(0, 3)));
  return document as Document;
}

describe("spotface check-built", () => {
  it("lists what is to be recalled first, then what else differs", async () => {
    const { out, err, code } = await runCommand(
      "check-built",
      here("plan.csv"),
      "--built",
      here("built.csv"),
      "--site",
      "Vellamoor",
    );
    expect([err, code]).toEqual(["", 0]);
    const order = ["Recall the order: 1", "Built, but not proposed: 1", "Not built yet: 1", "Cautions: "];
    expect(order.map((text) => out.indexOf(text)).every((at, i, all) => at > (all[i - 1] ?? 0))).toBe(true);
    expect(out).toContain("hole-depth: the hole is 12 mm deep");
    expect(out).toContain("hole depth: 16 mm proposed (J3), 12 mm built (C3)");
    expect(steersTerminal(out)).toBe(false);
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
  });

  it("prints a document that keeps to its schema, the same twice, with the file of every cell", async () => {
    const args = ["check-built", here("plan.csv"), "--built", here("built.csv"), "--site", "Vellamoor", "--json"];
    const run = await runCommand(...args);
    const { points } = documentOf(run);
    expect(points.map(({ point, status, recall }) => [point, status, recall])).toEqual([
      ["V-1", "matched", false],
      ["V-2", "matched", true],
      ["V-3", "not-built", false],
      ["V-9", "not-proposed", false],
    ]);
    expect(points[1]?.turned[0]?.now.facts[0]?.cells[0]?.file).toBe(here("built.csv"));
    expect(run.err).toMatch(/^spotface: 4 points: 1 to be recalled, 1 built without a verdict .* 1 not built yet\n$/);
    expect((await runCommand(...args)).out).toBe(run.out);
  });

  it("writes table and document, never over anything unasked nor over what it reads", async () => {
    const csv = here("compared.csv");
    const result = here("compared.json");
    const args = ["check-built", here("plan.csv"), "--built", here("built.csv"), "--csv", csv, "--result", result];
    expect((await runCommand(...args)).code).toBe(0);
    const rows = parse(readFileSync(csv), { columns: true }) as Record<string, string>[];
    expect(rows.map((row) => [row.point, row.status, row.recall])).toContainEqual(["V-2", "matched", "yes"]);
    expect(rows.find((row) => row.point === "V-9")?.machine).toBe("'=M-2");
    expect(validates(JSON.parse(readFileSync(result, "utf8")))).toBe(true);
    expect(await runCommand(...args)).toMatchObject({ code: 2, out: "" });
    expect((await runCommand(...args, "--overwrite")).code).toBe(0);
    const over = await runCommand(
      "check-built",
      here("plan.csv"),
      "--built",
      here("built.csv"),
      "--csv",
      here("built.csv"),
      "--overwrite",
    );
    expect(over).toMatchObject({ code: 2, out: "" });
    expect(readFileSync(here("built.csv"), "utf8")).toContain("V-9");
  });

  it("ends as --fail-on says", async () => {
    const good = write("good.csv", BUILT.slice(0, 2));
    const deeper = write("deeper.csv", [BUILT[0] ?? "", "V-1,M-1,17,8,23.8,"]);
    const codes = async (built: string): Promise<unknown[]> => {
      const run = async (...more: string[]) =>
        (await runCommand("check-built", here("plan.csv"), "--built", built, ...more)).code;
      return [await run(), await run("--fail-on", "recall"), await run("--fail-on", "difference")];
    };
    expect(await codes(here("built.csv"))).toEqual([0, 1, 1]);
    expect(await codes(deeper)).toEqual([0, 0, 1]);
    expect(await codes(good)).toEqual([0, 0, 0]);
  });

  it("reads one workbook for both sides, with a column file for what was built", async () => {
    const whole = PLAN.map(
      (line, i) =>
        `${line},${["Bore made (mm)", "16", "11", ""][i]},${["Applied torque (N·m)", "8", "8", ""][i]},${["Voltage at sensor (V)", "24", "24", ""][i]}`,
    );
    const both = write("both.csv", whole);
    const columns = write("plan.yaml", ['columns: [{ heading: "Bore made", fact: ignore }]']);
    const built = write("built.yaml", [
      "columns:",
      '  - { heading: "Bore made", fact: hole_depth, unit: mm }',
      '  - { heading: "Hole depth", fact: ignore }',
    ]);
    const run = await runCommand(
      "check-built",
      both,
      "--columns",
      columns,
      "--built",
      both,
      "--built-columns",
      built,
      "--json",
    );
    const points = documentOf(run).points.map(({ point, verdictNow, differences }) => [
      point,
      verdictNow,
      differences.map(({ fact }) => fact),
    ]);
    expect(points.slice(0, 2)).toEqual([
      ["V-1", "pass", []],
      ["V-2", "fail", ["hole_depth"]],
    ]);
    const same = documentOf(await runCommand("check-built", both, "--columns", columns, "--json"));
    expect(same.sameSurvey).toBe(true);
    expect(same.points.map(({ point, status, verdictNow }) => [point, status, verdictNow])).toEqual([
      ["V-1", "matched", "pass"],
      ["V-2", "matched", "pass"],
      ["V-3", "not-built", null],
    ]);
  });

  it("says which columns of the built survey nobody understood", async () => {
    const built = write("odd.csv", ["Point ID,Asset tag,Tape,Applied torque (N·m)", "V-1,M-1,glued,8"]);
    const { remarks } = documentOf(await runCommand("check-built", here("plan.csv"), "--built", built, "--json"));
    expect(remarks.map(({ text }) => text).join()).toContain('"Tape" (C1)');
  });
});

describe("spotface check-built --issued", () => {
  it("compares with the result under which orders were issued", async () => {
    const stored = here("issued.json");
    await runCommand("screen", here("plan.csv"), "--site", "Vellamoor", "--result", stored);
    const args = [
      "check-built",
      here("plan.csv"),
      "--built",
      here("built.csv"),
      "--site",
      "Vellamoor",
      "--issued",
      stored,
    ];
    const { issued, points } = documentOf(await runCommand(...args, "--json"));
    expect(issued).toMatchObject({ rulebookChanged: false, gone: [] });
    expect(points.map(({ verdictThen }) => verdictThen)).toEqual(["pass", "pass", "pass", null]);
    const text = readFileSync(stored, "utf8").replaceAll('"verdict":"pass"', '"verdict":"fail"');
    writeFileSync(here("tampered.json"), text);
    const other = documentOf(await runCommand(...args.slice(0, -1), here("tampered.json"), "--json"));
    expect(other.points.map(({ verdictThen }) => verdictThen)).toEqual(["fail", "fail", "fail", null]);
    expect((await runCommand(...args)).out).toContain(`Orders were issued under ${stored}`);
  });

  it.each([
    ["no JSON", "{", /it is not JSON in UTF-8, or it breaks off/],
    ["lines of another kind", '{"a":1}\n{"b":2}\n', /the document: "digest" is missing/],
    ["another document", "{}", /the document: "digest" is missing/],
    ["a list", "[]", /the document: must be object/],
    ["a verdict that is none", '"verdict":"maybe"', /\/points\/0\/verdict: found "maybe", expected pass, warn, fail/],
    ["a result on what was built", '"stage":"installed"', /\/stage: found "installed", expected proposed/],
    ["a day that does not exist", '"asOf":"2026-02-30"', /\/asOf: found "2026-02-30"/],
  ])("refuses %s", async (_name, text, sentence) => {
    const stored = here("issued.json");
    const key = /^"(\w+)":/.exec(text)?.[1];
    const broken =
      key === undefined ? text : readFileSync(stored, "utf8").replace(new RegExp(`"${key}":"[^"]*"`), text);
    writeFileSync(here("broken.json"), broken);
    const run = await runCommand(
      "check-built",
      here("plan.csv"),
      "--built",
      here("built.csv"),
      "--issued",
      here("broken.json"),
    );
    expect([run.code, run.out]).toEqual([2, ""]);
    expect(run.err).toMatch(sentence);
    expect(run.err).toContain("hand in the result document");
  });

  it("refuses options that cannot be meant", async () => {
    const run = await runCommand("check-built", here("plan.csv"), "--built-columns", here("plan.yaml"));
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toContain("--built-columns is for the surveys given with --built");
    const twice = await runCommand("check-built", here("plan.csv"), "--built", here("built.csv"), here("built.csv"));
    expect([twice.code, twice.err]).toEqual([2, expect.stringContaining("given twice")]);
  });
});
