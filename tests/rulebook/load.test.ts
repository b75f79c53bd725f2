import { describe, expect, it } from "vitest";
import type { Facts } from "../../src/facts/index.js";
import { MODEL_FACTS } from "../../src/facts/index.js";
import { loadRulebook, type Rulebook, runCase } from "../../src/rulebook/index.js";
import { shippedFiles, shippedRulebook } from "./shipped.js";
import { SMALL_BOOK, smallFiles } from "./small-book.js";

function load(changed: Readonly<Record<string, string | null>> = {}): Rulebook {
  const loading = loadRulebook(smallFiles(changed));
  if (!loading.ok) throw new Error(JSON.stringify(loading.findings));
  return loading.rulebook;
}

const CORE = [
  "min-speed",
  "speed-reference",
  "seat-material",
  "seat-diameter",
  "hole-depth",
  "thread-depth",
  "tightening-torque",
  "supply-voltage",
  "adhesive-cure",
];

describe("the shipped rulebook", () => {
  const book = shippedRulebook();

  it("has the nine core rules, at both stages and in both sets", () => {
    const core = book.rules.filter(({ sets }) => sets.includes(book.defaultSet));
    expect(core.map(({ id }) => id).sort()).toEqual([...CORE].sort());
    for (const rule of core) {
      expect(rule).toMatchObject({ sets: ["core", "full"], stages: ["proposed", "installed"] });
      expect(rule.limits[0]).toMatchObject({ from: "2026-01-01", until: null, reviewBy: "2028-01-01" });
    }
  });

  it("states for the baseline what common practice has, and for the invented models every model fact", () => {
    const baseline = book.models.get(book.baselineModel);
    const values = [...(baseline?.facts ?? [])].map(([id, [first]]) => [id, first?.state.known && first.state.value]);
    expect(values).toEqual([
      ["model.speed_min", { lowest: 600, highest: 600 }],
      ["model.seat_diameter_min", { lowest: 30, highest: 30 }],
      ["model.hole_depth_min", { lowest: 15, highest: 15 }],
      ["model.thread_depth_min", { lowest: 9, highest: 9 }],
      ["model.torque_max", { lowest: 10, highest: 10 }],
      ["model.supply_voltage_min", { lowest: 20.4, highest: 20.4 }],
      ["model.supply_voltage_max", { lowest: 28.8, highest: 28.8 }],
      ["model.temperature_max", { lowest: 85, highest: 85 }],
      ["model.lower_corner", { lowest: 10, highest: 10 }],
    ]);
    const all = MODEL_FACTS.map(({ id }) => id).sort();
    for (const model of book.models.values())
      if (model !== baseline) expect([...model.facts.keys()].sort()).toEqual(all);
  });

  it("names no clause that was not read", () => {
    const cited = [...book.rules, ...book.models.values()].flatMap(({ citations }) => [...citations.values()]);
    for (const citation of cited.filter(({ clause }) => clause !== undefined)) expect(citation.readOn).toBeDefined();
  });

  it("brings words for the importer", () => {
    expect(book.words.common.yes).toContain("ja");
    expect(book.words.fields.get("surface_material")?.choices?.aluminium).toContain("alu");
  });

  it("stays the same when line ends differ", () => {
    const other = shippedFiles().map(({ path, text }) => ({ path, text: text.replaceAll("\n", "\r\n") }));
    const loading = loadRulebook(other, { root: "rules" });
    expect(loading.ok && loading.rulebook.digest).toBe(book.digest);
  });
});

describe("the digest", () => {
  it("follows the data, not the layout, the order of files or the folder they lie in", () => {
    const { digest } = load();
    expect(digest).toMatch(/^[0-9a-f]{64}$/);
    const shuffled = loadRulebook([...smallFiles()].reverse());
    expect(shuffled.ok && shuffled.rulebook.digest).toBe(digest);
    const rooted = loadRulebook(
      smallFiles().map(({ path, text }) => ({ path: `a/b/${path}`, text })),
      { root: "a/b" },
    );
    expect(rooted.ok && rooted.rulebook.digest).toBe(digest);
    expect(load({ "rulebook.yaml": `# remark\n${SMALL_BOOK["rulebook.yaml"]}` }).digest).toBe(digest);
    expect(load({ "words/few.yaml": null }).digest).not.toBe(digest);
  });
});

describe("a rulebook without words", () => {
  it("loads, and understands nothing but the fields themselves", () => {
    const { words } = load({ "words/few.yaml": null });
    expect(words.fields.size).toBe(0);
    expect(words.common.missing).toEqual([]);
  });

  it("refuses the words of a field that stand in two files", () => {
    const loading = loadRulebook(smallFiles({ "words/more.yaml": SMALL_BOOK["words/few.yaml"] ?? "" }));
    expect(loading.ok ? [] : loading.findings).toMatchObject([
      { file: "words/more.yaml", line: 2, column: 3, code: "words-twice" },
    ]);
  });
});

describe("a case", () => {
  const book = load();
  const rule = book.rules.find(({ id }) => id === "thread-depth");
  if (!rule) throw new Error("no rule");
  const [deep, open] = rule.cases;
  if (!deep || !open) throw new Error("no cases");

  it("without stage runs for each stage of its rule", () => {
    expect(runCase(rule, deep, book).map(({ stage, asExpected }) => [stage, asExpected])).toEqual([
      ["proposed", true],
      ["installed", true],
    ]);
    const staged = { ...deep, given: { ...deep.given, stage: "installed" } };
    expect(runCase(rule, staged, book).map(({ stage }) => stage)).toEqual(["installed"]);
  });

  it("says what came out differently", () => {
    const differ = (changed: object) => runCase(rule, { ...open, ...changed }, book)[0]?.difference;
    expect(differ({})).toBeNull();
    expect(differ({ expect: "pass" })).toBe("expected pass, found undecided (open: thread_depth)");
    expect(differ({ missing: ["hole_depth"] })).toBe("expected hole_depth to be missing, found thread_depth");
    expect(differ({ missing: [] })).toBe("expected nothing to be missing, found thread_depth");
  });

  it("may be completed with derived facts", () => {
    const derive = (facts: Facts) => {
      expect(facts.has("mounting_method")).toBe(true);
      return new Map();
    };
    expect(runCase(rule, deep, book, { derive })[0]?.judgement.outcome).toBe("undecided");
  });
});
