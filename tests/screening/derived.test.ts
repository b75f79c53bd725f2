import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FactState, factOf } from "../../src/facts/index.js";
import { lowestRunningSpeed, seatOf, speedVaries } from "../../src/quantities/index.js";
import { DERIVED } from "../../src/screening/derive.js";
import { known, unknown } from "../tools/make-record.js";

function derived(facts: Readonly<Record<string, FactState>>): ReadonlyMap<string, FactState> {
  const map = new Map(Object.entries(facts));
  for (const [id, derive] of DERIVED) map.set(id, derive(map));
  return map;
}

function valueOfFact(facts: ReadonlyMap<string, FactState>, id: string): unknown {
  const state = facts.get(id);
  if (!state?.known) return state?.reason ?? "missing";
  return typeof state.value === "object" ? [state.value.lowest, state.value.highest] : state.value;
}

function within(lowest: number, highest: number): FactState {
  return { known: true, value: { lowest, highest }, origin: { kind: "none" } };
}

describe("the speed of the shaft", () => {
  it.each([
    [
      "a range varies, whatever the drive's word",
      { lowest_speed: known(900), highest_speed: known(1500) },
      true,
      [900, 900],
    ],
    ["a fixed drive does not", { nominal_speed: known(1485), variable_speed: known("no") }, false, [1485, 1485]],
    [
      "a single speed under a variable drive is only a bound",
      { nominal_speed: known(1485), variable_speed: known("yes") },
      true,
      [-Infinity, 1485],
    ],
    [
      "a single speed without a drive's word is the lowest",
      { nominal_speed: known(1485), variable_speed: unknown("missing") },
      "missing",
      [1485, 1485],
    ],
    [
      "a drive nobody can read is not the same as none",
      { nominal_speed: known(1485), variable_speed: unknown("unreadable") },
      "unreadable",
      [-Infinity, 1485],
    ],
    [
      "one end that equals the other leaves it to the drive",
      { lowest_speed: known(990), highest_speed: known(990), variable_speed: known("no") },
      false,
      [990, 990],
    ],
    [
      "ends that may be one speed or two say nothing against a fixed drive, nor for it",
      { lowest_speed: within(980, 1000), highest_speed: within(985, 1005), variable_speed: known("no") },
      "too-close",
      [980, 1000],
    ],
    [
      "and leave a variable drive as it is",
      { lowest_speed: within(980, 1000), highest_speed: within(985, 1005), variable_speed: known("yes") },
      true,
      [980, 1000],
    ],
    ["no speed at all", { variable_speed: known("no") }, false, "missing"],
    [
      "a speed nobody can read",
      { nominal_speed: unknown("unreadable"), variable_speed: known("no") },
      false,
      "unreadable",
    ],
    [
      "a lowest speed nobody can read beside a nominal one",
      { nominal_speed: known(1485), lowest_speed: unknown("doubtful") },
      "missing",
      [-Infinity, 1485],
    ],
  ] as const)("%s", (_name, facts, varies, lowest) => {
    const all = derived(facts);
    expect(valueOfFact(all, "speed_varies")).toEqual(varies);
    expect(valueOfFact(all, "lowest_running_speed")).toEqual(lowest);
  });

  it("keeps the accuracy of the stated speed", () => {
    const state: FactState = {
      known: true,
      value: { lowest: 590, highest: 610 },
      accuracy: 10,
      origin: { kind: "none" },
    };
    expect(valueOfFact(derived({ nominal_speed: state }), "lowest_running_speed")).toEqual([590, 610]);
  });

  it("is computed by functions on plain numbers", () => {
    expect(speedVaries(900, 1500, "no")).toBe(true);
    expect(speedVaries(900, null, null)).toBeNull();
    expect(lowestRunningSpeed(300, 1500, "yes")).toEqual({ rpm: 300, bound: "exact" });
    expect(lowestRunningSpeed(null, null, "yes")).toBeNull();
  });
});

const PARTS = ["mounted_on", "surface_material", "surface_finish"] as const;

/** All choices of a part, "absent" included. */
function choicesOf(id: (typeof PARTS)[number]): readonly string[] {
  return factOf(id).choices ?? [];
}

describe("the seat", () => {
  it.each([
    ["fan-cover", "carbon-steel", "bare-machined", "not-solid"],
    ["absent", "sheet-metal", "absent", "not-solid"],
    ["foot", "plastic", "painted", "not-solid"],
    ["bearing-housing", "grey-cast-iron", "painted", "coated"],
    ["absent", "absent", "rusty", "coated"],
    ["bearing-housing", "absent", "absent", "solid"],
    ["absent", "cast-steel", "as-cast", "solid"],
    ["pipe", "absent", "absent", "solid"],
    ["absent", "absent", "bare-machined", null],
  ] as const)("on %s of %s, %s, is %s", (place, material, finish, seat) => {
    expect(seatOf(place, material, finish)).toBe(seat);
  });

  it("knows every choice of its parts: none is taken for solid by default", () => {
    const decided = new Map(choicesOf("mounted_on").map((place) => [place, seatOf(place, "absent", "absent")]));
    expect(Object.fromEntries(decided)).toEqual({
      "bearing-housing": "solid",
      casing: "solid",
      "cooling-fin": "not-solid",
      "fan-cover": "not-solid",
      guard: "not-solid",
      foot: "solid",
      pipe: "solid",
      absent: null,
    });
    const coated = choicesOf("surface_finish").filter((finish) => seatOf("foot", "cast-steel", finish) === "coated");
    expect(coated).toEqual([
      "painted",
      "powder-coated",
      "galvanised",
      "rusty",
      "oily",
      "insulated",
      "rubber",
      "coated",
    ]);
  });

  it("is decided with parts missing exactly where every completion gives the same", () => {
    const part = (id: (typeof PARTS)[number]) => fc.option(fc.constantFrom(...choicesOf(id)), { nil: null });
    fc.assert(
      fc.property(part(PARTS[0]), part(PARTS[1]), part(PARTS[2]), (...parts) => {
        const facts = Object.fromEntries(
          PARTS.map((id, i) => [id, parts[i] == null ? unknown("missing") : known(parts[i])]),
        );
        const options = PARTS.map((id, i) =>
          parts[i] == null ? choicesOf(id).filter((c) => c !== "absent") : [parts[i]],
        );
        const all = new Set<string | null>();
        for (const a of options[0] ?? [])
          for (const b of options[1] ?? []) for (const c of options[2] ?? []) all.add(seatOf(a, b, c));
        const state = derived(facts).get("seat");
        const [only] = all;
        expect(state?.known ? state.value : null).toBe(all.size === 1 ? only : null);
      }),
    );
  });

  it("names the parts that are missing, those with a cell first", () => {
    const state = derived({
      mounted_on: known("foot"),
      surface_material: unknown("doubtful"),
      surface_finish: known("as-cast"),
    }).get("seat");
    expect(state).toMatchObject({ known: false, reason: "doubtful" });
  });
});
