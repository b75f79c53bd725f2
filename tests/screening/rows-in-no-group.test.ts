import { describe, expect, it } from "vitest";
import type { FactState } from "../../src/facts/index.js";
import { type Finding, type PointResult, type ScreeningOptions, whyPoints } from "../../src/screening/index.js";
import { GOOD_POINT, known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";

type Row = Readonly<Record<string, FactState>>;

const rulebook = await shippedRulebook();
const OPTIONS: ScreeningOptions = {
  set: "full",
  stage: "proposed",
  asOf: "2026-11-25",
  siteName: null,
  allFindings: true,
};

function pointsOf(rows: readonly Row[], options: Partial<ScreeningOptions> = {}): readonly PointResult[] {
  return screenRows(rulebook, [surveyOf(rows)], { ...OPTIONS, ...options }).points;
}

function said(point: PointResult | undefined, rule: string): Finding | undefined {
  return point?.findings.find((finding) => finding.rule === rule);
}

const SUPPLIED: Row = {
  supply_name: known("PSU 1", "P2"),
  sensor_current: known(100),
  supply_rating: known(1000),
  criticality: known("B"),
};

describe("a row in which a fact of the key is not known", () => {
  it.each(["missing", "doubtful", "unreadable", "conflicting"] as const)(
    "leaves the rules of the group open, naming the key: %s",
    (reason) => {
      const points = pointsOf([SUPPLIED, { ...SUPPLIED, supply_name: unknown(reason) }]);
      expect(said(points[0], "supply-current")).toMatchObject({ outcome: "pass", group: "supply: PSU 1" });
      expect(said(points[1], "supply-current")).toMatchObject({
        outcome: "undecided",
        group: null,
        missing: [{ fact: "supply_name", reason, measureTo: null }],
      });
      expect(said(points[1], "supply-current")?.message).toContain("cannot be judged: name of the supply");
      expect(said(points[1], "supply-current")?.facts.at(-1)).toMatchObject({
        fact: "supply_name",
        cells: [{ sheet: "S", cell: "Z9" }],
      });
    },
  );

  it("counts as a warning, and is settled by the key", () => {
    const [clear, blank] = pointsOf(
      [
        { ...GOOD_POINT, junction_box: known("JB-1"), channel: known("1") },
        { ...GOOD_POINT, junction_box: known("JB-1"), channel: unknown("missing") },
      ],
      { allFindings: false },
    );
    const open = (point: PointResult | undefined) => point?.findings.filter(({ rule }) => rule === "channel-once");
    expect(open(clear)).toEqual([]);
    expect(open(blank)).toMatchObject([{ outcome: "undecided", missing: [{ fact: "channel" }] }]);
    expect(blank?.verdict).toBe("warn");
    expect(blank?.settledBy).toContain("channel");
  });

  it("is told apart from rows that lack another part of the key, or the same for another reason", () => {
    const box = unknown("missing");
    const points = pointsOf([
      { junction_box: known("JB-1"), channel: unknown("missing") },
      { junction_box: box, channel: known("1") },
      { junction_box: box, channel: unknown("doubtful") },
      { junction_box: known("JB-2"), channel: unknown("missing") },
    ]);
    const missing = points.map((point) =>
      said(point, "channel-once")?.missing.map(({ fact, reason }) => `${fact} ${reason}`),
    );
    expect(missing).toEqual([
      ["channel missing"],
      ["junction_box missing"],
      ["junction_box missing", "channel doubtful"],
      ["channel missing"],
    ]);
  });

  it("is left alone by a rule that the rest of its key excludes", () => {
    const at = { component: known("pump"), direction: known("axial"), asset_tag: unknown("missing") };
    const points = pointsOf([
      { ...at, bearing_position: known("drive-end") },
      { ...at, bearing_position: known("thrust") },
      { ...at, bearing_position: unknown("missing") },
    ]);
    expect(points.map((point) => said(point, "thrust-axial")?.outcome)).toEqual([
      "not-applicable",
      "undecided",
      "undecided",
    ]);
    expect(points.map((point) => said(point, "radial-directions")?.outcome)).toEqual([
      "undecided",
      "not-applicable",
      "undecided",
    ]);
  });

  it("is not asked by a rule of another stage", () => {
    const rows = [{ sensor_serial: unknown("missing") }, { sensor_serial: known("S-1") }];
    expect(said(pointsOf(rows)[0], "serial-once")).toBeUndefined();
    expect(said(pointsOf(rows, { stage: "installed" })[0], "serial-once")?.outcome).toBe("undecided");
  });

  it("is open for a site that cannot be read, and not for one that nobody states", () => {
    const points = pointsOf([
      { ...SUPPLIED, site: unknown("unreadable") },
      { ...SUPPLIED, site: unknown("missing") },
    ]);
    expect(said(points[0], "supply-current")).toMatchObject({
      outcome: "undecided",
      missing: [{ fact: "site", reason: "unreadable" }],
    });
    expect(said(points[1], "supply-current")?.outcome).toBe("pass");
  });

  it("can be followed step by step", () => {
    const input = { program: { name: "spotface", version: "test" }, rulebook, skipped: [], site: null };
    const surveys = [surveyOf([{ ...SUPPLIED, supply_name: unknown("doubtful") }, SUPPLIED])];
    const selection = { isMeant: () => true, rules: new Set(["supply-current"]) };
    const [open, clear] = [...whyPoints({ ...input, surveys, options: OPTIONS }, selection)];
    expect(open?.rules).toMatchObject([{ rule: "supply-current", finding: { outcome: "undecided" } }]);
    expect(open?.open).toContainEqual({ fact: "supply_name", reason: "doubtful", measureTo: null });
    expect(clear?.rules).toMatchObject([{ finding: { outcome: "pass", group: "supply: PSU 1" } }]);
  });
});

describe("another mounting method", () => {
  it("leaves what is said of groups as it is", () => {
    const row = { ...GOOD_POINT, junction_box: known("JB-1"), channel: known("1"), cure_time: known(30) };
    const [point] = pointsOf([row, row], { allFindings: false });
    expect(point?.findings.map(({ rule }) => rule)).toContain("channel-once");
    expect(point?.methods?.length).toBeGreaterThan(1);
    for (const { fails, asked } of point?.methods ?? []) {
      expect(fails).toContain("channel-once");
      expect(asked).not.toContain("channel-once");
    }
  });
});

describe("what would settle a point", () => {
  it("is what its groups lack, also where other rows lack it", () => {
    const blank = { ...SUPPLIED, sensor_current: unknown("missing") };
    const [point] = pointsOf([SUPPLIED, blank], { allFindings: false });
    expect(said(point, "supply-current")?.outcome).toBe("undecided");
    expect(point?.settledBy).toContain("sensor_current");
  });
});
