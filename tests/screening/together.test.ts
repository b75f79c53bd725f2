import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Truth } from "../../src/base/index.js";
import type { FactState, FactValue, UnknownReason } from "../../src/facts/index.js";
import type { CompiledMember } from "../../src/rulebook/index.js";
import { type CountedPart, together } from "../../src/screening/groups/together.js";

function member(is: CompiledMember["is"], fact: string | null): CompiledMember {
  return { id: `group.${is}`, is, fact, holds: () => true, openIn: () => [] };
}

function part(holds: Truth, value: FactValue | UnknownReason | null, rows = 1): CountedPart {
  if (value === null) return { part: { holds, said: null, lacking: [] }, rows };
  const unknown = typeof value === "string" && REASONS.includes(value);
  const reason = value as UnknownReason;
  const said = unknown ? ({ known: false, reason } as const) : ({ known: true, value } as const);
  return { part: { holds, said, lacking: unknown ? [{ fact: "sensor_current", reason }] : [] }, rows };
}

const REASONS: readonly string[] = ["missing", "doubtful", "unreadable", "conflicting"];
const CURRENT = member("sum", "sensor_current");

function ends(state: FactState): readonly [number, number] {
  if (!state.known || typeof state.value !== "object") throw new Error("a number is expected");
  return [state.value.lowest, state.value.highest];
}

const number = fc.integer({ min: 0, max: 100_000 }).map((tenths) => tenths / 10);
const interval = fc.tuple(number, number).map(([a, b]) => ({ lowest: Math.min(a, b), highest: Math.max(a, b) }));
const truth = fc.constantFrom<Truth>(true, true, null);
const row = fc
  .tuple(truth, fc.oneof(interval, fc.constantFrom("missing" as const, "unreadable" as const)))
  .map(([holds, value]) => part(holds, value));
const rows = fc.array(row, { minLength: 1, maxLength: 12 });

/** What a row turns out to be, where it was not known: meant or not, and with which number. */
function settled({ part: { holds, said } }: CountedPart, isMeant: boolean, share: number): CountedPart {
  const meant = holds ?? isMeant;
  const value = said?.known && typeof said.value === "object" ? said.value : { lowest: 0, highest: 5000 };
  const one = value.lowest + share * (value.highest - value.lowest);
  return part(meant, { lowest: one, highest: one });
}

describe("the sum of a group", () => {
  it("depends on no order of rows, to the last digit", () => {
    const shuffled = rows.chain((all) =>
      fc.tuple(fc.constant(all), fc.shuffledSubarray(all, { minLength: all.length })),
    );
    fc.assert(
      fc.property(shuffled, ([all, mixed]) => {
        expect(together(CURRENT, mixed)).toEqual(together(CURRENT, all));
      }),
    );
  });

  it("holds the sum of whatever the rows turn out to be", () => {
    const guesses = fc.array(fc.tuple(fc.boolean(), fc.double({ min: 0, max: 1, noNaN: true })), {
      minLength: 12,
      maxLength: 12,
    });
    fc.assert(
      fc.property(rows, guesses, (all, guessed) => {
        const [lowest, highest] = ends(together(CURRENT, all));
        const [sum] = ends(
          together(
            CURRENT,
            all.map((one, i) => settled(one, guessed[i]?.[0] ?? true, guessed[i]?.[1] ?? 0)),
          ),
        );
        expect(sum).toBeGreaterThanOrEqual(lowest * (1 - 1e-9));
        expect(sum).toBeLessThanOrEqual(highest * (1 + 1e-9));
      }),
    );
  });

  it("never gets smaller by a row more, and never narrower by a row that is not known", () => {
    fc.assert(
      fc.property(rows, row, (all, more) => {
        const [before, after] = [all, [...all, more]].map((some) => ends(together(CURRENT, some)));
        expect(after?.[0]).toBeGreaterThanOrEqual((before?.[0] ?? 0) * (1 - 1e-9));
        expect(after?.[1]).toBeGreaterThanOrEqual((before?.[1] ?? 0) * (1 - 1e-9));
      }),
    );
    fc.assert(
      fc.property(rows, fc.nat(), (all, which) => {
        const at = which % all.length;
        const lost = all.map((one, i) => (i === at ? part(one.part.holds, "missing") : one));
        const [known, open] = [all, lost].map((some) => ends(together(CURRENT, some)));
        expect(open?.[0]).toBeLessThanOrEqual((known?.[0] ?? 0) * (1 + 1e-9));
        expect(open?.[1]).toBe(Number.POSITIVE_INFINITY);
      }),
    );
  });

  it("counts rows that are alike as often as they stand there, and names what is missing", () => {
    expect(ends(together(CURRENT, [part(true, { lowest: 100, highest: 100 }, 7)]))).toEqual([700, 700]);
    const open = together(CURRENT, [part(true, { lowest: 0.1, highest: 0.1 }, 3), part(true, "doubtful")]);
    expect(open).toMatchObject({ value: { lowest: 0.3 }, lacking: [{ fact: "sensor_current", reason: "doubtful" }] });
  });
});

