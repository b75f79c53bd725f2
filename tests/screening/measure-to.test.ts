import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { isOpen, round12 } from "../../src/base/index.js";
import { type FactState, factOf, withinPossible } from "../../src/facts/index.js";
import type { Finding } from "../../src/screening/index.js";
import { GOOD_POINT, known, screenRows, surveyOf } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";

const rulebook = await shippedRulebook();

/** A number read with an accuracy, as a survey keeps it. */
function read(fact: string, reading: number, accuracy: number): FactState {
  const value = withinPossible(
    { lowest: round12(reading - accuracy), highest: round12(reading + accuracy) },
    factOf(fact),
  );
  return { known: true, value, accuracy, origin: { kind: "cells", cells: [{ sheet: "S", cell: "B2" }] } };
}

function findingOn(rule: string, facts: Readonly<Record<string, FactState>>, set = "core"): Finding | undefined {
  const { points } = screenRows(rulebook, [surveyOf([{ ...GOOD_POINT, ...facts }])], { set, allFindings: true });
  return points[0]?.findings.find((finding) => finding.rule === rule);
}

describe("a number that is too close to a limit", () => {
  it("says how accurately to measure it again, in the finding, the reason and the remedy", () => {
    const finding = findingOn("hole-depth", { hole_depth: read("hole_depth", 15.3, 0.5) });
    expect(finding).toMatchObject({
      outcome: "undecided",
      missing: [{ fact: "hole_depth", reason: "too-close", measureTo: { accuracy: 0.3, unit: "mm" } }],
      remedy: "measure the hole depth again, to ± 0.3 mm or better",
    });
    expect(finding?.facts[0]).toMatchObject({ value: 15.3, lowest: 14.8, highest: 15.8, accuracy: 0.5 });
  });

  it("says nothing of the kind where the reading sits on the limit, and where something else is missing", () => {
    const onLimit = findingOn("hole-depth", { hole_depth: read("hole_depth", 15, 0.5) });
    expect(onLimit?.missing).toEqual([{ fact: "hole_depth", reason: "too-close", measureTo: null }]);
    expect(onLimit?.remedy).toBe("measure more accurately: hole depth");
    const { mounting_method: _, ...rest } = GOOD_POINT;
    const { points } = screenRows(rulebook, [surveyOf([{ ...rest, hole_depth: read("hole_depth", 15.3, 0.5) }])]);
    const open = points[0]?.findings.find(({ rule }) => rule === "hole-depth");
    expect(open?.missing.map(({ measureTo }) => measureTo)).toEqual([null, null]);
  });

  it("is solved through what is computed from it, and names the number that settles it", () => {
    const wall = { wall_thickness: known(25.2), thread: known("M6"), drill_diameter: known(5) };
    const finding = findingOn("wall-left", { ...wall, hole_depth: read("hole_depth", 19, 4) }, "full");
    expect(finding?.outcome).toBe("undecided");
    expect(finding?.missing).toMatchObject([{ fact: "hole_depth", reason: "too-close" }]);
    const to = finding?.missing[0]?.measureTo?.accuracy ?? 0;
    expect(to).toBeGreaterThan(0);
    const again = findingOn("wall-left", { ...wall, hole_depth: read("hole_depth", 19, to) }, "full");
    expect(isOpen(again?.outcome ?? "undecided")).toBe(false);
    const worse = findingOn("wall-left", { ...wall, hole_depth: read("hole_depth", 19, to * 1.12) }, "full");
    expect(worse?.outcome).toBe("undecided");
  });

  it.each([
    ["hole-depth", "hole_depth", 15],
    ["thread-depth", "thread_depth", 9],
    ["seat-diameter", "flat_diameter", 30],
    ["tightening-torque", "target_torque", 10],
    ["supply-voltage", "supply_voltage", 20.4],
    ["supply-voltage", "supply_voltage", 28.8],
    ["min-speed", "nominal_speed", 600],
  ] as const)("is settled by that accuracy and not by twice it (%s, %s near %d)", (rule, fact, limit) => {
    fc.assert(
      fc.property(fc.integer({ min: -2000, max: 2000 }), fc.integer({ min: 1, max: 3000 }), (off, width) => {
        const reading = round12(limit + off / 1000);
        const accuracy = width / 1000;
        const finding = findingOn(rule, { [fact]: read(fact, reading, accuracy) });
        if (finding?.outcome !== "undecided") return;
        const to = finding.missing[0]?.measureTo;
        if (!to) {
          expect(off).toBe(0);
          return;
        }
        expect(Number(to.accuracy.toPrecision(2))).toBe(to.accuracy);
        expect(findingOn(rule, { [fact]: read(fact, reading, to.accuracy) })?.outcome).not.toBe("undecided");
        expect(findingOn(rule, { [fact]: read(fact, reading, 2 * to.accuracy) })?.outcome).toBe("undecided");
      }),
      { numRuns: 60 },
    );
  });
});
