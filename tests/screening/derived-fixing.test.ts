import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FactState, findFact } from "../../src/facts/index.js";
import { between, derive, shown } from "../tools/derived.js";
import { known, unknown } from "../tools/make-record.js";

type Given = Readonly<Record<string, FactState>>;

const HOLE = { wall_thickness: known(25), hole_depth: known(16), thread_depth: known(11), thread: known("M6") };
const BOLT = {
  target_torque: known(10),
  thread: known("M6"),
  bolt_class: known("8.8"),
  thread_state: known("greased"),
};

describe("facts of the wall, the hole and the thread", () => {
  it.each([
    // 25 - 16 - 5/2/tan 59° = 7.4979; 25 - 16 - 5/2/tan 67.5° = 7.9645.
    ["wall_left", HOLE, [7.49784845243, 7.96446609407]],
    ["wall_left", { ...HOLE, thread: unknown("missing") }, [-Infinity, 9]],
    ["wall_left", { ...HOLE, thread: unknown("missing"), drill_diameter: known(5) }, [7.49784845243, 7.96446609407]],
    ["wall_left", { ...HOLE, wall_thickness: unknown("doubtful") }, ["doubtful", "wall_thickness"]],
    // A drill that nobody can read is any drill, not the usual one of the thread.
    ["wall_left", { ...HOLE, drill_diameter: unknown("unreadable") }, [-Infinity, 9]],
    // (16 - 11) / 1 mm of pitch.
    ["thread_run_out", HOLE, [5, 5]],
    ["thread_run_out", { ...HOLE, thread: known("G1/4") }, ["unreadable", "thread"]],
    ["thread_run_out", { hole_depth: unknown("missing"), thread_depth: known(11) }, ["missing", "thread"]],
    ["usable_thread", { ...HOLE, bolt_reach: known(9) }, [1.5, 1.5]],
    ["usable_thread", { ...HOLE, bolt_reach: known(15) }, [11 / 6, 11 / 6].map((x) => Number(x.toPrecision(12)))],
    // A reach that nobody can read may be any; too little thread is cut all the same.
    ["usable_thread", { ...HOLE, bolt_reach: unknown("doubtful") }, [0, 1.83333333333]],
    ["tap_hole", { ...HOLE, drill_diameter: known(5) }, "cutting"],
    ["tap_hole", { ...HOLE, drill_diameter: known(5.4) }, "neither"],
    ["tap_hole", { ...HOLE, drill_diameter: known(4.2) }, "too-small"],
    ["tap_hole", { ...HOLE, drill_diameter: between(5, 5.4) }, ["too-close", "drill_diameter"]],
    ["tap_hole", { thread: known("M8"), drill_diameter: known(6.8) }, "cutting"],
    ["threads_match", { thread: known("M6"), sensor_thread: known("M6x1") }, true],
    ["threads_match", { thread: known("M6"), sensor_thread: known("1/4-28 UNF") }, false],
    ["threads_match", { thread: known("M6"), sensor_thread: unknown("missing") }, ["missing", "sensor_thread"]],
    ["wall_metal", { surface_material: known("aluminium") }, "aluminium"],
    ["wall_metal", { surface_material: known("sheet-metal") }, ["missing", "surface_material"]],
    ["wall_metal", { surface_material: known("absent") }, ["missing", "surface_material"]],
    ["wall_metal", { surface_material: unknown("conflicting") }, ["conflicting", "surface_material"]],
  ] as const)("%s: %j", (id, facts, wanted) => {
    expect(shown(derive(id, facts))).toEqual(wanted);
  });

  it("say that the bolt is taken to use all of the thread where nobody states its reach", () => {
    expect(derive("usable_thread", HOLE)).toMatchObject({
      value: { lowest: 1.83333333333, highest: 1.83333333333 },
      assumed: "the bolt is taken to reach through all of the full thread",
    });
    expect(derive("usable_thread", { ...HOLE, bolt_reach: known(9) })).not.toHaveProperty("assumed");
  });

  it("know every material but those that leave the metal open", () => {
    const choices = findFact("surface_material")?.choices ?? [];
    const named = choices.filter((choice) => derive("wall_metal", { surface_material: known(choice) }).known);
    expect(choices.filter((choice) => !named.includes(choice))).toEqual(["sheet-metal", "absent"]);
    expect(named).toEqual(findFact("wall_metal")?.choices);
  });
});

