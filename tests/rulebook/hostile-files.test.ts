import { describe, expect, it } from "vitest";
import type { TextFile } from "../../src/base/index.js";
import { loadRulebook } from "../../src/rulebook/index.js";
import { leastWork } from "../tools/work.js";
import { SMALL_BOOK, smallFiles } from "./small-book.js";

const PATH = "hole/thread-depth.yaml";
const RULE = SMALL_BOOK[PATH] ?? "";

/** The rule with one line of it replaced. */
function rule(from: string, to: string): string {
  if (!RULE.includes(from)) throw new Error(`"${from}" is not in the rule`);
  return RULE.replace(from, () => to);
}

function deepCondition(depth: number): string {
  return `${"{ all: [".repeat(depth)}{ fact: stage, operator: equal, value: proposed }${"] }".repeat(depth)}`;
}

function asJson(text: string): string {
  return `{"id": "thread-depth", ${text}}`;
}

const CONDITION = "{ fact: mounting_method, operator: equal, value: tapped-hole }";

/** Text of the rule file, and the code of the finding that must be among those given. */
const HOSTILE: readonly (readonly [name: string, text: string, code: string])[] = [
  ["key __proto__ at the top", `__proto__: { polluted: true }\n${RULE}`, "refused-key"],
  [
    "key constructor inside",
    rule("  text:", "  constructor: { prototype: { polluted: true } }\n  text:"),
    "refused-key",
  ],
  ["key prototype as JSON", asJson('"prototype": {"polluted": true}'), "refused-key"],
  [
    "pattern that backtracks",
    rule(CONDITION, '{ fact: machine_name, operator: matches, value: "^(a+)+$" }'),
    "unknown-operator",
  ],
  ["conditions 20,000 deep in brackets", rule(CONDITION, deepCondition(20_000)), "too-deep"],
  ["lists 100,000 deep", "[".repeat(100_000), "too-deep"],
  ["lists 100,000 deep on one line", "- ".repeat(100_000), "too-deep"],
  ["keys 100,000 deep", "? ".repeat(100_000), "too-deep"],
  [
    "mappings 600 deep by indentation",
    Array.from({ length: 600 }, (_, i) => `${" ".repeat(i)}a:`).join("\n"),
    "too-deep",
  ],
  [
    "conditions 20,000 deep as JSON",
    asJson(`"appliesWhen": ${'{"not": '.repeat(20_000)}1${"}".repeat(20_000)}`),
    "too-deep",
  ],
  [
    "list of 60,000",
    rule("sets: [core, full]", `sets: [${Array.from({ length: 20_000 }, (_, i) => `v${i}`).join(", ")}]`),
    "list-too-long",
  ],
  ["file of a megabyte", `${RULE}# ${"x".repeat(1_000_000)}`, "file-too-long"],
  ["mapping of 20,000 keys", Array.from({ length: 20_000 }, (_, i) => `k${i}: 1`).join("\n"), "too-many-keys"],
  ["same key twice as JSON", asJson('"undecided": "fail", "undecided": "warn"'), "duplicate-key"],
  [
    "path with a filter",
    rule(CONDITION, '{ fact: machine_name, operator: equal, value: "x", path: "$[?(@.length>0)]" }'),
    "refused-key",
  ],
  ["params", rule(CONDITION, '{ fact: machine_name, operator: equal, value: "x", params: { a: 1 } }'), "refused-key"],
  [
    "value that is a mapping with a path",
    rule(CONDITION, '{ fact: machine_name, operator: equal, value: { fact: thread, path: "$.x" } }'),
    "refused-key",
  ],
  [
    "program text for a condition",
    rule(CONDITION, '"thread_depth > 3 && (() => { while (true) {} })()"'),
    "wrong-kind",
  ],
  [
    "program text for an operator",
    rule(CONDITION, '{ fact: thread_depth, operator: "function(){return true}", value: 1 mm }'),
    "unknown-operator",
  ],
  [
    "operator constructor",
    rule(CONDITION, "{ fact: thread_depth, operator: constructor, value: 1 mm }"),
    "unknown-operator",
  ],
  ["operator toString", rule(CONDITION, "{ fact: thread_depth, operator: toString, value: 1 mm }"), "unknown-operator"],
  ["fact constructor", rule(CONDITION, "{ fact: constructor, operator: equal, value: x }"), "unknown-fact"],
  ["empty all", rule(CONDITION, "{ all: [] }"), "list-too-short"],
  ["empty any", rule(CONDITION, "{ any: [] }"), "list-too-short"],
  ["empty condition", rule(CONDITION, "{}"), "missing-key"],
  ["comparison without value", rule(CONDITION, "{ fact: thread_depth, operator: lessThan }"), "missing-key"],
  ["temperature limit in mm", rule("judges: thread_depth", "judges: surface_temperature"), "wrong-dimension"],
  ["number with stray words", rule("8 mm, 80 mm", '"8 mm or so", 80 mm'), "unknown-unit"],
  ["number as text", rule("8 mm, 80 mm", '"8", 80 mm'), "no-unit"],
  ["JSON with comments and NaN", '{ // comment\n "id": \'x\', rules: [1,2,], "v": NaN }', "unknown-key"],
  ["UTF-16 read as bytes", [...RULE].map((letter) => `${letter}\u0000`).join(""), "not-plain-text"],
  ["UTF-16 read with replacement characters", `\ufffd\ufffd${RULE}`, "not-plain-text"],
  ["cut in the middle", RULE.slice(0, RULE.indexOf("bolt: {") + 20), "not-yaml"],
  ["cut in the middle at the end of a line", RULE.slice(0, RULE.indexOf("citations:")), "missing-key"],
  ["zero bytes", "", "empty-file"],
  ["comments only", "# nothing here\n", "empty-file"],
  [
    "include that reaches out",
    `${RULE}include: [../../../../etc/hostname, "http://127.0.0.1:9/r.json"]\n`,
    "refused-key",
  ],
  ["reference that reaches out", `${RULE}$ref: "../../x.json"\n`, "refused-key"],
  ["id that is markup", rule("id: thread-depth", 'id: "<img src=x onerror=alert(1)>"'), "bad-form"],
  ["id that is a path", rule("id: thread-depth", 'id: "../../evil"'), "bad-form"],
  ["title that turns text around", rule("the thread is deep enough", "x\\u202etxt.exe"), "unseen-character"],
  ["title of two lines", rule("the thread is deep enough", "a\\nb"), "bad-form"],
  ["text of 200,000 letters", rule("tap deeper", "t".repeat(200_000)), "text-too-long"],
  ["rules that need each other", `${RULE}requires: [slow]\nskipIf: slow\n`, "unknown-key"],
  ["aliases in aliases", 'a: &a ["x", "x"]\nb: &b [*a, *a, *a]\nrules: *b\n', "anchor"],
  ["list of rules in one file", "rules: []\n", "unknown-key"],
  ["a text alone", "just text\n", "wrong-kind"],
  ["a list alone", "- id: thread-depth\n", "wrong-kind"],
];

