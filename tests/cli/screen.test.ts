import { createHash } from "node:crypto";
import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { runCommandLine } from "../../src/cli/program.js";
import { RESULT_SCHEMA } from "../../src/outputs/index.js";
import { type FakeTerminal, fakeTerminal } from "../tools/fake-terminal.js";
import { projectPath } from "../tools/shipped.js";

let folder = "";
let terminal: FakeTerminal = fakeTerminal();
const survey = (): string => join(folder, "quillmoor.xlsx");
const table = (): string => join(folder, "tallgrass.csv");
const here = (name: string): string => join(folder, name);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "spotface-cli-"));
  for (const name of ["quillmoor.xlsx", "tallgrass.csv"])
    cpSync(projectPath(`tests/data/surveys/${name}`), join(folder, name));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
beforeEach(() => {
  terminal = fakeTerminal();
});

async function run(...args: readonly string[]): Promise<FakeTerminal["said"]> {
  await runCommandLine(args, terminal);
  return terminal.said;
}

const validate = new Ajv2020({ strict: true, allowUnionTypes: true, allErrors: true }).compile(RESULT_SCHEMA);

describe("spotface screen", () => {
  it("prints a report of what was read, how it was understood, and what came out", async () => {
    const { out, err, code } = await run("screen", survey());
    expect(code).toBe(0);
    expect(err).toBe("");
    expect(out).toContain("limits as of 2026-11-25");
    expect(out).toContain("Verdicts on 48 points");
    expect(out).toContain("a screening, not a permission".replace("a screening", "A verdict is a screening"));
    for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
  });

  it("prints a document that keeps to its schema, with findings only where something stands in the way", async () => {
    const { out, err, code } = await run("screen", survey(), table(), "--json");
    const document = JSON.parse(out) as { points: { findings: { outcome: string }[] }[]; surveys: { file: string }[] };
    expect(validate(document), JSON.stringify(validate.errors?.slice(0, 3))).toBe(true);
    expect(code).toBe(0);
    expect(document.points).toHaveLength(84);
    expect(document.surveys.map(({ file }) => file)).toEqual([survey(), table()]);
    const outcomes = new Set(document.points.flatMap(({ findings }) => findings.map(({ outcome }) => outcome)));
    expect([...outcomes].sort()).toEqual(["fail", "undecided", "warn"]);
    expect(err).toMatch(
      /^spotface: 84 points as of 2026-11-25: \d+ pass, \d+ warn, \d+ fail; \d+ remarks on reading\n$/,
    );
  });

  it("prints lines of JSON: a head, the points, a closing line", async () => {
    const { out } = await run("screen", table(), "--ndjson");
    const lines = out.trimEnd().split("\n");
    expect(lines).toHaveLength(38);
    for (const line of lines) expect(() => JSON.parse(line)).not.toThrow();
    expect(JSON.parse(lines[37] ?? "")).toHaveProperty("summary");
  });

  it("lists passed rules and rules that do not apply on request, and gives the same bytes twice", async () => {
    const first = { ...(await run("screen", table(), "--json", "--all-findings")) };
    terminal = fakeTerminal();
    const second = await run("screen", table(), "--json", "--all-findings");
    expect(second.out).toBe(first.out);
    const { points } = JSON.parse(first.out) as { points: { findings: unknown[] }[] };
    expect(points.every(({ findings }) => findings.length === 9)).toBe(true);
  });

  it("writes workbook, tables and result into a folder, and never over anything unasked", async () => {
    const before = digestOf(survey());
    const out = here("screened");
    const first = { ...(await run("screen", survey(), "--out", out)) };
    expect(first.code).toBe(0);
    expect(readdirSync(out).sort()).toEqual([
      "quillmoor.findings.csv",
      "quillmoor.points.csv",
      "quillmoor.report.html",
      "quillmoor.result.json",
      "quillmoor.screened.xlsx",
    ]);
    expect(validate(JSON.parse(readFileSync(join(out, "quillmoor.result.json"), "utf8")))).toBe(true);
    const written = readdirSync(out).map((name) => digestOf(join(out, name)));
    terminal = fakeTerminal();
    const refused = { ...(await run("screen", survey(), "--out", out, "--as-of", "2026-12-01")) };
    expect(refused.code).toBe(2);
    expect(refused.out).toBe("");
    expect(refused.err).toContain("quillmoor.screened.xlsx");
    expect(readdirSync(out).map((name) => digestOf(join(out, name)))).toEqual(written);
    terminal = fakeTerminal();
    expect((await run("screen", survey(), "--out", out, "--overwrite")).code).toBe(0);
    expect(readdirSync(out).map((name) => digestOf(join(out, name)))).toEqual(written);
    expect(digestOf(survey())).toBe(before);
  });

  it("never writes to the survey, by whatever name", async () => {
    const before = digestOf(table());
    const { code, err } = await run("screen", table(), "--csv", join(folder, ".", "tallgrass.csv"), "--overwrite");
    expect(code).toBe(2);
    expect(err).toContain("tallgrass.csv");
    expect(digestOf(table())).toBe(before);
  });

  it("never writes over the rulebook that it reads", async () => {
    const book = here("own-book");
    cpSync(projectPath("rules"), book, { recursive: true });
    const model = join(book, "models/baseline.yaml");
    const before = digestOf(model);
    const { code, err } = await run("screen", table(), "--rules", book, "--csv", model, "--overwrite");
    expect([code, err]).toEqual([2, expect.stringContaining("baseline.yaml")]);
    expect(digestOf(model)).toBe(before);
  });

  it("gives a run another digest where the encoding was said", async () => {
    const plain = JSON.parse((await run("screen", table(), "--json")).out) as { digest: string };
    terminal = fakeTerminal();
    const told = JSON.parse((await run("screen", table(), "--json", "--separator", "comma")).out) as { digest: string };
    expect(told.digest).not.toBe(plain.digest);
  });

  it("compares every finding with json-rules-engine before anything is written", async () => {
    const { code, err } = await run("screen", survey(), table(), "--audit", "--json");
    expect(code).toBe(0);
    expect(err).toMatch(
      /audit: \d{3} findings compared with json-rules-engine, \d+ decided ones on \d+ completions, \d+ open ones .* 0 differences/,
    );
  });

  it.each([
    ["fail", 1],
    ["warn", 1],
    ["undecided", 1],
  ])("ends with exit code 1 where a point reaches --fail-on %s", async (level, code) => {
    expect((await run("screen", survey(), "--fail-on", level)).code).toBe(code);
  });

  it("uses the site's name and its file", async () => {
    const site = here("site.yaml");
    writeFileSync(site, "site: Nordkai\nstates:\n  sensor_model: example-compact\n");
    const { out } = await run("screen", table(), "--json", "--site-file", site);
    const document = JSON.parse(out) as { site: { name: string }; models: { id: string }[] };
    expect(document.site.name).toBe("Nordkai");
    expect(document.models.map(({ id }) => id)).toEqual(["example-compact"]);
  });
});

