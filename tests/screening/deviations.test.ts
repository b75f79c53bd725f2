import { describe, expect, it } from "vitest";
import { type FileFinding, loadRulebook } from "../../src/rulebook/index.js";
import { pointUuid, UnclearDeviations, whyPoints } from "../../src/screening/index.js";
import { GOOD_POINT, known, surveyOf, unknown } from "../tools/make-record.js";
import { shippedFiles, shippedRulebook } from "../tools/shipped.js";
import { deviationsOf, screenWith, type Written } from "../tools/with-deviations.js";

const rulebook = await shippedRulebook();

const SMALL_SEAT = { ...GOOD_POINT, point_id: known("P-1"), flat_diameter: known(28) };
const PAINTED = { ...GOOD_POINT, point_id: known("P-2"), surface_finish: known("painted") };
const OPEN = { ...GOOD_POINT, point_id: known("P-3"), target_torque: unknown("missing") };
const BOTH = { ...SMALL_SEAT, point_id: known("P-4"), target_torque: unknown("missing") };
const GOOD = { ...GOOD_POINT, point_id: known("P-5") };
const SURVEY = surveyOf([SMALL_SEAT, PAINTED, OPEN, BOTH, GOOD]);

const SEAT: Written = { point: "P-1", rule: "seat-diameter" };

/** Status of each deviation. */
function statuses(entries: readonly Written[], options = {}): readonly string[] {
  return screenWith(rulebook, [SURVEY], entries, options).list.map(({ status }) => status);
}

function unclear(rows: Parameters<typeof surveyOf>[0], entries: readonly Written[]): readonly FileFinding[] {
  try {
    screenWith(rulebook, [surveyOf(rows)], entries);
  } catch (error) {
    if (error instanceof UnclearDeviations) return error.findings;
    throw error;
  }
  return [];
}