async function load(files: readonly TextFile[]) {
  const { result: loading, seconds } = await leastWork(1, () => loadRulebook(files));
  expect(seconds).toBeLessThan(1);
  expect(Object.keys(Object.prototype)).toEqual([]);
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  return loading;
}

describe("hostile rule files", () => {
  it.each(HOSTILE)("refuses %s, within a second, with the place", async (_name, text, code) => {
    const loading = await load(smallFiles({ [PATH]: text }));
    if (loading.ok) throw new Error("it loaded");
    const finding = loading.findings.find((found) => found.code === code);
    expect(finding, JSON.stringify(loading.findings.slice(0, 3))).toMatchObject({ file: PATH });
    const lines = text.split("\n");
    for (const found of loading.findings) {
      expect(found.line).toBeLessThanOrEqual(lines.length);
      expect(found.column).toBeLessThanOrEqual((lines[found.line - 1] ?? "").length + 1);
      expect(found.text.length).toBeLessThan(400);
    }
  });

  it("reads a file that begins with a byte order mark, with the places unchanged", async () => {
    expect((await load(smallFiles({ [PATH]: `\ufeff${RULE}` }))).ok).toBe(true);
    const broken = await load(smallFiles({ [PATH]: `\ufeff${RULE.replace("id: thread-depth", "id: x")}` }));
    expect(broken.ok ? [] : broken.findings).toMatchObject([{ line: 1, column: 5 }]);
  });

  it("reads a rule written as JSON", async () => {
    const json = JSON.stringify({
      id: "warm",
      title: "not too warm",
      sets: ["core"],
      stages: ["proposed"],
      judges: "surface_temperature",
      limits: [{ from: "2026-01-01", until: null, fail: { above: "80 °C" }, cites: ["c"] }],
      citations: { c: { basis: "from-memory", says: "x" } },
      messages: { fail: "too warm" },
      remedy: { text: "cool it", change: [] },
      cases: [
        { name: "cool", given: { surface_temperature: "80 °C" }, expect: "pass" },
        { name: "warm", given: { surface_temperature: "81 °C" }, expect: "fail" },
        { name: "open", given: {}, expect: "undecided" },
      ],
      casesGive: { asOf: "2026-02-02" },
    });
    expect(await load(smallFiles({ "seat/warm.json": json }))).toMatchObject({ ok: true });
  });
});

