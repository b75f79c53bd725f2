import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ExportedState } from "../../../src/handover/difference/index.js";
import type { MappedFile, MappedRow } from "../../../src/handover/index.js";
import { acceptedState, differences, fileOf } from "./made.js";

const KEYS = ["k1", "k2", "k3", "k4", "k5", "k6"] as const;

/** An export of any of six keys, each under one of two ids, in any order. */
const anyExport: fc.Arbitrary<MappedFile> = fc
  .uniqueArray(
    fc.record({
      key: fc.constantFrom(...KEYS),
      of: fc.constantFrom("x", "x", "x", "y"),
      status: fc.constantFrom("pass", "warn", "fail", null),
      text: fc.constantFrom("one", "two", null),
    }),
    { selector: ({ key }) => key },
  )
  .map((rows) => fileOf(rows.map(({ key, of, status, text }) => [`${key}${of}`, key, status, text])));

/** An export, and the same in another order. */
function withOtherOrder(file: MappedFile): fc.Arbitrary<readonly [MappedFile, MappedFile]> {
  const { length } = file.rows;
  return fc.shuffledSubarray([...file.rows], { minLength: length }).map((rows) => [file, { ...file, rows }]);
}

/** A system on the other side: it puts rows in by their key, and never asks what was there before. */
type Table = Map<string, readonly (string | null)[]>;

function load(table: Table, rows: readonly Pick<MappedRow, "values">[]): void {
  for (const { values } of rows) table.set(values[0] ?? "", values);
}

/** What stands there and is not withdrawn. */
function standing(table: Table): unknown {
  return [...table.values()].filter((values) => values[1] !== "withdrawn").sort();
}

function wanted(file: MappedFile): unknown {
  return file.rows.map(({ values }) => values).sort();
}

describe("a system that loads differences", () => {
  it("holds after each what an export of all rows would have given, also when sent twice", () => {
    fc.assert(
      fc.property(fc.array(anyExport, { minLength: 1, maxLength: 5 }), (exports) => {
        const table: Table = new Map();
        let state: ExportedState | null = null;
        for (const file of exports) {
          const [target] = differences([file], state);
          load(table, target?.rows ?? []);
          expect(standing(table)).toEqual(wanted(file));
          const once = [...table];
          load(table, target?.rows ?? []);
          expect([...table]).toEqual(once);
          state = acceptedState([file], state);
          expect(differences([file], state)[0]?.rows).toEqual([]);
        }
      }),
      { numRuns: 500 },
    );
  });

  it("gets exactly the rows again that it refused, and holds everything once it takes them", () => {
    fc.assert(
      fc.property(anyExport, anyExport, fc.infiniteStream(fc.boolean()), (first, second, coins) => {
        const table: Table = new Map();
        load(table, first.rows);
        const before = acceptedState([first]);
        const sent = differences([second], before)[0]?.rows ?? [];
        const refused = sent.filter(() => coins.next().value === true).map(({ id }) => id);
        load(
          table,
          sent.filter(({ id }) => !refused.includes(id)),
        );
        const state = acceptedState([second], before, refused);
        const again = differences([second], state)[0]?.rows ?? [];
        expect(again.map(({ id }) => id)).toEqual(refused);
        for (const { because } of again) expect(because[0]).toBe("refused before");
        load(table, again);
        expect(standing(table)).toEqual(wanted(second));
      }),
      { numRuns: 500 },
    );
  });

  it("is sent the same whatever the order of the rows", () => {
    fc.assert(
      fc.property(anyExport.chain(withOtherOrder), anyExport, ([first, shuffled], second) => {
        expect(acceptedState([shuffled]).targets).toEqual(acceptedState([first]).targets);
        expect(differences([second], acceptedState([shuffled]))).toEqual(differences([second], acceptedState([first])));
      }),
    );
  });
});
