import { describe, expect, it } from "vitest";
import { loadRulebook, type Rulebook } from "../../src/rulebook/index.js";
import { reachesLevel } from "../../src/screening/index.js";
import { GOOD_POINT, known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { shippedFiles, shippedRulebook } from "../tools/shipped.js";

const rulebook = await shippedRulebook();

function without(...ids: readonly string[]): typeof GOOD_POINT {
  return Object.fromEntries(Object.entries(GOOD_POINT).filter(([id]) => !ids.includes(id)));
}

describe("the verdict of a row", () => {
  it.each([
    ["pass", GOOD_POINT, []],
    ["warn", { ...GOOD_POINT, surface_finish: known("painted") }, ["seat-material warn"]],
    ["warn", { ...GOOD_POINT, flat_diameter: unknown("missing") }, ["seat-diameter undecided"]],
    [
      "fail",
      { ...GOOD_POINT, flat_diameter: known(29.9), target_torque: unknown("doubtful") },
      ["seat-diameter fail", "tightening-torque undecided"],
    ],
    ["fail", { ...GOOD_POINT, supply_kind: known("ac") }, ["supply-voltage fail"]],
    ["fail", { ...GOOD_POINT, supply_voltage: known(12), supply_kind: unknown("missing") }, ["supply-voltage fail"]],
    ["warn", { ...GOOD_POINT, supply_kind: unknown("missing") }, ["supply-voltage undecided"]],
  ] as const)("is %s", (verdict, row, findings) => {
    const [point] = screenRows(rulebook, [surveyOf([row])]).points;
    expect(point?.verdict).toBe(verdict);
    expect(point?.findings.map((finding) => `${finding.rule} ${finding.outcome}`)).toEqual(findings);
  });

  it("counts an open question as a fail where the rule says so, and leaves its outcome undecided", async () => {
    const strict = await changedBook("seat/seat-diameter.yaml", (text) => `${text}undecided: fail\n`);
    const { points, screening } = screenRows(strict, [surveyOf([without("flat_diameter")])]);
    expect(points[0]?.verdict).toBe("fail");
    expect(points[0]?.findings.map((f) => f.outcome)).toEqual(["undecided"]);
    expect(screening.summary()).toMatchObject({ fail: 1, warnOnlyUndecided: 0 });
  });

  it("counts points that warn only because something is undecided, and what would settle them", () => {
    const rows = [
      GOOD_POINT,
      { ...GOOD_POINT, flat_diameter: unknown("missing") },
      { ...GOOD_POINT, flat_diameter: unknown("missing"), surface_finish: known("painted") },
    ];
    const summary = screenRows(rulebook, [surveyOf(rows)]).screening.summary();
    expect(summary).toMatchObject({ points: 3, pass: 1, warn: 2, fail: 0, warnOnlyUndecided: 1 });
    expect(summary.toMeasure).toEqual([{ fact: "flat_diameter", points: 2 }]);
    expect(summary.byRule.find((counts) => counts.rule === "seat-diameter")).toMatchObject({ pass: 1, undecided: 2 });
  });

  it("looks up the limits of the day", () => {
    const [point] = screenRows(rulebook, [surveyOf([GOOD_POINT])], { asOf: "2025-12-31" }).points;
    expect(new Set(point?.findings.map((finding) => finding.outcome))).toEqual(new Set(["no-limit-in-force"]));
    expect(point?.verdict).toBe("warn");
  });

  it("judges what was built at the stage installed", () => {
    const row = { ...GOOD_POINT, applied_torque: known(12), voltage_at_sensor: known(23.1) };
    const [point] = screenRows(rulebook, [surveyOf([row])], { stage: "installed" }).points;
    expect(point?.findings.map((finding) => `${finding.rule} ${finding.outcome}`)).toEqual(["tightening-torque fail"]);
  });

  it("refuses a set that the rulebook does not have", () => {
    expect(() => screenRows(rulebook, [], { set: "gold" })).toThrow(/no set "gold"; it has core, full/);
  });
});

describe("a finding", () => {
  it("carries the judged fact with its cell, the limit with its origin, and the margin", () => {
    const row = { ...GOOD_POINT, thread_depth: known(8.5, "K7") };
    const finding = screenRows(rulebook, [surveyOf([row])]).points[0]?.findings[0];
    expect(finding).toMatchObject({
      rule: "thread-depth",
      outcome: "fail",
      facts: [
        { fact: "thread_depth", value: 8.5, unit: "mm", cells: [{ sheet: "S", cell: "K7" }], origin: null },
        {},
        {},
      ],
      limit: { is: "below", value: 9, unit: "mm", from: "2026-01-01", fact: "model.thread_depth_min" },
      margin: { value: -0.5 },
      message: "the full thread is 8.5 mm deep, the bolt needs 9 mm",
    });
    expect(finding?.limit?.origin.file).toBe("rules/models/baseline.yaml");
    expect(finding?.margin?.fraction).toBeCloseTo(-0.5 / 9, 12);
  });

  it("of a derived fact shows the cells under it and names what is missing there", () => {
    const row = {
      ...without("nominal_speed", "variable_speed"),
      nominal_speed: known(1485, "D7"),
      variable_speed: known("yes", "E7"),
    };
    const finding = screenRows(rulebook, [surveyOf([row])]).points[0]?.findings.find((f) => f.rule === "min-speed");
    expect(finding).toMatchObject({
      outcome: "undecided",
      atBest: "pass",
      missing: [{ fact: "lowest_speed", reason: "missing" }],
    });
    expect(finding?.facts[0]).toMatchObject({ fact: "lowest_running_speed", value: null, lowest: null, highest: 1485 });
    expect(finding?.facts[0]?.cells).toEqual([{ sheet: "S", cell: "D7" }]);
    expect(finding?.message).toContain("lowest speed is missing");
    expect(finding?.remedy).toBe("find out: lowest speed (at least 601 r/min is enough)");
  });

  it("fails a single speed under a variable drive that is too low already", () => {
    const row = {
      ...GOOD_POINT,
      nominal_speed: known(600),
      variable_speed: known("yes"),
      speed_reference: known("pulses"),
    };
    expect(screenRows(rulebook, [surveyOf([row])]).points[0]?.findings.map((f) => `${f.rule} ${f.outcome}`)).toEqual([
      "min-speed fail",
    ]);
  });

  it("is listed on pass and not-applicable only when asked for", () => {
    const all = screenRows(rulebook, [surveyOf([GOOD_POINT])], { allFindings: true }).points[0];
    expect(all?.findings).toHaveLength(9);
    expect(all?.findings.find((f) => f.rule === "seat-diameter")).toMatchObject({
      outcome: "pass",
      margin: { value: 5 },
    });
    expect(screenRows(rulebook, [surveyOf([GOOD_POINT])]).points[0]?.findings).toEqual([]);
  });
});

describe("the sensor model", () => {
  it("is the baseline, said once, where nothing speaks of a model", () => {
    const { screening } = screenRows(rulebook, [surveyOf([GOOD_POINT, GOOD_POINT])]);
    expect(screening.head.models.map((model) => model.id)).toEqual(["baseline"]);
    expect(screening.head.surveys[0]?.problems.filter((problem) => problem.code === "no-model")).toHaveLength(1);
  });

  it("gives other limits where the survey names another", () => {
    const rows = ["baseline", "example-compact", "Example COMPACT-22"].map((model) => ({
      ...GOOD_POINT,
      flat_diameter: known(25),
      target_torque: known(4),
      sensor_model: known(model),
    }));
    const { points, screening } = screenRows(rulebook, [surveyOf(rows)]);
    expect(points.map((point) => point.verdict)).toEqual(["fail", "pass", "pass"]);
    expect(screening.head.models.map((model) => model.id)).toEqual(["baseline", "example-compact"]);
  });

  it.each([
    ["blank", unknown("missing"), "missing"],
    ["unreadable", unknown("unreadable"), "unreadable"],
    ["not in the rulebook", known("no such model"), "unreadable"],
  ] as const)("leaves its limits unknown where its cell is %s", (_name, sensor_model, reason) => {
    const rows = [
      { ...GOOD_POINT, sensor_model },
      { ...GOOD_POINT, sensor_model: known("baseline") },
    ];
    const [point] = screenRows(rulebook, [surveyOf(rows)]).points;
    expect(point?.findings.map((f) => f.rule)).toEqual([
      "hole-depth",
      "thread-depth",
      "seat-diameter",
      "min-speed",
      "supply-voltage",
      "tightening-torque",
    ]);
    for (const finding of point?.findings ?? [])
      expect(finding.missing).toEqual([{ fact: "sensor_model", reason, measureTo: null }]);
  });
});

const WALL_RULE = `
id: wall-thickness
title: "The wall is thick enough to be drilled"
sets: [full]
stages: [proposed, installed]
judges: wall_thickness
limits:
  - { from: 2026-01-01, until: null, reviewBy: 2028-01-01, fail: { below: 12 mm }, cites: [made-up] }
citations:
  made-up: { basis: from-memory, says: "made up for a test" }
messages: { fail: "the wall is {wall_thickness} thick" }
remedy: { text: "choose another place", change: [] }
cases:
  - { name: "thick", given: { wall_thickness: 12 mm }, expect: pass }
  - { name: "thin", given: { wall_thickness: 11.9 mm }, expect: fail }
  - { name: "not measured", given: {}, expect: undecided }
casesGive: { asOf: 2026-06-01 }
`;

describe("a rule outside the core", () => {
  it("is not asked, and says so once, where the survey has no column for what it needs", async () => {
    const book = await bookWith("seat/wall-thickness.yaml", WALL_RULE);
    const { points, screening } = screenRows(book, [surveyOf([GOOD_POINT, GOOD_POINT])], { set: "full" });
    expect(points.map((point) => point.verdict)).toEqual(["pass", "pass"]);
    const notAsked = screening.head.surveys[0]?.notAsked.filter(({ rule }) => rule === "wall-thickness");
    expect(notAsked).toMatchObject([{ rule: "wall-thickness", facts: ["wall_thickness"] }]);
    expect(screening.summary().byRule.find((counts) => counts.rule === "wall-thickness")).toMatchObject({
      undecided: 0,
    });
  });

  it("speaks on every row where the column is there", async () => {
    const book = await bookWith("seat/wall-thickness.yaml", WALL_RULE);
    const rows = [
      { ...GOOD_POINT, wall_thickness: known(10) },
      { ...GOOD_POINT, wall_thickness: unknown("missing") },
    ];
    const { points, screening } = screenRows(book, [surveyOf(rows)], { set: "full" });
    const outcomes = points.map(({ findings }) => findings.filter((f) => f.rule === "wall-thickness"));
    expect(outcomes.map((found) => found.map((f) => f.outcome))).toEqual([["fail"], ["undecided"]]);
    expect(screening.head.surveys[0]?.notAsked.map(({ rule }) => rule)).not.toContain("wall-thickness");
    expect(screenRows(book, [surveyOf(rows)]).points.map((point) => point.verdict)).toEqual(["pass", "pass"]);
  });
});

describe("a run", () => {
  it("has one digest for the same inputs, and another for any other option", () => {
    const digest = (options: object): string =>
      screenRows(rulebook, [surveyOf([GOOD_POINT])], options).screening.head.digest;
    expect(digest({})).toBe(digest({}));
    const others = [
      { asOf: "2026-11-24" },
      { stage: "installed" },
      { siteName: "Kai" },
      { allFindings: true },
      { set: "full" },
    ];
    expect(new Set([digest({}), ...others.map(digest)]).size).toBe(others.length + 1);
  });

  it.each([
    ["pass", GOOD_POINT, [false, false, false]],
    ["warn", { ...GOOD_POINT, surface_finish: known("painted") }, [false, true, false]],
    ["undecided", { ...GOOD_POINT, flat_diameter: unknown("missing") }, [false, true, true]],
    ["fail", { ...GOOD_POINT, flat_diameter: known(3) }, [true, true, true]],
  ] as const)("tells whether a point that is %s reaches fail, warn, undecided", (_name, row, reached) => {
    const [point] = screenRows(rulebook, [surveyOf([row])]).points;
    if (!point) throw new Error("no point");
    expect((["fail", "warn", "undecided"] as const).map((level) => reachesLevel(point, level))).toEqual(reached);
  });
});

async function bookWith(path: string, text: string): Promise<Rulebook> {
  return loaded([...(await shippedFiles()), { path: `rules/${path}`, text }]);
}

async function changedBook(path: string, change: (text: string) => string): Promise<Rulebook> {
  const files = await shippedFiles();
  return loaded(files.map((file) => (file.path === `rules/${path}` ? { ...file, text: change(file.text) } : file)));
}

function loaded(files: Parameters<typeof loadRulebook>[0]): Rulebook {
  const loading = loadRulebook(files, { root: "rules" });
  if (!loading.ok) throw new Error(loading.findings.map((f) => `${f.file}:${f.line} ${f.text}`).join("\n"));
  return loading.rulebook;
}