describe("bad input ends with exit code 2, one clear sentence, and nothing written", () => {
  const written = here;
  it.each([
    ["a missing file", () => ["screen", here("nowhere.xlsx")], /nowhere\.xlsx: there is no such file/],
    ["a folder", () => ["screen", folder], /it is a folder/],
    ["an empty file", () => ["screen", made("empty.xlsx", "")], /empty\.xlsx: .*empty/],
    [
      "a foreign file",
      () => ["screen", made("page.xlsx", "<!DOCTYPE html><html><table></table></html>")],
      /page\.xlsx: the file is a web page/,
    ],
    ["a damaged file", () => ["screen", cut("cut.xlsx")], /cut\.xlsx: .*(incomplete|damaged|cut)/],
    [
      "no heading row",
      () => ["screen", made("notes.csv", "hello\nworld\n1;2\n")],
      /no heading row and no usable column/,
    ],
    ["a rulebook with a mistake", () => ["screen", survey(), "--rules", brokenBook()], /min-speed\.yaml:\d+:\d+: /],
    ["a rulebook that is not there", () => ["screen", survey(), "--rules", here("no-rules")], /no-rules/],
    [
      "a site file with a mistake",
      () => ["screen", survey(), "--site-file", made("bad.yaml", "states: { hole_depth: 9 kg }\n")],
      /bad\.yaml:1:\d+: /,
    ],
    ["a set that is not there", () => ["screen", survey(), "--set", "gold"], /no set "gold"; it has core, full/],
    ["a day that does not exist", () => ["screen", survey(), "--as-of", "2026-02-30"], /--as-of: .*YYYY-MM-DD/],
    ["two forms at once", () => ["screen", survey(), "--json", "--ndjson"], /--json or --ndjson, not both/],
    ["one file twice", () => ["screen", survey(), survey()], /given twice/],
    ["an unknown option", () => ["screen", survey(), "--jsno"], /unknown option '--jsno'/],
    ["no file at all", () => ["screen"], /missing required argument/],
  ] as const)("%s", async (_name, args, sentence) => {
    const target = written("never.json");
    const { out, err, code } = await run(...args(), "--result", target);
    expect(code).toBe(2);
    expect(out).toBe("");
    expect(err).toMatch(sentence);
    expect(err).not.toMatch(/\bat .*\.(ts|js):\d+/);
    expect(existsSync(target)).toBe(false);
    expect(readdirSync(folder).filter((name) => name.endsWith(".tmp"))).toEqual([]);
  });

  it("leaves an unreadable file out on the user's word, and says so", async () => {
    const { out, err, code } = await run("screen", here("nowhere.xlsx"), table(), "--skip-unreadable", "--json");
    expect(code).toBe(1);
    expect(err).toContain("nowhere.xlsx: there is no such file");
    const document = JSON.parse(out) as { skipped: { file: string }[]; points: unknown[] };
    expect(document.skipped).toHaveLength(1);
    expect(document.points).toHaveLength(36);
  });

  it("cannot run where every file is unreadable", async () => {
    expect((await run("screen", here("nowhere.xlsx"), "--skip-unreadable")).code).toBe(2);
  });
});

