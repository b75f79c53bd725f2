import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { copyInto, standing, tablesFor, targetsOf, upsert } from "./mapped-tables.js";
import { type Database, startDatabase } from "./postgres.js";
import { CLI, PROJECT, run, temporaryFolder } from "./tools.js";

const POINTS = 10_000;
const [CHANGED, WITHDRAWN, ADDED] = [37, 5, 11];
const MAPPING = `${PROJECT}tests/full/postgres-mapping.yaml`;
const TARGETS = targetsOf(MAPPING);
const HEADINGS = [
  "Point ID",
  "Asset tag",
  "Machine",
  "Speed (rpm)",
  "Material",
  "Flat diameter (mm)",
  "Hole depth (mm)",
];

const folder = temporaryFolder();
const here = (path: string): string => join(folder, path);

/** One row of the made-up works: four points to a machine, every seventh flat too small, some diameters unknown. */
function rowOf(i: number): string[] {
  const machine = 1000 + Math.floor(i / 4);
  const diameter = i % 7 === 0 ? "14" : i % 11 === 0 ? "" : String(30 + (i % 10));
  const material = ["cast iron", "steel", "aluminium", "sheet steel"][i % 4] ?? "";
  return [
    `BT-${String(i).padStart(5, "0")}`,
    `0${machine}`,
    `Transfer "pump" ${machine}`,
    "1480",
    material,
    diameter,
    "16",
  ];
}

const FIRST = Array.from({ length: POINTS }, (_, i) => rowOf(i));

/** The same works later: some flats ground again, some points given up, some new ones, sorted another way. */
const LATER = FIRST.filter((_, i) => i % (POINTS / WITHDRAWN) !== 17)
  .map((row, i) => (i % 270 === 5 && i < 270 * CHANGED ? row.with(5, row[5] === "33" ? "34" : "33") : row))
  .concat(Array.from({ length: ADDED }, (_, i) => rowOf(POINTS + i)))
  .reverse();

function survey(file: string, rows: readonly (readonly string[])[]): string {
  const lines = [HEADINGS, ...rows].map((row) => row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(","));
  writeFileSync(here(file), `${lines.join("\n")}\n`);
  return here(file);
}

function spotface(...args: readonly string[]): string {
  const ended = run(process.execPath, [CLI, ...args]);
  expect(ended.status, ended.err).toBe(0);
  return ended.out;
}

function exported(file: string, out: string, ...more: readonly string[]): void {
  const site = ["--site", "Made-up works", "--as-of", "2026-11-26", "--set", "core"];
  spotface("export", here(file), "--mapping", MAPPING, "--out", here(out), ...site, ...more);
}

/** The text table of each target of an export, in the order of loads. */
function filesOf(out: string): readonly string[] {
  return TARGETS.map(({ target }) => here(`${out}/${target}.csv`));
}

let database: Database | string = "not started";

beforeAll(() => {
  database = startDatabase();
  if (typeof database === "string") return;
  survey("first.csv", FIRST);
  survey("later.csv", LATER);
  exported("first.csv", "whole");
  spotface("accept-export", here("whole/export-receipt.json"), "--state", here("state.json"));
  exported("later.csv", "difference", "--since", here("state.json"));
  exported("later.csv", "fresh");
});
afterAll(() => {
  if (typeof database !== "string") database.stop();
});

describe(`${POINTS} points in PostgreSQL`, () => {
  const opened = (skip: (why: string) => never): Database => (typeof database === "string" ? skip(database) : database);
  const load = (db: Database, schema: string, out: string, statement: (i: number, file: string) => string): void => {
    const files = filesOf(out).map((file) => db.lay(file));
    db.ask(`set search_path to ${schema};\nbegin;\n${files.map((file, i) => statement(i, file)).join("")}commit;\n`);
  };
  const asText = (db: Database, schema: string): string =>
    db.ask(`set search_path to ${schema};\n${TARGETS.map(standing).join("")}`);

  it("are loaded as they were exported, into tables with keys, references and checks", ({ skip }) => {
    const db = opened(skip);
    for (const schema of ["works", "fresh"]) {
      db.ask(`create schema ${schema};\nset search_path to ${schema};\n${tablesFor(TARGETS)}`);
    }
    load(db, "works", "whole", (i, file) => copyInto(TARGETS[i]?.target ?? "", file));
    load(db, "fresh", "fresh", (i, file) => copyInto(TARGETS[i]?.target ?? "", file));
    const counts =
      'select (select count(*) from points), (select count(*) from machines), (select count(distinct "State") from points);';
    expect(db.ask(`set search_path to works; ${counts}`)).toBe(`${POINTS}|${POINTS / 4}|2`);
    expect(db.ask(`set search_path to fresh; ${counts}`)).toBe(`${POINTS - WITHDRAWN + ADDED}|${POINTS / 4 + 3}|2`);
    // A leading zero and quotes arrive as they are.
    expect(db.ask('select "Asset", "Machine" from works.machines order by 1 limit 1;')).toBe(
      '01000|Transfer "pump" 1000',
    );
  });

  it("stand in tables that refuse what the mapping rules out", ({ skip }) => {
    const db = opened(skip);
    const wrong = [
      ["insert into points select * from points limit 1;", "duplicate key"],
      [`update points set "Asset" = 'none' where "Point" = 'BT-00001';`, "foreign key"],
      [`update points set "State" = 'fine' where "Point" = 'BT-00001';`, "check constraint"],
      [`update points set "Short text" = repeat('x', 41);`, "check constraint"],
      [`update machines set "State" = null;`, "not-null constraint"],
    ] as const;
    for (const [statement, why] of wrong) {
      expect(db.refusal(`set search_path to works; ${statement}`), statement).toContain(why);
    }
  });

  it("are brought up to date by the difference alone, as an export of all rows would", ({ skip }) => {
    const db = opened(skip);
    const sent = filesOf("difference").map((file) => readFileSync(file, "utf8").trimEnd().split("\r\n").length - 1);
    expect(sent[1]).toBe(CHANGED + WITHDRAWN + ADDED);
    expect(asText(db, "works")).not.toBe(asText(db, "fresh"));
    const target = (i: number) => TARGETS[i] ?? { target: "", columns: [] };
    load(db, "works", "difference", (i, file) => upsert(target(i), file));
    const once = asText(db, "works");
    expect(once).toBe(asText(db, "fresh"));
    expect(once.split("\n").length).toBeGreaterThan(POINTS);
    expect(db.ask(`select count(*) from works.points where "State" = 'withdrawn';`)).toBe(String(WITHDRAWN));
    // Sent twice, it changes nothing.
    const everything = `select md5(string_agg(t::text, ',' order by t::text)) from works.points t;`;
    const before = db.ask(everything);
    load(db, "works", "difference", (i, file) => upsert(target(i), file));
    expect(asText(db, "works")).toBe(once);
    expect(db.ask(everything)).toBe(before);
  });

  it("leave nothing to tell once the difference is accepted", ({ skip }) => {
    opened(skip);
    spotface("accept-export", here("difference/export-receipt.json"), "--state", here("state.json"));
    exported("later.csv", "nothing", "--since", here("state.json"));
    for (const file of filesOf("nothing")) expect(readFileSync(file, "utf8").trimEnd().split("\r\n")).toHaveLength(1);
  });
});