describe("an accepted deviation", () => {
  it("marks the finding with who, why, until when and the line, and leaves outcome and verdict alone", () => {
    const { points, list } = screenWith(rulebook, [SURVEY], [{ ...SEAT, reason: "the pad is 28 mm by drawing" }]);
    const [point] = points;
    expect(point).toMatchObject({ verdict: "fail", accepted: true });
    expect(point?.findings.map(({ rule, outcome, accepted }) => ({ rule, outcome, accepted }))).toEqual([
      {
        rule: "seat-diameter",
        outcome: "fail",
        accepted: {
          reason: "the pad is 28 mm by drawing",
          acceptedBy: "N. Nemo, lead engineer",
          from: "2026-01-01",
          until: "2027-01-01",
          origin: { file: "deviations.yaml", line: 2 },
        },
      },
    ]);
    expect(points.slice(1).every(({ accepted, findings }) => !accepted && findings.every((f) => !f.accepted))).toBe(
      true,
    );
    expect(list).toMatchObject([{ status: "in-use", found: "fail", open: false, endsSoon: false, remark: null }]);
  });

  it("is found by the id of the point, in any case, and by its name", () => {
    const id = pointUuid("", "P-1");
    for (const point of [id, id.toUpperCase(), "P-1", "  P-1 "]) {
      const { points, list } = screenWith(rulebook, [SURVEY], [{ ...SEAT, point }]);
      expect(points[0]?.accepted, point).toBe(true);
      expect(list[0]?.pointId).toBe(id);
    }
    const parts = { ...SMALL_SEAT, asset_tag: known("P-1101"), component: known("pump") };
    const { point_id: _, ...unnamed } = {
      ...parts,
      bearing_position: known("drive-end"),
      direction: known("horizontal"),
    };
    const named = screenWith(
      rulebook,
      [surveyOf([unnamed])],
      [{ ...SEAT, point: "P-1101, pump, drive end, horizontal" }],
    );
    expect(named.points[0]?.accepted).toBe(true);
  });

  it("accepts the point only where everything that keeps it from passing is covered", () => {
    const seat = { ...SEAT, point: "P-4" };
    const torque = { point: "P-4", rule: "tightening-torque", outcome: "undecided" };
    const accepted = (entries: readonly Written[]) => screenWith(rulebook, [SURVEY], entries).points[3]?.accepted;
    expect([accepted([]), accepted([seat]), accepted([torque]), accepted([seat, torque])]).toEqual([
      false,
      false,
      false,
      true,
    ]);
    const { screening, points } = screenWith(rulebook, [SURVEY], [seat, torque, SEAT]);
    expect(screening.summary()).toMatchObject({ accepted: 2, fail: 2, pass: 1, warnOnlyUndecided: 1 });
    expect(points[4]).toMatchObject({ verdict: "pass", accepted: false });
  });

  it.each([
    ["warn", "P-2", "seat-material", "in-use"],
    ["undecided", "P-2", "seat-material", "in-use"],
    ["warn", "P-3", "tightening-torque", "worse-than-accepted"],
    ["undecided", "P-3", "tightening-torque", "in-use"],
    ["fail", "P-3", "tightening-torque", "in-use"],
    ["warn", "P-1", "seat-diameter", "worse-than-accepted"],
    ["undecided", "P-1", "seat-diameter", "worse-than-accepted"],
  ])("of the outcome %s on %s, %s is %s", (outcome, point, rule, status) => {
    const { points, list } = screenWith(rulebook, [SURVEY], [{ point, rule, outcome }]);
    expect(list).toMatchObject([{ status, open: status !== "in-use" }]);
    expect(points.filter(({ accepted }) => accepted)).toHaveLength(status === "in-use" ? 1 : 0);
  });

  it("is in force from its first day until the day before its end, and comes back by itself", () => {
    const entry = { ...SEAT, from: "2026-03-01", until: "2026-06-01" };
    const on = (asOf: string) => {
      const { points, list } = screenWith(rulebook, [SURVEY], [entry], { asOf });
      return [points[0]?.accepted, list[0]?.status, list[0]?.open];
    };
    expect(on("2026-02-28")).toEqual([false, "not-yet-in-force", true]);
    expect(on("2026-03-01")).toEqual([true, "in-use", false]);
    expect(on("2026-05-31")).toEqual([true, "in-use", false]);
    expect(on("2026-06-01")).toEqual([false, "expired", true]);
  });

  it("is listed ahead of its end, unless another follows on", () => {
    const entry = { ...SEAT, until: "2026-12-25" };
    const soon = (entries: readonly Written[], endingWithin?: number) =>
      screenWith(rulebook, [SURVEY], entries, endingWithin === undefined ? {} : { endingWithin }).list[0]?.endsSoon;
    expect([soon([entry]), soon([entry], 29), soon([entry], 30)]).toEqual([true, false, true]);
    expect(soon([entry, { ...SEAT, from: "2026-12-25", until: "2027-06-01" }])).toBe(false);
    expect(soon([entry, { ...SEAT, point: pointUuid("", "P-1"), from: "2026-12-25", until: "2027-06-01" }])).toBe(
      false,
    );
    expect(soon([entry, { ...SEAT, from: "2026-12-26", until: "2027-06-01" }])).toBe(true);
  });

  it("is told of where it matches nothing", () => {
    expect(
      statuses([
        { ...SEAT, point: "P-9" },
        { ...SEAT, rule: "thread-run-out" },
        { ...SEAT, rule: "hole-depth" },
        { ...SEAT, rule: "adhesive-cure" },
        { ...SEAT, rule: "method-allowed" },
      ]),
    ).toEqual(["point-not-found", "rule-not-asked", "nothing-to-accept", "nothing-to-accept", "rule-not-asked"]);
  });

  it("is an expired one that is renewed, and leaves nothing open", () => {
    const old = { ...SEAT, until: "2026-06-01" };
    const { list } = screenWith(rulebook, [SURVEY], [old, { ...SEAT, from: "2026-06-01" }]);
    expect(list).toMatchObject([
      { status: "expired", found: "fail", open: false },
      { status: "in-use", open: false },
    ]);
  });
});