describe("the sum of numbers that may lie below zero", () => {
  const COLD = member("sum", "ambient_max");

  it("is known where all rows are, and has no end on either side where one is not", () => {
    const rows = [part(true, { lowest: -20, highest: -18 }), part(true, { lowest: 5, highest: 6 }, 2)];
    expect(ends(together(COLD, rows))).toEqual([-10, -6]);
    expect(ends(together(COLD, [...rows, part(true, "missing")]))).toEqual([-Infinity, Infinity]);
    expect(ends(together(COLD, [...rows, part(null, { lowest: -3, highest: -3 })]))).toEqual([-13, -6]);
  });
});

describe("the other ways", () => {
  it("count the rows that are surely meant, and those that may be", () => {
    const parts = [part(true, null, 3), part(null, null, 2), part(false, null, 9)];
    expect(together(member("count", null), parts)).toMatchObject({ value: { lowest: 3, highest: 5 } });
  });

  it("count different words; one that is not known may be another or the same", () => {
    const directions = member("distinct", "direction");
    expect(ends(together(directions, [part(true, "axial", 4), part(true, "vertical")]))).toEqual([2, 2]);
    expect(ends(together(directions, [part(true, "axial"), part(true, "missing")]))).toEqual([1, 2]);
    expect(ends(together(directions, [part(null, "axial"), part(true, "missing")]))).toEqual([1, 2]);
    expect(ends(together(directions, [part(true, "missing", 40)]))).toEqual([1, 5]);
    expect(ends(together(directions, []))).toEqual([0, 0]);
  });

  it("take the smallest and the greatest, open at the end that an unknown row may move", () => {
    const [low, high] = [member("minimum", "sensor_current"), member("maximum", "sensor_current")];
    const known = [part(true, { lowest: 5, highest: 5 }), part(true, { lowest: 8, highest: 9 })];
    expect(ends(together(low, known))).toEqual([5, 5]);
    expect(ends(together(high, known))).toEqual([8, 9]);
    expect(ends(together(low, [...known, part(true, "missing")]))).toEqual([0, 5]);
    expect(ends(together(high, [...known, part(null, "missing")]))).toEqual([8, Number.POSITIVE_INFINITY]);
    expect(ends(together(high, [...known, part(null, { lowest: 20, highest: 20 })]))).toEqual([8, 20]);
    expect(together(low, [part(true, "unreadable")])).toMatchObject({ known: false, reason: "unreadable" });
    expect(together(low, [])).toMatchObject({ known: false, reason: "missing" });
  });

  it("take what the rows state alike", () => {
    const rating = member("same", "supply_rating");
    const two = { lowest: 2000, highest: 2000 };
    const about = { lowest: 1900, highest: 2100 };
    expect(together(rating, [part(true, two), part(true, "missing")])).toMatchObject({ value: two, lacking: [] });
    expect(together(rating, [part(true, two), part(true, about)])).toMatchObject({ value: about });
    expect(together(rating, [part(true, two), part(true, { lowest: 3000, highest: 3000 })])).toMatchObject({
      known: false,
      reason: "conflicting",
      lacking: [{ fact: "supply_rating", reason: "conflicting" }],
    });
    expect(together(rating, [part(true, two), part(true, "doubtful")])).toMatchObject({
      known: false,
      reason: "doubtful",
    });
    expect(together(rating, [part(true, "missing")])).toMatchObject({ known: false, reason: "missing" });
    const name = member("same", "supply_name");
    for (const parts of [
      [part(true, "psu 1"), part(true, "PSU 1")],
      [part(true, "PSU 1"), part(true, "psu 1")],
    ]) {
      expect(together(name, parts)).toMatchObject({ value: "PSU 1" });
    }
  });
});
