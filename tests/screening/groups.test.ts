import { describe, expect, it } from "vitest";
import type { FactState } from "../../src/facts/index.js";
import type { Survey } from "../../src/records/index.js";
import type { PointResult, ScreeningOptions } from "../../src/screening/index.js";
import { GOOD_POINT, known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";

type Row = Readonly<Record<string, FactState>>;

const rulebook = await shippedRulebook();

function full(surveys: readonly Survey[], options: Partial<ScreeningOptions> = {}) {
  return screenRows(rulebook, surveys, { set: "full", ...options });
}

/** What the rules of groups say of a point. */
function ofGroups(point: PointResult | undefined): readonly string[] {
  return (point?.findings ?? []).flatMap(({ rule, outcome, group }) =>
    group === null ? [] : [`${rule} ${outcome} ${group}`],
  );
}

function supplied(name: string, more: Row = {}): Row {
  const stated = { sensor_current: known(100), supply_rating: known(1000), criticality: known("B") };
  return { supply_name: known(name, "P2"), ...stated, ...more };
}

function times(count: number, row: Row): readonly Row[] {
  return Array.from({ length: count }, () => row);
}

describe("a supply", () => {
  it("fails all its points where their currents come to more than its rating, and no others", () => {
    const { points, screening } = full([surveyOf([...times(11, supplied("PSU 1")), ...times(8, supplied("PSU 2"))])]);
    for (const point of points.slice(0, 11)) {
      expect(point.verdict).toBe("fail");
      expect(ofGroups(point)).toEqual(["supply-current fail supply: PSU 1"]);
    }
    for (const point of points.slice(11)) expect(ofGroups(point)).toEqual([]);
    expect(screening.head.groups.map(({ id, rows }) => [id, rows.length])).toEqual([["supply: PSU 1", 11]]);
    const [finding] = screening.head.groups[0]?.findings ?? [];
    expect(finding).toMatchObject({
      rule: "supply-current",
      outcome: "fail",
      facts: [
        { fact: "group.supply_current", value: 1100, unit: "mA" },
        { fact: "group.supply_rating", value: 1000 },
      ],
      limit: { is: "above", value: 1000, fact: "group.supply_rating" },
      margin: { value: -100, fraction: -0.1 },
      message: "1100 mA are drawn from the supply PSU 1 by 11 points, it is rated 1000 mA",
      group: "supply: PSU 1",
    });
  });

  it("shows a point's finding with the cell that names the supply", () => {
    const { points } = full([surveyOf(times(11, supplied("PSU 1")))]);
    const finding = points[3]?.findings.find(({ rule }) => rule === "supply-current");
    expect(finding?.facts[0]?.cells).toEqual([{ sheet: "S", cell: "P2" }]);
  });

  it("warns above 80 % and passes at it", () => {
    expect(ofGroups(full([surveyOf(times(9, supplied("PSU 1")))]).points[0])).toEqual([
      "supply-current warn supply: PSU 1",
    ]);
    expect(ofGroups(full([surveyOf(times(8, supplied("PSU 1")))]).points[0])).toEqual([]);
  });

  it("adds unlike currents up as each row states its own, over all files", () => {
    const surveys = [
      surveyOf(times(4, supplied("PSU 1")), "a.xlsx"),
      surveyOf([supplied("PSU 1", { sensor_current: known(601) })], "b.xlsx"),
    ];
    const { screening } = full(surveys);
    expect(screening.head.groups[0]?.findings[0]?.facts[0]).toMatchObject({ value: 1001 });
    expect(screening.head.groups[0]?.rows.map(({ file, row }) => `${file} ${row}`)).toEqual([
      "a.xlsx 2",
      "a.xlsx 3",
      "a.xlsx 4",
      "a.xlsx 5",
      "b.xlsx 2",
    ]);
  });

  it("is undecided where a current is missing, and fails all the same where the others are too much", () => {
    const blank = supplied("PSU 1", { sensor_current: unknown("doubtful") });
    const { points, screening } = full([surveyOf([...times(3, supplied("PSU 1")), blank])]);
    expect(ofGroups(points[0])).toEqual(["supply-current undecided supply: PSU 1"]);
    expect(screening.head.groups[0]?.findings[0]).toMatchObject({
      facts: [{ fact: "group.supply_current", lowest: 300, highest: null }, { fact: "sensor_current" }],
      missing: [{ fact: "sensor_current", reason: "doubtful" }],
      message:
        "running current of all points on the supply cannot be judged: sensor current is marked as doubtful; at best pass",
      remedy: "make sure of: sensor current",
    });
    const { points: many } = full([surveyOf([...times(11, supplied("PSU 1")), blank])]);
    expect(ofGroups(many[0])).toEqual(["supply-current fail supply: PSU 1"]);
  });

  it("is undecided where rows state unlike ratings, and says which cells do", () => {
    const rows = [supplied("PSU 1"), supplied("PSU 1", { supply_rating: known(2000, "Q3") }), supplied("PSU 1")];
    const { points, screening } = full([surveyOf(rows)]);
    expect(ofGroups(points[0])).toEqual(["supply-current undecided supply: PSU 1"]);
    expect(points[0]?.findings.at(-1)?.missing).toEqual([
      { fact: "supply_rating", reason: "conflicting", measureTo: null },
    ]);
    expect(screening.head.groups[0]?.disagreements).toEqual([
      {
        fact: "supply_rating",
        values: [
          { value: "1000 mA", rows: 2, cells: times2("A1") },
          { value: "2000 mA", rows: 1, cells: [{ file: "made.xlsx", sheet: "S", cell: "Q3" }] },
        ],
      },
    ]);
  });

  it("takes the rating that some rows state for all of them, but not beside one that cannot be read", () => {
    const blank = supplied("PSU 1", { supply_rating: unknown("missing") });
    expect(ofGroups(full([surveyOf([supplied("PSU 1"), blank])]).points[1])).toEqual([]);
    const smudged = supplied("PSU 1", { supply_rating: unknown("unreadable") });
    expect(ofGroups(full([surveyOf([supplied("PSU 1"), smudged])]).points[0])).toEqual([
      "supply-current undecided supply: PSU 1",
    ]);
  });

  it("warns where many points of class A hang on it, and where a count written in rows differs", () => {
    const row = supplied("PSU 1", { sensor_current: known(1), sensors_on_supply: known(12), criticality: known("A") });
    expect(ofGroups(full([surveyOf(times(9, row))]).points[0])).toEqual([
      "supply-count warn supply: PSU 1",
      "supply-critical-points warn supply: PSU 1",
    ]);
    expect(
      ofGroups(full([surveyOf([...times(8, row), ...times(4, { ...row, criticality: known("B") })])]).points[0]),
    ).toEqual([]);
    const open = { ...row, criticality: unknown("missing") };
    expect(ofGroups(full([surveyOf([...times(8, row), ...times(4, open)])]).points[0])).toEqual([
      "supply-critical-points undecided supply: PSU 1",
    ]);
  });
});

function times2(cell: string) {
  return [
    { file: "made.xlsx", sheet: "S", cell },
    { file: "made.xlsx", sheet: "S", cell },
  ];
}

describe("a name", () => {
  it("is the same in another case and with other blanks, spelled as the first of the alphabet", () => {
    const rows = [supplied("psu  1"), supplied("PSU 1"), supplied("Psu 1")].map((row) => ({
      ...row,
      sensor_current: known(500),
    }));
    const { screening } = full([surveyOf(rows)]);
    expect(screening.head.groups.map(({ id, key }) => [id, key])).toEqual([
      ["supply: PSU 1", [{ fact: "supply_name", value: "PSU 1" }]],
    ]);
  });

  it("is another one at another site, and the site stands in the id where rows state it", () => {
    const rows = ["North", "South"].flatMap((site) =>
      times(9, supplied("PSU 1", { site: known(site), sensor_current: known(100) })),
    );
    const { screening } = full([surveyOf(rows)]);
    expect(screening.head.groups.map(({ id, rows: members }) => [id, members.length])).toEqual([
      ["supply: North / PSU 1", 9],
      ["supply: South / PSU 1", 9],
    ]);
  });

  it("does not run into another where it holds the sign between two names", () => {
    const twins = (junction_box: string, channel: string): readonly Row[] =>
      times(2, { junction_box: known(junction_box), channel: known(channel) });
    const { screening } = full([surveyOf([...twins("A / B", "C"), ...twins("A", "B / C")])]);
    expect(screening.head.groups.map(({ id }) => id)).toEqual(['channel: "A / B" / C', 'channel: A / "B / C"']);
  });
});

describe("serial numbers and channels", () => {
  it("fail where they stand twice, and are undecided for a row without one, which is in no group", () => {
    const rows = [
      { sensor_serial: known("S-1", "K2") },
      { sensor_serial: known("s-1", "K3") },
      { sensor_serial: known("S-2", "K4") },
      { sensor_serial: unknown("missing") },
      {},
    ];
    const { points, screening } = full([surveyOf(rows)], { stage: "installed", allFindings: true });
    expect(points.map((point) => point.findings.find(({ rule }) => rule === "serial-once")?.outcome)).toEqual([
      "fail",
      "fail",
      "pass",
      "undecided",
      "undecided",
    ]);
    expect(screening.summary().byRule.find(({ rule }) => rule === "serial-once")).toMatchObject({
      fail: 2,
      pass: 1,
      undecided: 2,
    });
    const remarks = screening.head.surveys[0]?.problems.filter(({ code }) => code === "no-group") ?? [];
    expect(remarks.map(({ text }) => text)).toEqual([
      "2 rows do not state serial number of the sensor clearly and may be among any points with the same serial number of the sensor; none of these count them, so that also what passes there passes without them; for these rows what rules say of groups stays open",
    ]);
  });

  it("are not asked of a proposal", () => {
    const rows = times(2, { sensor_serial: known("S-1") });
    expect(ofGroups(full([surveyOf(rows)]).points[0])).toEqual([]);
  });
});

const AT = { asset_tag: known("P-1"), component: known("pump") };

describe("bearings, parts and machines", () => {
  it("warn on a class A bearing in one radial direction, and accept it on lower classes", () => {
    const bearing = (criticality: string, ...directions: readonly string[]): readonly Row[] =>
      directions.map((direction) => ({
        ...AT,
        bearing_position: known("intermediate"),
        criticality: known(criticality),
        direction: known(direction),
      }));
    const said = (rows: readonly Row[]) =>
      ofGroups(full([surveyOf(rows)]).points[0]).filter((one) => one.startsWith("radial-directions"));
    expect(said(bearing("A", "horizontal", "axial"))).toEqual([
      "radial-directions warn bearing: P-1 / pump / intermediate",
    ]);
    expect(said(bearing("A", "horizontal", "vertical"))).toEqual([]);
    expect(said(bearing("A", "triaxial"))).toEqual([]);
    expect(said(bearing("A", "radial", "radial"))).toEqual([]);
    expect(said(bearing("B", "horizontal", "axial"))).toEqual([]);
  });

  it("ask for an axial point at a thrust bearing and for the bearing at the other end", () => {
    const rows = [
      { ...AT, bearing_position: known("thrust"), direction: known("vertical") },
      { ...AT, bearing_position: known("drive-end"), direction: known("axial") },
    ];
    const { points } = full([surveyOf(rows)]);
    expect(ofGroups(points[0])).toEqual([
      "both-bearings warn machine-part: P-1 / pump",
      "thrust-axial warn bearing: P-1 / pump / thrust",
    ]);
    expect(ofGroups(points[1])).toEqual(["both-bearings warn machine-part: P-1 / pump"]);
  });

  it("count the points of a machine by its class, which its rows must agree on", () => {
    const machine = (...classes: readonly FactState[]): readonly Row[] =>
      classes.map((criticality) => ({ asset_tag: known("P-1"), criticality }));
    const said = (rows: readonly Row[]) => ofGroups(full([surveyOf(rows)]).points[0]);
    expect(said(machine(known("A")))).toEqual(["points-per-machine warn machine: P-1"]);
    expect(said(machine(known("A"), unknown("missing")))).toEqual([]);
    expect(said(machine(...Array.from({ length: 7 }, () => known("C"))))).toEqual([
      "points-per-machine warn machine: P-1",
    ]);
    expect(said(machine(...Array.from({ length: 6 }, () => known("C")), known("A")))).toEqual([
      "points-per-machine undecided machine: P-1",
    ]);
  });

  it("are counted by class in the summary", () => {
    const rows = [
      { asset_tag: known("P-1"), criticality: known("A") },
      { asset_tag: known("p-1"), criticality: unknown("missing") },
      { asset_tag: known("P-2"), criticality: known("A") },
      { asset_tag: known("P-2"), criticality: known("B") },
      { asset_tag: known("P-3"), criticality: known("C") },
      { criticality: known("C") },
    ];
    expect(full([surveyOf(rows)]).screening.summary().byCriticality).toEqual([
      { criticality: "A", machines: 1, points: 2 },
      { criticality: "C", machines: 1, points: 2 },
      { criticality: null, machines: 1, points: 2 },
    ]);
  });
});

describe("a survey without a column", () => {
  it("for the key is not asked, once, and has no group and no remark", () => {
    const { screening, points } = full([surveyOf(times(3, { ...GOOD_POINT, sensor_current: known(100) }))]);
    const [survey] = screening.head.surveys;
    expect(survey?.notAsked.find(({ rule }) => rule === "supply-current")).toMatchObject({
      facts: ["supply_name", "supply_rating"],
      text: expect.stringContaining("no column for name of the supply, rated current of the supply"),
    });
    expect(survey?.problems.filter(({ code }) => code === "no-group")).toEqual([]);
    expect(ofGroups(points[0])).toEqual([]);
    expect(screening.head.groups).toEqual([]);
  });

  it("for another fact is not asked, unless the rule is decided all the same", () => {
    const named = times(3, { supply_name: known("PSU 1"), sensor_current: known(100) });
    const { screening } = full([surveyOf(named)]);
    expect(screening.head.surveys[0]?.notAsked.find(({ rule }) => rule === "supply-current")?.facts).toEqual([
      "supply_rating",
    ]);
    expect(screening.head.groups).toEqual([]);
    const both = full([surveyOf(named, "a.xlsx"), surveyOf(times(9, supplied("PSU 1")), "b.xlsx")]);
    expect(ofGroups(both.points[0])).toEqual(["supply-current fail supply: PSU 1"]);
  });

  it("is asked nothing of groups in the set core", () => {
    const { screening, points } = full([surveyOf(times(11, supplied("PSU 1")))], { set: "core" });
    expect(screening.head.groups).toEqual([]);
    expect(ofGroups(points[0])).toEqual([]);
  });
});