describe("the limit under which a deviation was accepted", () => {
  it("is compared where it is named", () => {
    const shown = (limit: string) => screenWith(rulebook, [SURVEY], [{ ...SEAT, limit }]).list[0];
    expect(shown("30 mm")).toMatchObject({ status: "in-use", limit: "30 mm" });
    expect(shown("3 cm")).toMatchObject({ status: "in-use", limit: "3 cm" });
    expect(shown("29 mm")).toMatchObject({
      status: "limit-changed",
      open: true,
      remark: "accepted under a limit of 29 mm, and the one that speaks now is 30 mm",
    });
  });

  it("is asked to be looked at again where a newer one speaks and none is named", async () => {
    const files = (await shippedFiles()).map((file) => ({
      ...file,
      text: file.path.endsWith("seat/seat-diameter.yaml")
        ? file.text
            .replace("until: null", "until: 2026-07-01")
            .replace(
              /^( {2}- from: 2026-01-01[\s\S]*?)(?=^\S)/m,
              (entry) =>
                entry +
                entry.replace("from: 2026-01-01", "from: 2026-07-01").replace("until: 2026-07-01", "until: null"),
            )
        : file.text,
    }));
    const loading = loadRulebook(files, { root: "rules" });
    if (!loading.ok) throw new Error(JSON.stringify(loading.findings));
    const remark = (entry: Written) => screenWith(loading.rulebook, [SURVEY], [entry]).list[0]?.remark;
    expect(remark(SEAT)).toMatch(/in force from 2026-07-01, after it was accepted/);
    expect(remark({ ...SEAT, from: "2026-07-01" })).toBeNull();
    expect(remark({ ...SEAT, limit: "30 mm" })).toBeNull();
  });
});

describe("the value that was found when a deviation was accepted", () => {
  const status = (row: Parameters<typeof surveyOf>[0][number], entry: Written) =>
    screenWith(rulebook, [surveyOf([row])], [entry]).list[0];

  it("covers that value and better ones, no worse one and no unknown one", () => {
    const seat = (flat: (typeof GOOD_POINT)[string]) =>
      status({ ...SMALL_SEAT, flat_diameter: flat }, { ...SEAT, value: "28 mm" });
    expect(seat(known(28))).toMatchObject({ status: "in-use", value: "28 mm" });
    expect(seat(known(29))).toMatchObject({ status: "in-use" });
    expect(seat(known(27.9))).toMatchObject({
      status: "worse-than-accepted",
      open: true,
      remark: "accepted at 28 mm, and what is found now is not as good, or not known",
    });
    expect(seat(unknown("missing"))).toMatchObject({ status: "worse-than-accepted", found: "undecided" });
  });

  it("is looked at on the side on which the limit lies", () => {
    const torque = (value: number) =>
      status(
        { ...SMALL_SEAT, flat_diameter: known(35), target_torque: known(value) },
        { point: "P-1", rule: "tightening-torque", value: "12 N·m" },
      );
    expect([torque(11), torque(12), torque(12.1)].map((one) => one?.status)).toEqual([
      "in-use",
      "in-use",
      "worse-than-accepted",
    ]);
  });

  it("is held to the worse end of a value that is not exact", () => {
    const within = (lowest: number, highest: number) => ({ ...known(lowest), value: { lowest, highest } });
    const seat = (lowest: number, highest: number) =>
      status({ ...SMALL_SEAT, flat_diameter: within(lowest, highest) }, { ...SEAT, value: "28 mm" })?.status;
    expect([seat(28, 28.6), seat(27.9, 28.5)]).toEqual(["in-use", "worse-than-accepted"]);
    const torque = (lowest: number, highest: number) =>
      status(
        { ...SMALL_SEAT, flat_diameter: known(35), target_torque: within(lowest, highest) },
        { point: "P-1", rule: "tightening-torque", value: "12 N·m" },
      )?.status;
    expect([torque(11.5, 12), torque(11.5, 12.1)]).toEqual(["in-use", "worse-than-accepted"]);
  });

  it("is looked at on both sides of a band, and never across it", async () => {
    const files = (await shippedFiles()).map((file) => ({
      ...file,
      text: file.text.replace(/^releases: never\n/m, ""),
    }));
    const loading = loadRulebook(files, { root: "rules" });
    if (!loading.ok) throw new Error(JSON.stringify(loading.findings));
    const supply = (value: number, accepted: string) =>
      screenWith(
        loading.rulebook,
        [surveyOf([{ ...SMALL_SEAT, flat_diameter: known(35), supply_voltage: known(value) }])],
        [{ point: "P-1", rule: "supply-voltage", value: accepted }],
      ).list[0]?.status;
    expect([supply(19, "19 V"), supply(20, "19 V"), supply(18, "19 V"), supply(29, "19 V")]).toEqual([
      "in-use",
      "in-use",
      "worse-than-accepted",
      "worse-than-accepted",
    ]);
    expect([supply(30, "30 V"), supply(31, "30 V"), supply(19, "30 V")]).toEqual([
      "in-use",
      "worse-than-accepted",
      "worse-than-accepted",
    ]);
  });
});

