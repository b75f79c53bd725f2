import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FactState, factOf, isNumeric, TABLE_FACTS } from "../../src/facts/index.js";
import { loadRulebook, type Rulebook, tablesOn } from "../../src/rulebook/index.js";
import { stateOf } from "./made-rule.js";
import { shippedRulebook } from "./shipped.js";
import { smallFiles } from "./small-book.js";

function load(changed: Readonly<Record<string, string | null>> = {}): Rulebook {
  const loading = loadRulebook(smallFiles(changed));
  if (!loading.ok) throw new Error(JSON.stringify(loading.findings));
  return loading.rulebook;
}

type Given = Parameters<typeof stateOf>[0];

function lookUp(id: string, given: Readonly<Record<string, Given>>, day = "2026-06-01"): FactState | undefined {
  const facts = new Map(Object.entries(given).map(([key, value]) => [key, stateOf(value)] as const));
  return tablesOn(load(), day).get(id, facts);
}

describe("a fact of a table", () => {
  it("is the value of the row that its keys name, with the line of that row", () => {
    const found = lookUp("table.friction_min", { bolt_steel: "carbon-steel", thread_state: "locked" });
    expect(found).toMatchObject({
      known: true,
      value: { lowest: 0.15, highest: 0.15 },
      origin: { kind: "derived", from: ["bolt_steel", "thread_state"], at: { file: "tables/threads.yaml", line: 14 } },
    });
  });

  it("spans all rows that are still possible, and names the open key first", () => {
    const found = lookUp("table.friction_max", { bolt_steel: "carbon-steel" });
    expect(found).toMatchObject({ value: { lowest: 0.16, highest: 0.25 } });
    expect(found?.origin).toEqual({ kind: "derived", from: ["thread_state", "bolt_steel"] });
  });

  it("is unknown for the reason of the key where one of the possible rows has no value", () => {
    for (const reason of ["missing", "doubtful", "unreadable", "conflicting"] as const) {
      const found = lookUp("table.friction_min", {
        bolt_steel: "austenitic-stainless",
        thread_state: { unknown: reason },
      });
      expect(found).toMatchObject({ known: false, reason });
    }
  });

  it("is missing, with the line of its row, where nobody has a value", () => {
    expect(lookUp("table.friction_min", { bolt_steel: "austenitic-stainless", thread_state: "locked" })).toMatchObject({
      known: false,
      reason: "missing",
      origin: { at: { line: 18 } },
    });
  });

  it("is the same everywhere where it is looked up by nothing, and follows the day", () => {
    const on = (day: string) => lookUp("table.run_out_min", {}, day);
    expect(on("2026-06-30")).toMatchObject({ value: { lowest: 1, highest: 1 }, origin: { from: [], at: { line: 6 } } });
    expect(on("2026-07-01")).toMatchObject({ value: { lowest: 2, highest: 2 }, origin: { at: { line: 7 } } });
    expect(on("2025-12-31")).toBeUndefined();
  });

  it("is not there where no table gives it", () => {
    expect(lookUp("table.wall_left_min", {})).toBeUndefined();
    expect([...tablesOn(load(), "2026-06-01").facts].sort()).toEqual([
      "table.friction_max",
      "table.friction_min",
      "table.run_out_min",
      "table.run_out_usual",
    ]);
  });

  it("takes over what was taken for granted of a key, and keeps it from other points", () => {
    const tables = tablesOn(load(), "2026-06-01");
    const dry = stateOf("dry");
    const steel = ["bolt_steel", stateOf("carbon-steel")] as const;
    const assumed: FactState = { ...dry, ...(dry.known ? { assumed: "taken for dry" } : {}) };
    const get = (state: FactState) => tables.get("table.friction_min", new Map([steel, ["thread_state", state]]));
    expect(get(assumed)).toMatchObject({ assumed: "taken for dry", value: { lowest: 0.14 } });
    expect(get(dry)).not.toHaveProperty("assumed");
  });
});