describe("a hostile folder", () => {
  const codes = (files: readonly TextFile[], root?: string): readonly string[] => {
    const loading = loadRulebook(files, root === undefined ? {} : { root });
    return loading.ok
      ? []
      : loading.findings.map(({ file, line, column, code }) => `${file}:${line}:${column} ${code}`);
  };

  it("refuses a rulebook without rules, without manifest, or without anything", () => {
    const noRules = smallFiles({ [PATH]: null, "speed/slow.yaml": null });
    expect(codes(noRules)).toEqual(["rulebook.yaml:1:1 no-rules"]);
    expect(codes(smallFiles({ "rulebook.yaml": null }))).toEqual(["rulebook.yaml:1:1 no-manifest"]);
    expect(codes([])).toEqual(["rulebook.yaml:1:1 no-manifest", "rulebook.yaml:1:1 no-rules"]);
    expect(codes(smallFiles({ "rulebook.json": SMALL_BOOK["rulebook.yaml"] ?? "" }))).toEqual([
      "rulebook.yaml:1:1 second-manifest",
    ]);
  });

  it("names both places of an id that stands twice, also in capitals and with a look-alike hyphen", () => {
    const twice = loadRulebook(smallFiles({ "seat/thread-depth.yaml": RULE }));
    expect(twice.ok ? [] : twice.findings).toMatchObject([
      { file: "seat/thread-depth.yaml", line: 1, column: 5, code: "duplicate-id", text: expect.stringContaining(PATH) },
    ]);
    for (const id of ["THREAD-DEPTH", "thread\u2011depth", "thread\u2212depth"]) {
      const found = codes(smallFiles({ "seat/thread-depth.yaml": RULE.replace("id: thread-depth", `id: ${id}`) }));
      expect(found).toContain("seat/thread-depth.yaml:1:5 duplicate-id");
    }
  });

  it("refuses two models that are written alike, by id, title or another name", () => {
    const other = (id: string, title: string, written: string): readonly string[] => {
      const text = (SMALL_BOOK["models/baseline.yaml"] ?? "")
        .replace("id: baseline", `id: ${id}`)
        .replace('"a model"', `"${title}"`)
        .replace("BASE-1", written);
      return codes(smallFiles({ [`models/${id}.yaml`]: text }));
    };
    expect(other("other", "another", "OTHER-1")).toEqual([]);
    expect(other("other", "another", "Base‑1")).toEqual(["models/other.yaml:3:15 duplicate-name"]);
    expect(other("other", "another", "A  Model")).toEqual(["models/other.yaml:3:15 duplicate-name"]);
    expect(other("other", "another", "Baseline")).toEqual(["models/other.yaml:3:15 duplicate-name"]);
    expect(other("other", "A MODEL", "OTHER-1")).toEqual(["models/other.yaml:2:8 duplicate-name"]);
    expect(other("other", "base-1", "OTHER-1")).toEqual(["models/other.yaml:2:8 duplicate-name"]);
    // Files are looked at in the order of their paths, and the second of two is named.
    expect(other("base-1", "another", "OTHER-1")).toEqual(["models/baseline.yaml:3:15 duplicate-name"]);
  });

  it("refuses parts of overlays inside a rulebook, and files that have no place", () => {
    const text = "id: x\n";
    for (const path of ["overlay.yaml", "overlays/x.yaml", "overlays/site/rules/x.yaml", "changes/x.yaml"]) {
      const loading = loadRulebook(smallFiles({ [path]: text }));
      expect(loading.ok ? [] : loading.findings).toMatchObject([
        {
          file: path,
          line: 1,
          column: 1,
          code: "overlay-in-rulebook",
          text: expect.stringContaining("--over"),
        },
      ]);
    }
    expect(codes(smallFiles({ "stray.yaml": text }))).toEqual(["stray.yaml:1:1 no-topic"]);
    expect(codes(smallFiles({ "hole/old/x.yaml": text }))).toEqual(["hole/old/x.yaml:1:1 nested-folder"]);
    expect(codes(smallFiles({ "../x.yaml": text }))).toEqual(["../x.yaml:1:1 bad-path"]);
  });

  it("passes over files that are no data, and takes a root off the paths", () => {
    expect(codes(smallFiles({ "CHANGES.md": "# x" }))).toEqual([]);
    const rooted = smallFiles().map(({ path, text }) => ({ path: `site/rules/${path}`, text }));
    expect(codes(rooted, "site/rules")).toEqual([]);
    expect(codes(rooted, "site/rules/")).toEqual([]);
    expect(codes([...rooted, { path: "elsewhere/x.yaml", text: "" }], "site/rules")).toEqual([
      "elsewhere/x.yaml:1:1 outside-folder",
    ]);
  });

  it("refuses too many files", () => {
    const many = Object.fromEntries(Array.from({ length: 1001 }, (_, i) => [`hole/r${i}.yaml`, RULE]));
    expect(codes(smallFiles(many))).toEqual([":1:1 too-many-files"]);
  });

  it("refuses conditions that go round in a circle, and conditions that multiply", async () => {
    const named = (id: string, ...parts: readonly string[]): string =>
      `id: ${id}\ntitle: "x"\nwhen: { all: [${parts.map((part) => `{ condition: ${part} }`).join(", ")}] }\n`;
    expect(
      codes(
        smallFiles({
          "conditions/a.yaml": named("a", "b"),
          "conditions/b.yaml": named("b", "c"),
          "conditions/c.yaml": named("c", "outdoors", "a"),
        }),
      ),
    ).toEqual(["conditions/a.yaml:3:1 condition-cycle"]);
    const doubling: Record<string, string> = { "conditions/d0.yaml": named("d0", "outdoors") };
    for (let i = 1; i <= 40; i++) doubling[`conditions/d${i}.yaml`] = named(`d${i}`, `d${i - 1}`, `d${i - 1}`);
    const files = smallFiles({ ...doubling, [PATH]: rule("condition: outdoors", "condition: d40") });
    const { result, seconds } = await leastWork(1, () => codes(files));
    expect(result).toEqual([`${PATH}:1:1 rule-too-large`]);
    expect(seconds).toBeLessThan(1);
  });

  it("refuses a condition that no rule reaches, once nothing else is wrong with the rules", () => {
    const idle = { "conditions/idle.yaml": `id: idle\ntitle: "x"\nwhen: { condition: outdoors }\n` };
    expect(codes(smallFiles(idle))).toEqual(["conditions/idle.yaml:1:5 unused-condition"]);
    expect(codes(smallFiles({ ...idle, [PATH]: rule("condition: outdoors", "condition: idle") }))).toEqual([]);
    expect(codes(smallFiles({ ...idle, [PATH]: rule("condition: outdoors", "condition: idel") }))).toHaveLength(1);
  });

  it("gathers findings over all files, in the order of files and lines", () => {
    const found = codes(
      smallFiles({ [PATH]: rule("undecided: fail", "undecided: no\nodd: 1"), "models/baseline.yaml": "id: 5\n" }),
    );
    expect(found).toEqual([
      `${PATH}:32:12 unknown-word`,
      `${PATH}:33:1 unknown-key`,
      "models/baseline.yaml:1:1 missing-key",
      "models/baseline.yaml:1:5 wrong-kind",
    ]);
  });
});
