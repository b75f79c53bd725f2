import { describe, expect, it } from "vitest";
import { loadRulebook } from "../../src/rulebook/index.js";
import { known, unknown } from "../tools/make-record.js";
import { shippedFiles } from "../tools/shipped.js";
import { checkRows, done, proposal, turnedIn } from "./made.js";

describe("a point that was built as proposed", () => {
  it("keeps its verdict, by the proposal's word where the built survey says nothing", async () => {
    const { points, summary } = await checkRows([proposal("P1")], [done("P1")]);
    expect(points).toHaveLength(1);
    expect(points[0]).toMatchObject({
      status: "matched",
      verdictThen: "pass",
      verdictNow: "pass",
      change: "same",
      recall: false,
      needsNewVerdict: false,
      differences: [],
      turned: [],
      notCarried: [],
      text: null,
    });
    expect(points[0]?.carried).toEqual(expect.arrayContaining(["nominal_speed", "hole_depth", "surface_finish"]));
    expect(points[0]?.carried).not.toContain("applied_torque");
    expect(summary).toMatchObject({ points: 1, matched: 1, pass: 1, recalled: 0, differing: 0 });
  });

  it("is recalled where what only fitting brings about is not recorded, and said to be for no other reason", async () => {
    const { of, summary } = await checkRows([proposal("P1")], [done("P1", { applied_torque: unknown("doubtful") })]);
    expect(of("P1")).toMatchObject({ verdictNow: "warn", change: "falls", recall: true, onlyUndecided: true });
    expect(turnedIn(of("P1"))).toEqual(["tightening-torque - > undecided"]);
    expect(summary).toMatchObject({ recalled: 1, recalledOnlyUndecided: 1 });
  });

  it("never takes a proposal's word for a measurement", async () => {
    const slip = proposal("P1", {
      applied_torque: known(8),
      voltage_at_sensor: known(24),
      polarity_checked: known(true),
    });
    const { of } = await checkRows([slip], [{ point_id: known("P1"), sensor_serial: known("SN-1") }]);
    expect(turnedIn(of("P1"))).toEqual(["supply-voltage - > undecided", "tightening-torque - > undecided"]);
    expect(of("P1").carried).not.toEqual(expect.arrayContaining(["voltage_at_sensor"]));
    expect(of("P1").carried).not.toContain("polarity_checked");
  });
});

describe("a verdict that falls", () => {
  it("recalls the order with the rule, the old outcome and the new finding", async () => {
    const { of, check, summary } = await checkRows([proposal("P1")], [done("P1", { hole_depth: known(12, "D2") })]);
    const point = of("P1");
    expect(point).toMatchObject({
      verdictThen: "pass",
      verdictNow: "fail",
      change: "falls",
      recall: true,
      onlyUndecided: false,
    });
    expect(turnedIn(point)).toEqual(["hole-depth - > fail"]);
    expect(point.turned[0]?.now?.message).toContain("12 mm");
    expect(check.head.proposed.stage).toBe("proposed");
    expect(check.head.built.stage).toBe("installed");
    expect(check.head.digest).toMatch(/^[0-9a-f]{64}$/);
    expect(summary).toMatchObject({ recalled: 1, recalledOnlyUndecided: 0, fail: 1 });
  });

  it("from pass to warn is enough", async () => {
    const { of } = await checkRows([proposal("P1")], [done("P1", { surface_finish: known("painted") })]);
    expect(of("P1")).toMatchObject({ verdictThen: "pass", verdictNow: "warn", recall: true, onlyUndecided: false });
  });

  it("is told by another rule that fails, though the verdict was no better before", async () => {
    const weak = proposal("P1", { flat_diameter: known(20) });
    const { of } = await checkRows([weak], [done("P1", { thread_depth: known(5) })]);
    expect(of("P1")).toMatchObject({ verdictThen: "fail", verdictNow: "fail", change: "same", recall: true });
    expect(turnedIn(of("P1"))).toEqual(["thread-depth - > fail"]);
  });

  it("does not fall where one more rule warns that leaves the verdict as it was", async () => {
    const open = proposal("P1", { flat_diameter: unknown("missing") });
    const { of } = await checkRows([open], [done("P1", { surface_finish: known("painted") })]);
    expect(of("P1")).toMatchObject({ verdictThen: "warn", verdictNow: "warn", recall: false, change: "same" });
    expect(turnedIn(of("P1"))).toEqual(["seat-material - > warn"]);
  });

  it("counts a gate that is open now as a fail", async () => {
    const files = (await shippedFiles()).map((file) =>
      file.path.endsWith("seat/seat-diameter.yaml") ? { ...file, text: `${file.text}undecided: fail\n` } : file,
    );
    const loading = loadRulebook(files, { root: "rules" });
    if (!loading.ok) throw new Error(JSON.stringify(loading.findings[0]));
    const { rulebook } = loading;
    const weak = proposal("P1", { hole_depth: known(10) });
    const built = done("P1", { flat_diameter: unknown("doubtful") });
    const { of } = await checkRows([weak], [built], { rulebook });
    expect(of("P1")).toMatchObject({ verdictThen: "fail", verdictNow: "fail", recall: true, onlyUndecided: true });
  });

  it("is said where it rises, too", async () => {
    const weak = proposal("P1", { hole_depth: known(12) });
    const { of, summary } = await checkRows([weak], [done("P1", { hole_depth: known(16) })]);
    expect(of("P1")).toMatchObject({ verdictThen: "fail", verdictNow: "pass", change: "rises", recall: false });
    expect(turnedIn(of("P1"))).toEqual(["hole-depth fail > -"]);
    expect(summary.rises).toBe(1);
  });
});

describe("a rule that is not asked of what was built", () => {
  const hot = { hot_work_allowed: known("forbidden"), mounting_method: known("welded-pad") };

  it("has not become better, and the point was built against the verdict", async () => {
    const { of, summary } = await checkRows([proposal("P1", hot)], [done("P1")], { set: "full" });
    const turned = of("P1").turned.find(({ rule }) => rule === "hot-work");
    expect(turned).toMatchObject({ before: { outcome: "fail" }, now: null, asked: false, worse: false });
    expect(of("P1")).toMatchObject({ verdictThen: "fail", change: "same", againstVerdict: true });
    expect(summary).toMatchObject({ rises: 0, againstVerdict: 1 });
  });

  it("does not fall silent for a column that the built survey does not have", async () => {
    const cold = { install_temperature: known(2), mounting_method: known("adhesive-pad"), cure_time: known(30) };
    const { of } = await checkRows([proposal("P1", cold)], [done("P1")], { set: "full" });
    expect(of("P1").turned.find(({ rule }) => rule === "bond-cold")?.now?.outcome).toBe("undecided");
  });

  it("is none where the verdict stays as bad by rules that are", async () => {
    const weak = proposal("P1", { hole_depth: known(12) });
    const { of } = await checkRows([weak], [done("P1")]);
    expect(of("P1")).toMatchObject({ verdictThen: "fail", verdictNow: "fail", againstVerdict: true, recall: false });
    const better = await checkRows([weak], [done("P1", { hole_depth: known(16) })]);
    expect(better.of("P1")).toMatchObject({ change: "rises", againstVerdict: false });
  });
});