describe("spotface check-rules", () => {
  it("runs every case of the shipped rulebook", async () => {
    const { out, err, code } = await run("check-rules");
    expect([code, err]).toEqual([0, ""]);
    expect(out).toMatch(
      /\d{2,} rules, 3 sensor models, \d+ tables, \d+ case runs, 0 not as expected\ndigest [0-9a-f]{64}\n/,
    );
  });

  it("names the place of a mistake", async () => {
    const { err, code } = await run("check-rules", brokenBook());
    expect(code).toBe(2);
    expect(err).toMatch(/min-speed\.yaml:\d+:\d+: /);
  });

  it("ends with exit code 1 where a case comes out otherwise", async () => {
    const book = here("other-book");
    cpSync(projectPath("rules"), book, { recursive: true });
    const file = join(book, "bond/adhesive-cure.yaml");
    writeFileSync(file, readFileSync(file, "utf8").replace("below: 15 min", "below: 14 min"));
    const { err, code } = await run("check-rules", book);
    expect(code).toBe(1);
    expect(err).toMatch(/adhesive-cure\.yaml:\d+:\d+: case "just short"/);
  });
});

describe("spotface", () => {
  it("helps, and tells its version", async () => {
    const help = { ...(await run("--help")) };
    expect([help.code, help.out]).toEqual([0, expect.stringContaining("not a permission")]);
    terminal = fakeTerminal();
    expect((await run("--version")).out).toMatch(/^\d+\.\d+\.\d+\n$/);
  });
});

function made(name: string, text: string): string {
  writeFileSync(here(name), text);
  return here(name);
}

function cut(name: string): string {
  writeFileSync(here(name), readFileSync(projectPath("tests/data/surveys/quillmoor.xlsx")).subarray(0, 4000));
  return here(name);
}

function brokenBook(): string {
  const book = here("broken-book");
  cpSync(projectPath("rules"), book, { recursive: true });
  const file = join(book, "speed/min-speed.yaml");
  writeFileSync(
    file,
    readFileSync(file, "utf8").replace("judges: lowest_running_speed", "judges: lowest_runing_speed"),
  );
  return book;
}

function digestOf(path: string): string {
  return createHash("sha256").update(readFileSync(path)).digest("hex");
}
