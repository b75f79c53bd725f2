import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { round12 } from "../../src/base/index.js";
import type { FactState } from "../../src/facts/index.js";
import { askedFor, between, derive } from "../tools/derived.js";
import { known, unknown } from "../tools/make-record.js";

type Given = Readonly<Record<string, FactState>>;

function ends(id: string, facts: Given): unknown {
  const state = derive(id, facts);
  if (!state.known) return state.reason;
  return typeof state.value === "object" ? [state.value.lowest, state.value.highest] : state.value;
}

const FIXED: Given = { nominal_speed: known(1500), variable_speed: known("no") };

describe("the highest running speed", () => {
  it.each([
    ["the field of that name", { highest_speed: known(1800), nominal_speed: known(1485) }, [1800, 1800]],
    ["the single speed of a fixed drive", FIXED, [1500, 1500]],
    ["the single speed without a drive's word", { nominal_speed: known(1485) }, [1485, 1485]],
    [
      "at least the single speed under a variable drive",
      { nominal_speed: known(1485), variable_speed: known("yes") },
      [1485, Infinity],
    ],
    [
      "at least the single speed under a drive nobody can read",
      { nominal_speed: known(1485), variable_speed: unknown("unreadable") },
      [1485, Infinity],
    ],
    [
      "at least the single speed beside a highest speed nobody can read",
      { nominal_speed: known(1485), highest_speed: unknown("doubtful") },
      [1485, Infinity],
    ],
    ["not known without any speed", { variable_speed: known("no") }, "missing"],
    ["not known for a speed nobody can read", { nominal_speed: unknown("unreadable") }, "unreadable"],
  ] as const)("is %s", (_name, facts, wanted) => {
    expect(ends("highest_running_speed", facts)).toEqual(wanted);
  });

  it("names the fact that would settle it", () => {
    const bound = derive("highest_running_speed", { nominal_speed: known(1485), variable_speed: known("yes") });
    expect(bound.origin).toEqual({ kind: "derived", from: ["highest_speed", "nominal_speed"] });
    const open = derive("highest_running_speed", { variable_speed: known("yes") });
    expect(open.origin).toMatchObject({ from: ["highest_speed", "nominal_speed"] });
  });
});

// By hand: 1500 r/min are 25 turns a second; 23 teeth mesh 575 times, 7 blades pass 175 times a second. 1600 lines up
// to 1000 Hz take 1.6 s, in which the shaft turns 40 times; four of them after 2 s of settling take 8.4 s. A change of
// 0.05 % moves the last of 1600 lines by 0.8 of a line.
const BY_HAND: Given = {
  ...FIXED,
  gear_teeth: known(23),
  blade_count: known(7),
  spectrum_lines: known(1600),
  highest_frequency: known(1000),
  averages: known(4),
  settling_time: known(2),
  speed_change: known(0.05),
};
const WORKED: Readonly<Record<string, number>> = {
  highest_turning_frequency: 25,
  lowest_turning_frequency: 25,
  line_spacing: 0.625,
  record_length: 1.6,
  tooth_mesh_frequency: 575,
  blade_pass_frequency: 175,
  turns_in_record: 40,
  measuring_time: 8.4,
  lines_smeared: 0.8,
};

describe("worked by hand", () => {
  it.each(Object.entries(WORKED))("%s is %d", (id, value) => {
    expect(ends(id, BY_HAND)).toEqual([value, value]);
  });

  it.each([
    ["tooth_mesh_frequency", "gear_teeth"],
    ["blade_pass_frequency", "blade_count"],
    ["highest_turning_frequency", "nominal_speed"],
    ["tooth_mesh_frequency", "nominal_speed"],
    ["turns_in_record", "nominal_speed"],
    ["turns_in_record", "spectrum_lines"],
    ["turns_in_record", "highest_frequency"],
    ["measuring_time", "averages"],
    ["measuring_time", "settling_time"],
    ["measuring_time", "spectrum_lines"],
    ["measuring_time", "highest_frequency"],
    ["lines_smeared", "speed_change"],
    ["lines_smeared", "spectrum_lines"],
  ])("%s is not known without %s, which is named first", (id, lacking) => {
    const given = { ...BY_HAND, [lacking]: unknown("doubtful") };
    expect(derive(id, given)).toMatchObject({ known: false, reason: "doubtful" });
    expect(askedFor(id, given)).toBe(lacking);
  });

  it("keeps a bound as a bound: at most so many turns, at least such a frequency", () => {
    const varying = { ...BY_HAND, variable_speed: known("yes") };
    expect(ends("turns_in_record", varying)).toEqual([-Infinity, 40]);
    expect(ends("tooth_mesh_frequency", varying)).toEqual([575, Infinity]);
  });
});

