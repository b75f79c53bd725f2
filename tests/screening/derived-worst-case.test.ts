import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { round12 } from "../../src/base/index.js";
import {
  type FactState,
  findFact,
  MODEL_FACTS,
  SURVEY_FACTS,
  type UnknownReason,
  withinPossible,
} from "../../src/facts/index.js";
import { tablesOn } from "../../src/rulebook/index.js";
import { DERIVED } from "../../src/screening/derive.js";
import { PointFacts } from "../../src/screening/point-facts.js";
import { shippedRulebook } from "../tools/shipped.js";

const TABLES = tablesOn(await shippedRulebook(), "2026-11-26");

/** The facts of survey and model under a derived one. */
function rootsOf(id: string): readonly string[] {
  const needs = findFact(id)?.needs;
  return needs ? [...new Set(needs.flatMap(rootsOf))] : [id];
}

const DESIGNATIONS: Readonly<Record<string, readonly string[]>> = {
  thread: ["M4", "M6", "M8x1", "1/4-28 UNF"],
  sensor_thread: ["M6", "M8", "1/4-28 UNF"],
  next_outage: ["2026-05-01", "2026-01-31"],
  surveyed_on: ["2026-02-28", "2026-05-01"],
  ip_rating: ["IP54", "IP67", "IP66/IP69K"],
};

const CONTRADICTION: readonly UnknownReason[] = ["conflicting", "unreadable"];

/** A fact as a survey may hold it, and one that it may turn out to be. */
interface Both {
  readonly wide: FactState;
  readonly inside: FactState;
}

const none = { kind: "none" } as const;
const open: FactState = { known: false, reason: "missing", origin: none };

function numberOf(id: string): fc.Arbitrary<Both> {
  const definition = [...SURVEY_FACTS, ...MODEL_FACTS].find((one) => one.id === id);
  if (!definition?.plausible) throw new Error(`${id} has no range`);
  const { lowest, highest } = definition.plausible;
  const share = fc.integer({ min: 0, max: 1000 }).map((parts) => parts / 1000);
  // Of three readings two lie near the low end, where most of what is measured lies.
  return fc.tuple(share, share, share, fc.boolean()).map(([at, width, within, low]) => {
    const span = (highest - lowest) * (low ? 0.02 : 1);
    const reading = definition.kind === "count" ? Math.round(lowest + at * span) : round12(lowest + at * span);
    const half = width < 0.3 ? 0 : width * (Math.abs(reading) * 0.2 + span * 0.001);
    const value = withinPossible({ lowest: round12(reading - half), highest: round12(reading + half) }, definition);
    // What it turns out to be can at least be meant, near enough.
    const least = Math.max(value.lowest, lowest / 100);
    let one = Math.min(value.highest, round12(least + within * (value.highest - least)));
    if (definition.kind === "count" && half > 0) {
      one = Math.round(one);
      if (one < value.lowest || one > value.highest) one = reading;
    }
    return {
      wide: { known: true, value, accuracy: half, origin: none } as const,
      inside: { known: true, value: { lowest: one, highest: one }, origin: none } as const,
    };
  });
}

function factOf(id: string): fc.Arbitrary<Both> {
  const definition = findFact(id);
  if (definition?.kind === "quantity" || definition?.kind === "count") return numberOf(id);
  const words = definition?.choices ?? DESIGNATIONS[id] ?? ["a", "b"];
  return fc.constantFrom(...words).map((value) => {
    const state: FactState = { known: true, value, origin: none };
    return { wide: state, inside: state };
  });
}

function pointOf(record: Readonly<Record<string, FactState>>): PointFacts {
  const survey = Object.entries(record).filter(([id]) => !id.startsWith("model."));
  const model = new Map(Object.entries(record).filter(([id]) => id.startsWith("model.")));
  const sensor = {
    id: "made",
    title: "made",
    alsoWritten: [],
    forExamplesOnly: false,
    facts: new Map(),
    citations: new Map(),
    at: { file: "", line: 1, column: 1 },
  };
  return new PointFacts(new Map(survey), { ok: true, model: sensor, facts: model }, TABLES);
}

describe("a derived fact", () => {
  it.each([...DERIVED.keys()])("%s holds for whatever the numbers under it turn out to be", (id) => {
    const roots = rootsOf(id);
    const record = fc.record(
      Object.fromEntries(
        roots.map((root) => [
          root,
          fc.oneof(
            { weight: 12, arbitrary: factOf(root) },
            { weight: 1, arbitrary: fc.constant({ wide: open, inside: open }) },
          ),
        ]),
      ),
    );
    let known = 0;
    fc.assert(
      fc.property(record, (both) => {
        const wide = pointOf(
          Object.fromEntries(Object.entries(both).map(([key, { wide: state }]) => [key, state])),
        ).get(id);
        const one = pointOf(Object.fromEntries(Object.entries(both).map(([key, { inside }]) => [key, inside]))).get(id);
        if (!wide?.known) return;
        known += 1;
        if (!one?.known) {
          // Some values inside contradict each other: balls that do not fit on their circle, an odd number of poles.
          if (one && CONTRADICTION.includes(one.reason)) return;
          throw new Error("known of the interval, and not of a value inside");
        }
        if (typeof wide.value !== "object" || typeof one.value !== "object") {
          expect(one.value).toBe(wide.value);
          return;
        }
        expect(one.value.lowest).toBeGreaterThanOrEqual(wide.value.lowest);
        expect(one.value.highest).toBeLessThanOrEqual(wide.value.highest);
      }),
      { numRuns: 400 },
    );
    expect(known).toBeGreaterThan(20);
  });
});
