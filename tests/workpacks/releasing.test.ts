import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isOpen } from "../../src/base/index.js";
import type { FactState } from "../../src/facts/index.js";
import { compileRule, type Rulebook } from "../../src/rulebook/index.js";
import { Releasing } from "../../src/workpacks/index.js";
import { known, surveyOf, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";
import { screenWith, type Written } from "../tools/with-deviations.js";
import { heldBecause, type Row, releases, SAFE, safePoint, without } from "./made.js";

const rulebook = await shippedRulebook();
const NEVER = rulebook.rules.filter(({ releases }) => releases === "never");
const AS_OF = "2026-11-25";
const STRONG = { target_torque: known(12) };

function oneOf(rows: readonly Row[], deviations: readonly Written[] = [], options = {}): readonly string[] {
  return heldBecause(releases(rulebook, rows, deviations, options)[0]);
}

describe("a point is released", () => {
  it("where everything asked passes", () => {
    const [point] = releases(rulebook, [safePoint("P-1")]);
    expect(point?.point.verdict).toBe("pass");
    expect(point?.release).toEqual({ released: true, reasons: [], accepted: [] });
  });

  it("where everything that keeps it from passing is accepted, and says by whom and until when", () => {
    const torque = { point: "P-1", rule: "tightening-torque" };
    const rows = [safePoint("P-1", STRONG)];
    expect(oneOf(rows)).toEqual(["not-accepted tightening-torque"]);
    const [point] = releases(rulebook, rows, [torque]);
    expect(point?.release).toMatchObject({
      released: true,
      reasons: [],
      accepted: [{ acceptedBy: "N. Nemo, lead engineer", until: "2027-01-01", finding: { rule: "tightening-torque" } }],
    });
  });

  it("not by a deviation that is out of force, or that ends before the outage", () => {
    const torque = { point: "P-1", rule: "tightening-torque", from: "2026-03-01", until: "2026-12-20" };
    const rows = [safePoint("P-1", STRONG)];
    const on = (asOf: string) => oneOf(rows, [torque], { asOf });
    expect(on("2026-02-28")).toEqual(["not-accepted tightening-torque"]);
    expect(on("2026-03-01")).toEqual([]);
    expect(on("2026-12-19")).toEqual([]);
    expect(on("2026-12-20")).toEqual(["not-accepted tightening-torque"]);
    const outage = (day: string) => oneOf([safePoint("P-1", { ...STRONG, next_outage: known(day) })], [torque]);
    expect(outage("2026-12-19")).toEqual([]);
    expect(outage("2026-12-20")).toEqual(["acceptance-ends tightening-torque"]);
  });

  it("not without an id, and not twice", () => {
    expect(oneOf([safePoint("")])).toEqual(["no-id"]);
    const twice = releases(rulebook, [safePoint("P-1"), safePoint("P-1")]);
    expect(twice.map(heldBecause)).toEqual([["never-fails point-twice"], ["never-fails point-twice"]]);
  });

  it("not as what is built, and not by a set that does not ask what can hurt somebody; both are said once", () => {
    const built = { applied_torque: known(8), voltage_at_sensor: known(23.8) };
    expect(oneOf([safePoint("P-1", built)], [], { stage: "installed" })).toEqual(["stage"]);
    const { screening } = screenWith(rulebook, [surveyOf([safePoint("P-1")])], null, { set: "core" });
    const { all } = new Releasing(rulebook, screening.head);
    expect(all).toMatchObject({ cause: "set-too-small", remedy: "screen with --set full" });
    expect(all?.text).toContain("isolation-possible");
    expect(oneOf([safePoint("P-1")], [], { set: "core" })).toEqual(["set-too-small"]);
  });

  it("not by a rulebook that marks no rule", () => {
    const bare: Rulebook = { ...rulebook, rules: rulebook.rules.map((rule) => ({ ...rule, releases: null })) };
    expect(heldBecause(releases(bare, [safePoint("P-1")])[0])).toEqual(["set-too-small"]);
  });
});

describe("what can hurt somebody", () => {
  it("has a column each that would hold a point back if it were not there", () => {
    const needed = Object.keys(SAFE).filter((fact) => oneOf([without(safePoint("P-1"), fact)]).length > 0);
    // With no hazard stated the certificate of the sensor is not needed, nor the block of a rotor that stands still.
    expect(needed).toEqual(
      Object.keys(SAFE).filter((fact) => fact !== "sensor_certified" && fact !== "rotor_blockable"),
    );
  });

  it("holds a point back without a column as not asked, with an empty cell as undecided", () => {
    expect(oneOf([without(safePoint("P-1"), "behind_wall")])).toEqual(["never-not-asked behind-wall"]);
    expect(oneOf([safePoint("P-1", { behind_wall: unknown("missing") })])).toEqual(["never-undecided behind-wall"]);
    const rows = [safePoint("P-1", { behind_wall: unknown("doubtful") }), safePoint("P-2")];
    expect(releases(rulebook, rows).map(heldBecause)).toEqual([["never-undecided behind-wall"], []]);
  });

  it("holds nothing back that it does not apply to, asked or not", () => {
    const clamped = { mounting_method: known("clamp") };
    const [point] = releases(rulebook, [without(safePoint("P-1", clamped), "behind_wall", "certified_enclosure")]);
    expect(heldBecause(point).filter((reason) => reason.startsWith("never"))).toEqual([]);
  });

  it("holds a point back while hot work still needs its permit", () => {
    expect(oneOf([safePoint("P-1", { hot_work_allowed: known("permit-needed") })])).toEqual(["never-warns hot-work"]);
  });
});

const yesNo = fc.constantFrom<FactState>(known(true), known(false), unknown("missing"), unknown("doubtful"));
const oneOfWords = (...words: readonly string[]) =>
  fc.constantFrom<FactState>(...words.map((word) => known(word)), unknown("missing"), unknown("conflicting"));
const anyRow = fc.record({
  isolation_possible: yesNo,
  turns_by_itself: yesNo,
  rotor_blockable: yesNo,
  hot_work_allowed: oneOfWords("allowed", "permit-needed", "forbidden"),
  hazardous_area: oneOfWords("none", "none", "zone-1"),
  sensor_certified: yesNo,
  certified_enclosure: yesNo,
  behind_wall: oneOfWords("solid", "air", "oil", "unknown"),
  supply_separation: oneOfWords("selv", "felv"),
  supply_kind: oneOfWords("dc", "ac"),
  mounting_method: oneOfWords("tapped-hole", "adhesive-pad", "clamp"),
  target_torque: fc.constantFrom<FactState>(known(8), known(12)),
});
/** Some columns are not there at all; most rows are safe but for a few facts. */
const anySurvey = fc
  .tuple(fc.array(anyRow, { minLength: 1, maxLength: 4 }), fc.subarray(Object.keys(SAFE)), fc.array(fc.boolean()))
  .map(([rows, dropped, mild]) =>
    rows.map((row, i) => {
      const kept = mild[i] === false ? row : Object.fromEntries(Object.entries(row).slice(-1 - i));
      return without(safePoint(`P-${i}`, kept), ...(mild[0] === true ? dropped.slice(0, 1) : []));
    }),
  );
const anyDeviation = fc.record({
  point: fc.constantFrom("P-0", "P-1", "P-2"),
  rule: fc.constant("tightening-torque"),
  until: fc.constantFrom("2026-06-01", AS_OF, "2027-01-01"),
});
const deviations = fc.uniqueArray(anyDeviation, { maxLength: 3, selector: ({ point }) => point });

describe("of any survey", () => {
  it("no point is released of which such a rule fails, is open or was not asked, and none with a finding uncovered", () => {
    let released = 0;
    fc.assert(
      fc.property(anySurvey, deviations, (rows, entries) => {
        for (const { point, facts, release } of releases(rulebook, rows, entries)) {
          const against = NEVER.filter((rule) => {
            const compiled = compileRule(rule, rulebook, { stage: "proposed", asOf: AS_OF });
            const outcome = compiled?.judge(facts).outcome ?? "undecided";
            return outcome === "fail" || outcome === "warn" || isOpen(outcome);
          });
          const uncovered = point.findings.filter(({ rule }) => {
            const entry = entries.find((one) => one.point === point.point && one.rule === rule);
            return entry === undefined || entry.until <= AS_OF;
          });
          expect(release.released).toBe(against.length === 0 && uncovered.length === 0);
          expect(release.released).toBe(release.reasons.length === 0);
          if (release.released) released += 1;
        }
      }),
      { numRuns: 120 },
    );
    expect(released).toBeGreaterThan(3);
  });

  it("no finding marked as accepted makes up for such a rule", () => {
    const [failing] = releases(rulebook, [safePoint("P-1", { behind_wall: known("oil") })]);
    if (!failing) throw new Error("no point");
    const accepted = { reason: "r", acceptedBy: "N. Nemo", from: "2026-01-01", until: "2028-01-01" };
    const findings = failing.point.findings.map((finding) => ({
      ...finding,
      accepted: { ...accepted, origin: { file: "d.yaml", line: 1 } },
    }));
    const { screening } = screenWith(rulebook, [surveyOf([safePoint("P-1", { behind_wall: known("oil") })])], null, {
      set: "full",
    });
    const releasing = new Releasing(rulebook, screening.head);
    const point = { ...failing.point, findings, accepted: true };
    expect(releasing.releaseOf({ point, facts: failing.facts }).reasons).toMatchObject([
      { cause: "never-fails", rule: "behind-wall" },
    ]);
  });
});
