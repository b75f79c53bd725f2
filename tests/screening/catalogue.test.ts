import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { CATALOGUE, type FactDefinition, type FactState, type Facts, factOf } from "../../src/facts/index.js";
import { DERIVED } from "../../src/screening/derive.js";
import { anyState, completionOf } from "../tools/any-fact.js";
import { derive, pointOf } from "../tools/derived.js";

const derived = CATALOGUE.filter(({ source }) => source === "derived");
const NAMED = derived.map((definition) => [definition.id, definition] as const);

/** Facts that note which of them were asked for. */
class Noting implements Facts {
  readonly asked = new Set<string>();
  readonly #states: ReadonlyMap<string, FactState>;

  constructor(states: ReadonlyMap<string, FactState>) {
    this.#states = states;
  }

  get(id: string): FactState | undefined {
    this.asked.add(id);
    return this.#states.get(id);
  }

  has(id: string): boolean {
    return this.get(id) !== undefined;
  }

  *[Symbol.iterator](): Iterator<readonly [string, FactState]> {
    yield* this.#states;
  }
}

/** The facts of record and model under a derived one. */
function rootsOf(id: string): readonly string[] {
  const { needs } = factOf(id);
  return needs ? [...new Set(needs.flatMap(rootsOf))] : [id];
}

/** A state for each of these facts, mostly known; by the seed the same again. */
function anyFacts(ids: readonly string[]): fc.Arbitrary<ReadonlyMap<string, FactState>> {
  return fc
    .tuple(...ids.map((id) => anyState(factOf(id))))
    .map((states) => new Map(ids.map((id, i) => [id, states[i]])) as ReadonlyMap<string, FactState>);
}

describe("the derived facts of the catalogue", () => {
  it("are those that are computed, and no other", () => {
    expect(derived.map(({ id }) => id).sort()).toEqual([...DERIVED.keys()].sort());
  });

  it.each(NAMED)("%s says how it is computed, by which source, from facts that there are", (_id, definition) => {
    const { formula = "", formulaSource = "", needs = [] } = definition;
    for (const text of [formula, formulaSource]) {
      expect(text.trim().length).toBeGreaterThan(5);
      expect(text).not.toMatch(/\n|\.$/);
    }
    expect(needs.length).toBeGreaterThan(0);
    expect(needs.map((id) => factOf(id).id)).toEqual(needs);
  });

  it.each(NAMED)("%s reads just the facts that it says it needs", (id, { needs = [] }) => {
    const asked = new Set<string>();
    const read = (states: ReadonlyMap<string, FactState>): void => {
      const facts = new Noting(states);
      DERIVED.get(id)?.(facts);
      for (const one of facts.asked) asked.add(one);
    };
    fc.assert(fc.property(anyFacts(needs), read), { numRuns: 200 });
    expect([...asked].sort()).toEqual([...needs].sort());
  });
});

/**
 * What a fact says by not being there: a surface without a radius is flat, a drill that nobody names is the usual one. What
 * somebody wrote and nobody can read says nothing.
 */
const ABSENCE_SAYS: ReadonlySet<string> = new Set([
  "drill_diameter",
  "adhesive",
  "adhesive_gap_max",
  "bolt_reach",
  "surface_radius",
  "mounted_resonance",
  "sensor_current",
  "starting_current",
  "conductor_temperature",
]);

/** The same for one quantity alone: a sheet that names no temperature speaks of a room, and yet may speak of a colder one. */
const ABSENCE_SAYS_IN: ReadonlyMap<string, readonly string[]> = new Map([
  ["waiting_time_from", ["adhesive_set_temperature"]],
]);

/** Speeds bound each other by their order and the word of the drive, whatever is the matter with one of them. */
const SPEEDS: ReadonlySet<string> = new Set(["lowest_speed", "highest_speed", "nominal_speed", "variable_speed"]);

function isToStay(root: string, state: FactState | undefined, absenceSays: ReadonlySet<string>): boolean {
  if (!state || state.known) return false;
  return SPEEDS.has(root) || (state.reason === "missing" && absenceSays.has(root));
}

/** The word of the drive settles what two uncertain speeds leave open, so that it is no bound of what they may be. */
const SETTLED_BY_A_WORD: ReadonlySet<string> = new Set(["speed_varies"]);

function isWithin(inner: FactState, outer: FactState): boolean {
  if (!outer.known || !inner.known) return true;
  if (typeof outer.value !== "object" || typeof inner.value !== "object") return inner.value === outer.value;
  const slack = 1e-9 * Math.max(1, ...[outer.value.lowest, outer.value.highest].map(Math.abs).filter(Number.isFinite));
  return inner.value.lowest >= outer.value.lowest - slack && inner.value.highest <= outer.value.highest + slack;
}

describe("what is derived from little", () => {
  it.each(NAMED.filter(([id]) => !SETTLED_BY_A_WORD.has(id)))(
    "%s holds what comes out whatever the rest turns out to be",
    (id) => {
      const roots = rootsOf(id);
      const absenceSays = new Set([...ABSENCE_SAYS, ...(ABSENCE_SAYS_IN.get(id) ?? [])]);
      const completed = fc.tuple(...roots.map((root) => completionOf(factOf(root))));
      fc.assert(
        fc.property(anyFacts(roots), completed, (states, complete) => {
          const completion = Object.fromEntries(
            roots.map((root, i) => {
              const state = states.get(root);
              if (isToStay(root, state, absenceSays)) return [root, state];
              return [root, complete[i]?.(state)];
            }),
          ) as Readonly<Record<string, FactState>>;
          const outer = derive(id, Object.fromEntries(states));
          const inner = derive(id, completion);
          expect(
            isWithin(inner, outer),
            JSON.stringify({ outer, inner, given: Object.fromEntries(states), completion }),
          ).toBe(true);
        }),
        { numRuns: 300 },
      );
    },
  );

  it.each(NAMED)("%s has its ends in order, and a reason where it is not known", (id, definition: FactDefinition) => {
    const roots = rootsOf(id);
    fc.assert(
      fc.property(anyFacts(roots), (states) => {
        const state = pointOf(Object.fromEntries(states)).get(id);
        expect(state?.origin.kind).toBe("derived");
        if (!state?.known) return;
        if (typeof state.value === "object") expect(state.value.lowest).toBeLessThanOrEqual(state.value.highest);
        else if (definition.choices) expect(definition.choices).toContain(state.value);
        else expect(typeof state.value).toBe("boolean");
      }),
      { numRuns: 200 },
    );
  });
});
