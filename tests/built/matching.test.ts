import { describe, expect, it } from "vitest";
import { pointUuid } from "../../src/screening/index.js";
import { known, surveyOf, unknown } from "../tools/make-record.js";
import { checkRows, checkSurveys, done, proposal, type Row } from "./made.js";

const at = (tag: string, component: string, position: string, direction: string): Row => ({
  asset_tag: known(tag),
  component: known(component),
  bearing_position: known(position),
  direction: known(direction),
});

function unnamed(row: Row): Row {
  const { point_id: _, ...rest } = row;
  return rest;
}

describe("matching", () => {
  it("tells what is not built yet, and what was built without a proposal", async () => {
    const { points, of, summary } = await checkRows([proposal("P1"), proposal("P2")], [done("P2"), done("P3")]);
    expect(points.map(({ point, status }) => [point, status])).toEqual([
      ["P1", "not-built"],
      ["P2", "matched"],
      ["P3", "not-proposed"],
    ]);
    expect(of("P1")).toMatchObject({
      verdictThen: "pass",
      verdictNow: null,
      recall: false,
      needsNewVerdict: false,
      text: null,
    });
    expect(of("P3")).toMatchObject({ verdictThen: null, recall: false, needsNewVerdict: true });
    expect(of("P3").text).toContain("not proposed");
    expect(of("P3").id).toBe(pointUuid("Vellamoor", "P3"));
    expect(summary).toMatchObject({ points: 3, matched: 1, notBuilt: 1, notProposed: 1, needsNewVerdict: 1 });
  });

  it("lists what speaks against a point that nobody proposed, all of it new and worse, without recalling anything", async () => {
    const { of } = await checkRows([proposal("P1")], [done("P3", { flat_diameter: known(10) })]);
    const { turned, change, recall, onlyUndecided } = of("P3");
    expect({ change, recall, onlyUndecided }).toEqual({ change: null, recall: false, onlyUndecided: false });
    expect(turned.find(({ rule }) => rule === "seat-diameter")?.now).toMatchObject({ outcome: "fail" });
    expect(turned.map(({ worse, before, asked }) => [worse, before, asked])).toEqual(
      turned.map(() => [true, null, true]),
    );
  });

  it("refuses an id that stands in several rows of either side, by name, for that point alone", async () => {
    const { of, summary } = await checkRows(
      [proposal("P1"), proposal("P1"), proposal("P2"), proposal("P3")],
      [done("P1"), done("P2"), done("P2"), done("P3")],
    );
    expect(of("P1")).toMatchObject({ status: "twice", verdictThen: "fail", verdictNow: null, needsNewVerdict: true });
    expect(of("P1").text).toContain("the proposal (proposed.xlsx > S row 2, proposed.xlsx > S row 3)");
    expect(of("P2")).toMatchObject({ status: "twice", verdictThen: "pass", verdictNow: "fail", recall: true });
    expect(of("P2").text).toContain("the built survey (built.csv > S row 3, built.csv > S row 4)");
    expect(of("P2").turned.map(({ rule }) => rule)).toContain("point-twice");
    expect(of("P2").differences).toEqual([]);
    expect(of("P3")).toMatchObject({ status: "matched", verdictNow: "pass" });
    expect(summary).toMatchObject({ twice: 2, matched: 1 });
  });

  it("takes two surveys of one side for one, and finds a point in either", async () => {
    const proposed = [surveyOf([proposal("P1")], "a.xlsx"), surveyOf([proposal("P2")], "b.xlsx")];
    const built = [surveyOf([done("P2")], "c.csv"), surveyOf([done("P1"), done("P2")], "d.csv")];
    const { of, check } = await checkSurveys(proposed, built);
    expect(of("P1")).toMatchObject({
      status: "matched",
      proposed: [{ file: "a.xlsx" }],
      built: [{ file: "d.csv", row: 2 }],
    });
    expect(of("P2")).toMatchObject({ status: "twice" });
    expect(check.head.built.surveys.map(({ file }) => file)).toEqual(["c.csv", "d.csv"]);
  });

  it("lists rows without an id on both sides", async () => {
    const { points, summary } = await checkRows(
      [unnamed(proposal("P1", { asset_tag: known("P-1") }))],
      [unnamed(done("P1", { asset_tag: known("P-1") }))],
    );
    expect(points.map(({ id, status }) => [id, status])).toEqual([
      [null, "no-id"],
      [null, "no-id"],
    ]);
    expect(points.map(({ needsNewVerdict }) => needsNewVerdict)).toEqual([false, true]);
    expect(points[0]?.text).toContain("no point ID");
    expect(points.map(({ likely }) => likely.length)).toEqual([1, 1]);
    expect(summary).toMatchObject({ noId: 2, matched: 0 });
  });

  it("offers the likely partner where a part of the id was corrected, and never matches it", async () => {
    const plan = unnamed(proposal("-", at("P-1", "pump", "drive-end", "horizontal")));
    const other = unnamed(proposal("-", at("P-1", "motor", "non-drive-end", "axial")));
    const stranger = unnamed(proposal("-", at("P-2", "pump", "drive-end", "vertical")));
    const built = unnamed(done("-", at("P-1", "pump", "drive-end", "vertical")));
    const { points } = await checkRows([other, plan, stranger], [built]);
    expect(points.map(({ status }) => status)).toEqual(["not-built", "not-built", "not-built", "not-proposed"]);
    expect(points[3]?.likely.map(({ at: { row } }) => row)).toEqual([3, 2]);
    expect(points[1]?.likely).toMatchObject([
      { point: "P-1, pump, drive end, vertical", at: { file: "built.csv", row: 2 } },
    ]);
    expect(points[2]?.likely).toEqual([]);
  });

  it("takes a row that names a point and says nothing of it for one that is not filled in yet", async () => {
    const blank: Row = { point_id: known("P1"), asset_tag: known("P-1"), applied_torque: unknown("missing") };
    const { of } = await checkRows([proposal("P1", { asset_tag: known("P-1") })], [blank]);
    expect(of("P1")).toMatchObject({ status: "not-built", verdictNow: null, recall: false });
    expect(of("P1").text).toBe("not built yet: built.csv > S row 2 says nothing of what was done");
    // Its partner is known: it is that row.
    expect(of("P1").likely).toEqual([]);
    const elsewhere = { ...blank, direction: known("axial") };
    const moved = await checkRows([proposal("P1", { direction: known("vertical") })], [elsewhere]);
    expect(moved.of("P1")).toMatchObject({ status: "matched", needsNewVerdict: true });
  });

  it("takes the only site of the proposal for that of a built survey that names none, and says so", async () => {
    const plan = proposal("P1", { site: known("Vellamoor") });
    const { of, check } = await checkRows([plan], [done("P1")], { siteName: "" });
    expect(of("P1")).toMatchObject({ status: "matched", id: pointUuid("Vellamoor", "P1") });
    expect(check.head.remarks).toMatchObject([{ code: "assumed", file: "built.csv", fact: "site" }]);
    const two = [plan, proposal("P1", { site: known("Arvelda") })];
    const several = await checkRows(two, [done("P1")], { siteName: "" });
    expect(several.points.map(({ status }) => status)).toEqual(["not-built", "not-built", "not-proposed"]);
    expect(several.check.head.remarks).toEqual([]);
  });
});

