import { describe, expect, it } from "vitest";
import { pointUuid } from "../../src/screening/index.js";
import { GOOD_POINT, known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";

const rulebook = await shippedRulebook();

describe("point ids", () => {
  // Worked out with the uuid5 of another language's standard library.
  it.each([
    ["", "QM-100-DE", "f09fa290-dea1-586d-a035-c22aa93c6ea1"],
    ["Nordkai", "P-1", "32b18b2b-d5da-50f1-8e9a-c36e94223b50"],
    ["Nordkai", "P-1101/pump/drive-end/horizontal", "c3a6a0aa-a318-568c-84c4-f1211bec0b9b"],
    ["Müllwerk", "Pumpe 3", "2cee9756-cae5-5d2c-8524-110f3eef9a6b"],
  ] as const)("are UUID version 5 of site, line feed and point: %s, %s", (site, point, expected) => {
    expect(pointUuid(site, point)).toBe(expected);
  });

  it("do not depend on blanks around, on doubled blanks, or on how accents are composed", () => {
    const id = pointUuid("Müllwerk", "Pumpe 3");
    expect(pointUuid(" Mu\u0308llwerk ", "Pumpe \u00a0 3")).toBe(id);
    expect(pointUuid("Müllwerk", "pumpe 3")).not.toBe(id);
  });

  it("come from tag, component, bearing and direction where there is no point ID, and say what is lacking", () => {
    const parts = {
      ...GOOD_POINT,
      asset_tag: known("P-1101"),
      component: known("pump"),
      bearing_position: known("drive-end"),
      direction: known("horizontal"),
    };
    const { points, screening } = screenRows(
      rulebook,
      [surveyOf([parts, { ...parts, direction: unknown("missing") }])],
      {
        siteName: "Nordkai",
      },
    );
    expect(points[0]?.id).toBe(pointUuid("Nordkai", "P-1101/pump/drive-end/horizontal"));
    expect(points[0]?.point).toBe("P-1101, pump, drive end, horizontal");
    expect(points[1]?.id).toBeNull();
    expect(screening.head.surveys[0]?.problems.map((problem) => problem.code)).toContain("no-id");
  });

  it("take the site column before the name of the run, and none where its cell cannot be read", () => {
    const row = { ...GOOD_POINT, point_id: known("P-1") };
    const rows = [row, { ...row, site: known("Kai 2") }, { ...row, site: unknown("unreadable") }];
    const { points } = screenRows(rulebook, [surveyOf(rows)], { siteName: "Nordkai" });
    expect(points.map((point) => point.id)).toEqual([pointUuid("Nordkai", "P-1"), pointUuid("Kai 2", "P-1"), null]);
  });
});

describe("point-twice", () => {
  it("fails every row of one id, over all files, and names the others", () => {
    const row = { ...GOOD_POINT, point_id: known("P-1") };
    const other = { ...GOOD_POINT, point_id: known("P-2") };
    const { points, screening } = screenRows(rulebook, [surveyOf([row, other], "a.xlsx"), surveyOf([row], "b.xlsx")]);
    expect(points.map((point) => point.verdict)).toEqual(["fail", "pass", "fail"]);
    expect(points[0]?.findings.map((finding) => finding.rule)).toEqual(["point-twice"]);
    expect(points[0]?.findings[0]?.message).toBe("the same point also stands in b.xlsx > S row 2");
    expect(screening.summary().byRule.find((counts) => counts.rule === "point-twice")?.fail).toBe(2);
  });

  it("says nothing of rows without an id", () => {
    const { points } = screenRows(rulebook, [surveyOf([GOOD_POINT, GOOD_POINT])]);
    expect(points.map((point) => point.verdict)).toEqual(["pass", "pass"]);
  });
});