describe("the tables of a rulebook", () => {
  it("give each fact once", () => {
    const text = `id: more
title: "more"
by: []
gives: [table.wall_left_min, table.run_out_min]
entries:
  - { from: 2026-01-01, until: null, cites: [x], rows: [{ table.wall_left_min: 3 mm, table.run_out_min: 2 }] }
citations: { x: { basis: from-memory, says: "made up for a test" } }
`;
    const loading = loadRulebook(smallFiles({ "tables/more.yaml": text }));
    expect(loading.ok ? [] : loading.findings).toEqual([
      {
        file: "tables/more.yaml",
        line: 4,
        column: 30,
        code: "given-twice",
        text: '"table.run_out_min" is given by the table "gaps" already (tables/gaps.yaml); keep it in one of them',
      },
    ]);
  });

  it("may be left out as long as no rule needs them", () => {
    expect(load({ "tables/threads.yaml": null, "tables/gaps.yaml": null }).tables.size).toBe(0);
    const files = smallFiles({ "tables/threads.yaml": "id: threads\n" });
    const loading = loadRulebook(files);
    expect(loading.ok ? [] : loading.findings.map(({ file, code }) => `${file} ${code}`)).toEqual([
      "tables/threads.yaml missing-key",
    ]);
  });

  it("are part of the digest", () => {
    expect(load({ "tables/gaps.yaml": null }).digest).not.toBe(load().digest);
  });
});

const book = shippedRulebook();
const tables = tablesOn(book, "2026-11-26");

describe("the shipped tables", () => {
  it("give every fact of the catalogue that is looked up", () => {
    expect([...tables.facts].sort()).toEqual(TABLE_FACTS.map(({ id }) => id).sort());
    for (const table of book.tables.values())
      expect(table.entries[0]).toMatchObject({ from: "2026-01-01", until: null, reviewBy: "2028-01-01" });
  });

  it("are no milder for an adhesive that nobody names than for any other", () => {
    const of = (id: string, kind: string): number | null => {
      const state = tables.get(id, new Map([["bonded_with", stateOf(kind)]]));
      return state?.known && typeof state.value === "object" ? state.value.lowest : null;
    };
    for (const kind of factOf("bonded_with").choices ?? []) {
      expect(of("table.bond_temperature_max", "not-named")).toBeLessThanOrEqual(
        of("table.bond_temperature_max", kind) ?? Number.NaN,
      );
      expect(of("table.bond_temperature_min", "not-named")).toBeGreaterThanOrEqual(
        of("table.bond_temperature_min", kind) ?? Number.NaN,
      );
    }
    expect(of("table.bond_gap_max", "not-named")).toBeNull();
  });

  it.each(TABLE_FACTS.map(({ id, needs = [] }) => [id, needs] as const))(
    "hold for %s, with keys left open, every value that settled keys give",
    (id, needs) => {
      const choices = needs.map((need) => fc.constantFrom(...(factOf(need).choices ?? [])));
      const opened = needs.map(() => fc.boolean());
      fc.assert(
        fc.property(fc.tuple(...choices), fc.tuple(...opened), (words, open) => {
          const settled = new Map(needs.map((need, i) => [need, stateOf(words[i] ?? "")] as const));
          const left = new Map([...settled].filter((_, i) => !open[i]));
          const [inner, outer] = [tables.get(id, settled), tables.get(id, left)];
          if (!outer?.known) return;
          expect(inner?.known).toBe(true);
          if (!inner?.known || !isNumeric(factOf(id)) || typeof inner.value !== "object") return;
          if (typeof outer.value !== "object") throw new Error("a number is kept as an interval");
          expect(outer.value.lowest).toBeLessThanOrEqual(inner.value.lowest);
          expect(outer.value.highest).toBeGreaterThanOrEqual(inner.value.highest);
        }),
        { numRuns: 60 },
      );
    },
  );
});
