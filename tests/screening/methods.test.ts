import { describe, expect, it } from "vitest";
import type { FactState, MethodStatements, SiteStatements } from "../../src/facts/index.js";
import type { PointResult } from "../../src/screening/index.js";
import { GOOD_POINT, known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";

const rulebook = await shippedRulebook();

function siteWith(methodsAllowed: Partial<MethodStatements>): SiteStatements {
  return {
    file: "site.yaml",
    digest: "0",
    siteName: "North",
    wholeSite: new Map(),
    byMachineType: new Map(),
    byMachine: new Map(),
    methodsAllowed: { wholeSite: null, byMachineType: new Map(), byMachine: new Map(), ...methodsAllowed },
  };
}

function list(...methods: readonly string[]) {
  return { methods, file: "site.yaml", line: 7 };
}

function pointOf(
  row: Readonly<Record<string, FactState>>,
  options: Parameters<typeof screenRows>[2] = {},
  site: SiteStatements | null = null,
): PointResult {
  const [point] = screenRows(rulebook, [surveyOf([row])], options, site).points;
  if (!point) throw new Error("no point");
  return point;
}

/** Each method with verdict, and what fails, warns and is open, as one line. */
function lines({ methods }: PointResult): readonly string[] {
  return (methods ?? []).map(({ method, verdict, fails, warns, undecided, missing }) =>
    [method, verdict, ...fails.map((id) => `-${id}`), ...warns, ...undecided.map((id) => `?${id}`), ...missing].join(
      " ",
    ),
  );
}

const SHALLOW = { ...GOOD_POINT, hole_depth: known(12) };

describe("methods tried in the core set", () => {
  it("name the one that would pass", () => {
    const point = pointOf({ ...SHALLOW, cure_time: known(30) });
    expect(lines(point)).toEqual(["adhesive-pad pass", "welded-pad pass", "tapped-hole fail -hole-depth"]);
    expect(point.methodAdvised).toEqual({ method: "adhesive-pad", verdict: "pass", closest: false });
    expect(point.methods?.map(({ proposed }) => proposed)).toEqual([false, false, true]);
    expect(point.methods?.map(({ asked }) => asked)).toEqual([["adhesive-cure"], [], ["hole-depth", "thread-depth"]]);
  });

  it("name the closest with what is to be found out, never one of which nothing was asked", () => {
    const point = pointOf(SHALLOW);
    expect(lines(point)).toEqual([
      "welded-pad pass",
      "adhesive-pad warn ?adhesive-cure cure_time",
      "tapped-hole fail -hole-depth",
    ]);
    expect(point.methodAdvised).toEqual({ method: "adhesive-pad", verdict: "warn", closest: true });
  });

  it("keep what holds whatever the method, after what concerns it", () => {
    const point = pointOf({ ...SHALLOW, flat_diameter: known(20), target_torque: unknown("doubtful") });
    expect(lines(point)).toEqual([
      "adhesive-pad fail -seat-diameter ?adhesive-cure ?tightening-torque cure_time target_torque",
      "tapped-hole fail -hole-depth -seat-diameter ?tightening-torque target_torque",
      "welded-pad fail -seat-diameter ?tightening-torque target_torque",
    ]);
    expect(point.methodAdvised).toEqual({ method: "adhesive-pad", verdict: "fail", closest: true });
  });

  it("stay with the proposed one where no other comes closer", () => {
    const point = pointOf({ ...GOOD_POINT, cure_time: known(30), flat_diameter: known(20) });
    expect(point.methodAdvised).toEqual({ method: "tapped-hole", verdict: "fail", closest: true });
  });

  it("are all there where none is proposed", () => {
    const point = pointOf({ ...GOOD_POINT, mounting_method: unknown("missing"), cure_time: known(5) });
    expect(lines(point)).toEqual(["tapped-hole pass", "welded-pad pass", "adhesive-pad fail -adhesive-cure"]);
    expect(point.methods?.some(({ proposed }) => proposed)).toBe(false);
    expect(point.methodAdvised).toEqual({ method: "tapped-hole", verdict: "pass", closest: false });
  });

  it("show a magnet that is proposed, and advise none", () => {
    const point = pointOf({ ...GOOD_POINT, mounting_method: known("magnet"), flat_diameter: known(20) });
    expect(lines(point)).toContain("magnet fail -seat-diameter");
    expect(lines(pointOf(SHALLOW)).join()).not.toContain("magnet");
    expect(point.methodAdvised?.method).toBe("tapped-hole");
  });

  it("are not there for points that pass, unless asked for, and for what is built", () => {
    expect(pointOf(GOOD_POINT)).toMatchObject({ verdict: "pass", methods: null, methodAdvised: null });
    const all = pointOf(GOOD_POINT, { allFindings: true });
    expect(all.methods?.map(({ method }) => method)).toEqual(["tapped-hole", "welded-pad", "adhesive-pad"]);
    expect(all.methodAdvised).toBeNull();
    const built = pointOf({ ...SHALLOW, applied_torque: known(8) }, { stage: "installed" });
    expect(built).toMatchObject({ verdict: "fail", methods: null, methodAdvised: null });
  });
});

/** What the rules of a bonded pad and of a tapped hole ask in the full set, all good. */
const FULL: Readonly<Record<string, FactState>> = {
  ...GOOD_POINT,
  cure_time: known(90),
  adhesive_set_time: known(60),
  certified_enclosure: known(false),
};
const SAFE = {
  hot_work_allowed: known("allowed"),
  hazardous_area: known("none"),
  isolation_possible: known(true),
  surface_material: known("carbon-steel"),
};

describe("methods tried in the full set", () => {
  it("advise a bonded pad where drilling is ruled out", () => {
    const point = pointOf({ ...FULL, ...SAFE, behind_wall: known("oil") }, { set: "full" });
    const tapped = point.methods?.find(({ method }) => method === "tapped-hole");
    expect(tapped).toMatchObject({ proposed: true, verdict: "fail", fails: ["behind-wall"] });
    expect(point.methodAdvised).toEqual({ method: "adhesive-pad", verdict: "pass", closest: false });
    expect(point.methods?.[0]?.notAsked).toContain("mount-frequency");
  });

  it.each([
    ["fails", { hazardous_area: known("zone-1") }, "fail"],
    ["is open", { hot_work_allowed: unknown("doubtful") }, "warn"],
    ["must be known and is not", { certified_enclosure: unknown("missing") }, "fail"],
  ] as const)("advise none as passing where a gate %s", (_name, gate, verdict) => {
    const point = pointOf({ ...FULL, ...SAFE, ...gate, behind_wall: known("oil") }, { set: "full" });
    expect(point.methodAdvised).toEqual({ method: "adhesive-pad", verdict, closest: true });
  });

  it("advise none where no method is stated and nothing is decided of any", () => {
    const row = { ...GOOD_POINT, mounting_method: unknown("missing"), thread_depth: unknown("missing") };
    const open = { ...row, hole_depth: unknown("missing"), cure_time: unknown("missing") };
    expect(pointOf(open).methodAdvised).toBeNull();
    expect(pointOf({ ...open, cure_time: known(30) }).methodAdvised?.method).toBe("adhesive-pad");
  });

  it("advise no weld that nobody consented to, however little else is open", () => {
    // The bonded pad lacks three facts, the weld the one word of the maker.
    const shallow = { thread_depth: known(2), hole_depth: known(3) };
    const row = { ...FULL, ...SAFE, cure_time: unknown("missing"), ...shallow, behind_wall: known("solid") };
    const answers = (welding_agreed: FactState, more: Readonly<Record<string, FactState>> = {}) =>
      pointOf({ ...row, welding_agreed, ...more }, { set: "full" });
    const unasked = answers(unknown("missing"));
    const of = (method: string) => unasked.methods?.find((tried) => tried.method === method);
    expect(of("welded-pad")).toMatchObject({ fails: [], undecided: ["welded-pad"] });
    expect(of("tapped-hole")?.fails.length).toBeGreaterThan(1);
    expect(unasked.methodAdvised?.method).not.toBe("welded-pad");
    expect(answers(known(false)).methodAdvised?.method).not.toBe("welded-pad");
    expect(answers(known(true)).methodAdvised).toEqual({ method: "welded-pad", verdict: "pass", closest: false });
    // Nor over oil, or over what nobody knows.
    for (const behind_wall of [known("oil"), unknown("missing")]) {
      expect(answers(known(true), { behind_wall }).methodAdvised?.method).not.toBe("welded-pad");
    }
  });

  it("advise none as passing where a gate was not asked for lack of a column", () => {
    const { hot_work_allowed: _, ...safe } = SAFE;
    const point = pointOf({ ...FULL, ...safe, behind_wall: known("oil") }, { set: "full" });
    const bonded = point.methods?.find(({ method }) => method === "adhesive-pad");
    expect(bonded).toMatchObject({ verdict: "pass" });
    expect(bonded?.notAsked).toContain("hot-work");
    expect(point.methodAdvised).toEqual({ method: "adhesive-pad", verdict: "pass", closest: true });
  });

  it("count for a method what its survey is not asked as proposed, where that is decided for it", () => {
    // Hot work is open for the tapped hole, for want of a finish; a welded pad throws sparks whatever the finish.
    const { surface_finish: _, ...row } = FULL;
    const point = pointOf({ ...row, ...SAFE, hot_work_allowed: known("forbidden") }, { set: "full" });
    const welded = point.methods?.find(({ method }) => method === "welded-pad");
    expect(welded?.fails).toContain("hot-work");
    expect(point.methods?.find(({ proposed }) => proposed)?.notAsked).toContain("hot-work");
  });
});

describe("what a site says of methods", () => {
  it("is what is tried, the narrowest list first", () => {
    const site = siteWith({
      wholeSite: list("tapped-hole", "clamp"),
      byMachineType: new Map([["fan", list("tapped-hole", "adhesive-pad")]]),
      byMachine: new Map([["F-1", list("tapped-hole", "existing-hole")]]),
    });
    const tried = (row: Readonly<Record<string, FactState>>) =>
      pointOf({ ...SHALLOW, ...row }, {}, site)
        .methods?.map(({ method }) => method)
        .filter((method) => method !== "tapped-hole");
    expect(tried({})).toEqual(["clamp"]);
    expect(tried({ machine_type: known("fan") })).toEqual(["adhesive-pad"]);
    expect(tried({ machine_type: known("fan"), asset_tag: known("F-1") })).toEqual(["existing-hole"]);
    expect(tried({ machine_type: known("pump"), asset_tag: known("F-2") })).toEqual(["clamp"]);
  });

  it("fails a method that is not on the list, and leaves an unknown one open", () => {
    const site = siteWith({ wholeSite: list("adhesive-pad") });
    const point = pointOf({ ...GOOD_POINT, cure_time: known(30) }, {}, site);
    expect(point.verdict).toBe("fail");
    expect(point.findings).toMatchObject([
      {
        rule: "method-allowed",
        outcome: "fail",
        message: "tapped hole is planned, and the site allows here only: adhesive pad (site.yaml:7)",
        facts: [{ fact: "mounting_method", value: "tapped-hole", cells: [{ sheet: "S", cell: "A1" }] }],
      },
    ]);
    expect(point.methods?.map(({ method, allowed, fails }) => [method, allowed, fails])).toEqual([
      ["adhesive-pad", true, []],
      ["tapped-hole", false, ["method-allowed"]],
    ]);
    const open = pointOf({ ...GOOD_POINT, mounting_method: unknown("conflicting") }, {}, site);
    expect(open.findings.at(-1)).toMatchObject({
      rule: "method-allowed",
      outcome: "undecided",
      missing: [{ fact: "mounting_method", reason: "conflicting" }],
    });
  });

  it("is listed among the rules and counted only where the site says something", () => {
    const ids = (site: SiteStatements | null) => {
      const { screening } = screenRows(rulebook, [surveyOf([GOOD_POINT])], {}, site);
      return [screening.head.rules.map(({ id }) => id), screening.summary().byRule.map(({ rule }) => rule)];
    };
    for (const list of ids(null)) expect(list).not.toContain("method-allowed");
    for (const some of ids(siteWith({ wholeSite: list("clamp") }))) expect(some).toContain("method-allowed");
  });
});

describe("the summary", () => {
  it("counts the points that another method would help", () => {
    const rows = [
      SHALLOW,
      { ...SHALLOW, cure_time: known(30) },
      { ...SHALLOW, cure_time: known(30) },
      GOOD_POINT,
      { ...GOOD_POINT, flat_diameter: known(20) },
    ];
    const { screening } = screenRows(rulebook, [surveyOf(rows)]);
    expect(screening.summary().otherMethods).toEqual([{ method: "adhesive-pad", wouldPass: 2, closest: 1 }]);
    const first = screening.summary();
    expect([...screening.points()].map(({ verdict }) => verdict)).toEqual(["fail", "fail", "fail", "pass", "fail"]);
    expect(screening.summary()).toEqual(first);
  });
});