describe("a deviation that is not clear", () => {
  it("names several points", () => {
    const rows = [
      { ...SMALL_SEAT, site: known("North") },
      { ...SMALL_SEAT, site: known("South") },
    ];
    const findings = unclear(rows, [SEAT]);
    expect(findings).toMatchObject([{ file: "deviations.yaml", line: 2, code: "name-of-several" }]);
    expect(findings[0]?.text).toContain(`${pointUuid("North", "P-1")} (made.xlsx > S row 2)`);
    expect(unclear(rows, [{ ...SEAT, point: pointUuid("South", "P-1") }])).toEqual([]);
  });

  it("accepts by id what another accepts by name on the same day", () => {
    const byId = { ...SEAT, point: pointUuid("", "P-1"), from: "2026-12-31", until: "2027-06-01" };
    expect(unclear([SMALL_SEAT], [SEAT, byId])).toMatchObject([{ line: 3, code: "overlapping-days" }]);
    expect(unclear([SMALL_SEAT], [SEAT, { ...byId, from: "2027-01-01" }])).toEqual([]);
  });
});

describe("a point in two rows", () => {
  it("is never accepted, since nobody can say which row was looked at", () => {
    const rows = [SMALL_SEAT, { ...SMALL_SEAT, flat_diameter: known(27) }];
    const { points, list } = screenWith(rulebook, [surveyOf(rows)], [SEAT]);
    expect(points.map(({ accepted }) => accepted)).toEqual([false, false]);
    expect(points.every(({ findings }) => findings.some((f) => f.rule === "seat-diameter" && f.accepted))).toBe(true);
    expect(list).toMatchObject([{ status: "in-use" }]);
    expect(() => deviationsOf(rulebook, [{ point: "P-1", rule: "point-twice" }])).toThrow(/no deviation from/);
  });
});

describe("the digest of a run", () => {
  it("rests on the deviations and on how far ahead is looked, and stays as it was without any", () => {
    const digestOf = (entries: readonly Written[] | null, options = {}) =>
      screenWith(rulebook, [SURVEY], entries, options).screening.head.digest;
    const digests = [
      digestOf(null),
      digestOf([SEAT]),
      digestOf([{ ...SEAT, reason: "another" }]),
      digestOf([SEAT], { endingWithin: 60 }),
    ];
    expect(new Set(digests).size).toBe(4);
    expect(digestOf([SEAT])).toBe(digests[1]);
  });
});

describe("why a point got its verdict", () => {
  it("names who accepted the finding", () => {
    const options = { set: "core", stage: "proposed", asOf: "2026-11-25", siteName: null, allFindings: false } as const;
    const input = {
      program: { name: "spotface", version: "test" },
      rulebook,
      surveys: [SURVEY],
      skipped: [],
      site: null,
      deviations: deviationsOf(rulebook, [SEAT]),
      options,
    };
    const [why] = whyPoints(input, { isMeant: ({ row }) => row === 2, rules: new Set(["seat-diameter"]) });
    expect(why?.rules[0]?.finding).toMatchObject({ outcome: "fail", accepted: { until: "2027-01-01" } });
  });
});