describe("facts of bolt and bond", () => {
  it.each([
    // 10 N·m / (0.12 × 6 mm) = 13,889 N over 580 MPa × 20.123 mm² = 11,672 N.
    ["planned_preload", BOLT, 119.0],
    // 10.5 N·m / (0.20 × 6 mm) = 8,750 N.
    ["planned_preload", { ...BOLT, target_torque: known(10.5), thread_state: known("dry") }, 75.0],
    ["planned_preload", { ...BOLT, target_torque: known(7.9), thread_state: known("oiled") }, 75.2],
  ] as const)("%s of a bolt by hand: %#", (id, facts, percent) => {
    const state = derive(id, facts);
    const ends = state.known && typeof state.value === "object" ? state.value : null;
    expect(ends?.lowest).toBe(ends?.highest);
    expect(ends?.lowest).toBeCloseTo(percent, 0);
  });

  it("span all states of the threads where none is stated", () => {
    const state = (given: FactState) => derive("planned_preload", { ...BOLT, thread_state: given });
    const ends = (given: FactState) => shown(state(given)) as readonly number[];
    const open = ends(unknown("missing"));
    expect(open).toEqual([ends(known("dry"))[0], ends(known("greased"))[1]]);
    expect(state(unknown("missing"))).toMatchObject({
      origin: {
        from: [
          "thread_state",
          "target_torque",
          "thread",
          "bolt_class",
          "table.proof_stress",
          "table.torque_factor_min",
        ],
      },
    });
  });

  it.each([
    ["planned_preload", { ...BOLT, bolt_class: unknown("missing") }, ["missing", "bolt_class"]],
    ["planned_preload", { ...BOLT, thread: known("M30"), bolt_class: known("A2-70") }, ["unreadable", "bolt_class"]],
    ["applied_preload", BOLT, ["missing", "applied_torque"]],
    ["torque_off_plan", { applied_torque: known(9), target_torque: known(8) }, [12.5, 12.5]],
    ["torque_off_plan", { applied_torque: known(9) }, ["missing", "target_torque"]],
    // 300 - √(300² - 15²).
    ["pad_gap", { surface_radius: known(300), "model.seat_diameter_min": known(30) }, [0.375234668427, 0.375234668427]],
    // A pad wider than the cylinder: at least half its width.
    ["pad_gap", { surface_radius: known(10), "model.seat_diameter_min": known(30) }, [15, 15]],
    ["pad_gap", { flat_diameter: known(30), "model.seat_diameter_min": known(30) }, [0, 0]],
    ["pad_gap", { flat_diameter: known(29), "model.seat_diameter_min": known(30) }, ["missing", "surface_radius"]],
    [
      "pad_gap",
      { surface_radius: unknown("unreadable"), flat_diameter: known(40), "model.seat_diameter_min": known(30) },
      ["unreadable", "surface_radius"],
    ],
    ["pad_gap", { surface_radius: known(300) }, ["missing", "model.seat_diameter_min"]],
  ] as const)("%s: %j", (id, facts, wanted) => {
    expect(shown(derive(id, facts))).toEqual(wanted);
  });

  it("allow a stainless bolt more torque than its lower class would, for its friction", () => {
    const preload = (bolt: string) =>
      (
        shown(derive("planned_preload", { ...BOLT, bolt_class: known(bolt), thread_state: known("dry") })) as number[]
      )[1];
    // 450 MPa instead of 580, but a friction of 0.30 instead of a K of 0.20.
    expect(preload("A2-70")).toBeLessThan(preload("8.8") ?? 0);
  });
});