describe("one survey for both sides", () => {
  it("judges each row at both stages; what only fitting brings about tells that it is built", async () => {
    const rows = [
      proposal("P1", { applied_torque: known(8), voltage_at_sensor: known(24) }),
      proposal("P2", { applied_torque: unknown("missing"), voltage_at_sensor: unknown("missing") }),
      proposal("P3", { applied_torque: known(14), voltage_at_sensor: known(24) }),
    ];
    const { of, check, summary } = await checkRows(rows, null);
    expect(check.head.sameSurvey).toBe(true);
    expect(of("P1")).toMatchObject({ status: "matched", verdictThen: "pass", verdictNow: "pass", carried: [] });
    expect(of("P2")).toMatchObject({ status: "not-built" });
    expect(of("P3")).toMatchObject({ verdictThen: "pass", verdictNow: "fail", recall: true });
    expect(summary).toMatchObject({ points: 3, matched: 2, notBuilt: 1, recalled: 1, differing: 0 });
  });

  it("lists a row without an id once", async () => {
    const { points } = await checkRows([unnamed(proposal("-", { applied_torque: known(8) }))], null);
    expect(points).toMatchObject([
      { status: "no-id", proposed: [{ row: 2 }], built: [{ row: 2 }], needsNewVerdict: true },
    ]);
  });
});