/** The parts of each fact, and how it follows from single values of them; written apart from the program. */
const FORMULAS: Readonly<Record<string, readonly [parts: readonly string[], of: (...values: number[]) => number]>> = {
  highest_turning_frequency: [["nominal_speed"], (rpm = 0) => rpm / 60],
  tooth_mesh_frequency: [["nominal_speed", "gear_teeth"], (rpm = 0, teeth = 0) => (rpm / 60) * teeth],
  blade_pass_frequency: [["nominal_speed", "blade_count"], (rpm = 0, blades = 0) => (rpm / 60) * blades],
  turns_in_record: [
    ["nominal_speed", "spectrum_lines", "highest_frequency"],
    (rpm = 0, lines = 0, top = 1) => ((rpm / 60) * lines) / top,
  ],
  measuring_time: [
    ["settling_time", "spectrum_lines", "highest_frequency", "averages"],
    (settling = 0, lines = 0, top = 1, averages = 0) => settling + (lines / top) * averages,
  ],
  lines_smeared: [["speed_change", "spectrum_lines"], (change = 0, lines = 0) => (change / 100) * lines],
};

const COUNTS = ["gear_teeth", "blade_count", "spectrum_lines", "averages"];

/** Two ends, sometimes below what can be meant as an accuracy may reach, and a plausible value between them. */
function anyPart(
  id: string,
): fc.Arbitrary<{ readonly lowest: number; readonly highest: number; readonly value: number }> {
  const whole = COUNTS.includes(id);
  const number = whole ? fc.integer({ min: 1, max: 5000 }) : fc.double({ min: 0.1, max: 5000, noNaN: true });
  const off = whole ? fc.integer({ min: 0, max: 10 }) : fc.double({ min: 0, max: 10, noNaN: true });
  return fc
    .tuple(number, off, off)
    .map(([value, less, more]) => ({ lowest: value - less, highest: value + more, value }));
}

describe.each(Object.entries(FORMULAS))("%s", (id, [parts, formula]) => {
  it("contains the value of every completion", () => {
    fc.assert(
      fc.property(fc.tuple(...parts.map(anyPart)), (drawn) => {
        const facts = Object.fromEntries(
          parts.map((part, i) => [part, between(drawn[i]?.lowest ?? 0, drawn[i]?.highest ?? 0)]),
        );
        const state = derive(id, { variable_speed: known("no"), ...facts });
        if (!state.known || typeof state.value !== "object") throw new Error("it is known");
        const value = round12(formula(...drawn.map((part) => part.value)));
        // Formula and program may round the last digit differently.
        const hair = 1e-11 * Math.abs(value);
        expect(state.value.lowest).toBeLessThanOrEqual(value + hair);
        expect(state.value.highest).toBeGreaterThanOrEqual(value - hair);
      }),
    );
  });

  it("is no wider than its ends for exact parts", () => {
    fc.assert(
      fc.property(fc.tuple(...parts.map(anyPart)), (drawn) => {
        const facts = Object.fromEntries(parts.map((part, i) => [part, known(drawn[i]?.value ?? 0)]));
        const found = ends(id, { variable_speed: known("no"), ...facts });
        const value = formula(...drawn.map((part) => part.value));
        const [lowest, highest] = found as [number, number];
        expect(highest).toBe(lowest);
        expect(Math.abs(lowest - value)).toBeLessThanOrEqual(1e-11 * Math.abs(value));
      }),
    );
  });
});