/** What each numeric fact is made of, with the range of its parts; words are given once. */
const PARTS: readonly (readonly [
  id: string,
  parts: Readonly<Record<string, readonly [number, number]>>,
  words: Given,
])[] = [
  ["wall_left", { wall_thickness: [5, 60], hole_depth: [4, 40], drill_diameter: [2, 20] }, {}],
  ["wall_left", { wall_thickness: [5, 60], hole_depth: [4, 40] }, { thread: known("M8") }],
  ["thread_run_out", { hole_depth: [4, 40], thread_depth: [3, 40] }, { thread: known("1/4-28 UNF") }],
  ["usable_thread", { thread_depth: [3, 40], bolt_reach: [3, 40] }, { thread: known("M6") }],
  ["planned_preload", { target_torque: [0.5, 40] }, { ...BOLT, thread_state: unknown("missing") }],
  ["applied_preload", { applied_torque: [0.5, 40] }, { ...BOLT, bolt_class: known("A4-80") }],
  ["torque_off_plan", { applied_torque: [0.5, 40], target_torque: [0.5, 40] }, {}],
  ["pad_gap", { surface_radius: [5, 2000], "model.seat_diameter_min": [10, 60] }, {}],
];

describe("the interval of a derived fact", () => {
  it.each(PARTS)("%s contains the value at any completion", (id, parts, words) => {
    const part = ([lowest, highest]: readonly [number, number]) =>
      fc.tuple(
        fc.double({ min: lowest, max: highest, noNaN: true }),
        fc.double({ min: 0, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
      );
    const names = Object.keys(parts);
    fc.assert(
      fc.property(
        fc.tuple(...Object.values(parts).map(part)),
        fc.constantFrom("dry", "oiled", "greased"),
        (ends, state) => {
          const wide = names.map((name, i) => [
            name,
            between(ends[i]?.[0] ?? 0, (ends[i]?.[0] ?? 0) + (ends[i]?.[1] ?? 0)),
          ]);
          const exact = names.map((name, i) => {
            const [from = 0, width = 0, share = 0] = ends[i] ?? [];
            return [name, known(Math.min(from + share * width, from + width))];
          });
          const complete: Given = { ...words, thread_state: known(state), ...Object.fromEntries(exact) };
          const stated: Given = { ...words, ...Object.fromEntries(wide) };
          const settled = stated.thread_state?.known ? { ...complete, thread_state: stated.thread_state } : complete;
          const outer = shown(derive(id, stated)) as readonly [number, number];
          const inner = shown(derive(id, settled)) as readonly [number, number];
          const slack = 1e-9 * Math.max(1, ...outer.map(Math.abs));
          expect(inner[0]).toBeGreaterThanOrEqual(outer[0] - slack);
          expect(inner[1]).toBeLessThanOrEqual(outer[1] + slack);
        },
      ),
    );
  });

  it("has its ends in order for every size, also one that an accuracy carries below nothing", () => {
    const ids = [
      "wall_left",
      "thread_run_out",
      "usable_thread",
      "tap_hole",
      "pad_gap",
      "torque_off_plan",
      "planned_preload",
    ];
    const names = [
      "wall_thickness",
      "hole_depth",
      "thread_depth",
      "drill_diameter",
      "bolt_reach",
      "surface_radius",
      "flat_diameter",
      "model.seat_diameter_min",
      "target_torque",
      "applied_torque",
    ];
    const odd = fc.constantFrom(
      between(-2, 3),
      between(-2, -1),
      between(0, 0),
      between(1, Infinity),
      unknown("missing"),
    );
    const threads = fc.constantFrom("M6", "M1.6x0.2", "M2x0.25", "M36", "3/4-10 UNC", "R1/8");
    fc.assert(
      fc.property(fc.tuple(...names.map(() => odd)), threads, (states, thread) => {
        const facts = {
          ...BOLT,
          thread: known(thread),
          ...Object.fromEntries(names.map((name, i) => [name, states[i] ?? unknown("missing")])),
        };
        for (const id of ids) {
          const state = derive(id, facts);
          if (state.known && typeof state.value === "object")
            expect(state.value.lowest).toBeLessThanOrEqual(state.value.highest);
        }
      }),
    );
  });
});
