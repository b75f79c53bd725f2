import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  ACCEPTED,
  type Choice,
  choiceOf,
  EVERYTHING,
  fragmentOf,
  ORDERS,
  VERDICTS,
} from "../../../src/outputs/report/list/choice.js";
import { Selection } from "../../../src/outputs/report/list/selection.js";
import type { PointResult } from "../../../src/screening/index.js";
import { COATED_SEAT, point, SPEED_OPEN, SUPPLY_OUTSIDE, THREAD_TOO_SHORT } from "../fake-findings.js";
import { dataOf, reportOf } from "./made-report.js";

const on = (machine: string, tag: string, one: PointResult): PointResult => ({ ...one, machine, assetTag: tag });
const POINTS = [
  on("Pump 10", "P-10", point(4, "pass", [])),
  on("Pump 10", "P-10", point(5, "warn", [COATED_SEAT])),
  on("Pump 2", "P-2", point(6, "fail", [THREAD_TOO_SHORT])),
  on("Rührwerk", "R-1", point(7, "fail", [SUPPLY_OUTSIDE, SPEED_OPEN])),
  on("Rührwerk", "R-1", { ...point(8, "fail", [SUPPLY_OUTSIDE]), accepted: true }),
  on("Pump 2", "P-2", point(9, "warn", [SPEED_OPEN])),
];
const data = dataOf(reportOf(POINTS));
const selection = new Selection(data);

/** Rows of the points chosen, in their order. */
function rows(choice: Partial<Choice>): readonly number[] {
  const { machines, count } = selection.of({ ...EVERYTHING, ...choice });
  const shown = machines.flatMap(({ points }) => points.map((one) => data.points[one]?.[6] ?? 0));
  expect(shown).toHaveLength(count);
  return shown;
}

describe("the choice among points", () => {
  it("shows everything machine by machine in the order of the survey", () => {
    expect(rows({})).toEqual([4, 5, 6, 9, 7, 8]);
  });

  it.each<[string, Partial<Choice>, readonly number[]]>([
    ["a verdict", { verdicts: ["warn"] }, [5, 9]],
    ["no verdict", { verdicts: [] }, []],
    ["a rule that speaks against it", { rule: "supply-voltage" }, [7, 8]],
    ["a rule that nobody knows", { rule: "no-such-rule" }, []],
    ["a machine", { machine: "Pump 2 (P-2)" }, [6, 9]],
    ["what is undecided", { undecided: true }, [9, 7]],
    ["what is accepted", { accepted: "only" }, [8]],
    ["what is not accepted", { accepted: "not" }, [4, 5, 6, 9, 7]],
    ["part of a reason, whatever its capitals", { text: "FULL thread" }, [6]],
    ["part of a machine's name, whatever its accents", { text: "ruhr" }, [7, 8]],
    ["part of a rule", { text: "supply-v" }, [7, 8]],
    ["part of an id", { text: "000000000009" }, [9]],
    ["two things at once", { verdicts: ["fail"], undecided: true }, [7]],
  ])("knows %s", (_name, choice, expected) => {
    expect(rows(choice)).toEqual(expected);
  });

  it("puts machines, and the points of each, into order", () => {
    expect(rows({ order: "name" })).toEqual([6, 9, 4, 5, 7, 8]);
    expect(rows({ order: "verdict" })).toEqual([7, 8, 6, 9, 5, 4]);
    expect(rows({ order: "margin" })).toEqual([7, 8, 6, 9, 4, 5]);
  });

  it("leaves no point out and takes none twice, whatever the order", () => {
    for (const order of ORDERS) expect(rows({ order }).toSorted()).toEqual([4, 5, 6, 7, 8, 9]);
  });
});

describe("the choice in the address", () => {
  const anyChoice = fc.record({
    verdicts: fc.subarray([...VERDICTS]),
    rule: fc.string(),
    machine: fc.string(),
    text: fc.string({ unit: "grapheme" }),
    undecided: fc.boolean(),
    accepted: fc.constantFrom(...ACCEPTED),
    order: fc.constantFrom(...ORDERS),
  });

  it("comes back as it was", () => {
    fc.assert(
      fc.property(anyChoice, (choice) => {
        expect(choiceOf(fragmentOf(choice))).toEqual(choice);
      }),
    );
  });

  it("leaves places on the page alone, and leaves out what it does not understand", () => {
    expect(choiceOf("#rules")).toBeNull();
    expect(choiceOf("")).toEqual(EVERYTHING);
    expect(fragmentOf(EVERYTHING)).toBe("");
    expect(choiceOf("#show=fail+maybe&order=upwards&accepted=1&x=2")).toEqual({ ...EVERYTHING, verdicts: ["fail"] });
  });
});
