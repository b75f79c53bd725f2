import { describe, expect, it } from "vitest";
import { POINTS } from "../../samples/survey-full/all-points.mjs";
import { type FactState, findFact } from "../../src/facts/index.js";
import { readTestSurvey } from "../tools/shipped.js";

/** Cells that say something, but no plain value: what the reader is to make of them. */
const READ_AS: Readonly<Record<string, unknown>> = {
  tbc: "missing",
  "k.A.": "missing",
  "17 ±0.5": [16.5, 17.5],
  "25 ±2": [23, 27],
  "16,5": [16.5, 16.5],
  "ca. 38": [38, 38],
};
/** Sizes in inches stand there to a thousandth, temperatures in °F to a tenth. */
const ROUNDED = 0.03;

/** What was written, as the reader is to give it back. */
function meant(fact: string, value: (typeof POINTS)[number]["facts"][string]): unknown {
  if (value === undefined || value === null) return "missing";
  if (value instanceof Date) return value.toISOString().slice(0, 10);
  if (typeof value === "string" && value in READ_AS) return READ_AS[value];
  if (typeof value === "number") return [value, value];
  return findFact(fact)?.kind === "yes-no" ? value === "yes" : value;
}

function read(state: FactState | undefined): unknown {
  if (!state?.known) return state?.reason ?? "missing";
  return typeof state.value === "object" ? [state.value.lowest, state.value.highest] : state.value;
}

/** Whether both are the same, numbers to what the rounding in another unit leaves of them. */
function agree(one: unknown, other: unknown): boolean {
  if (!Array.isArray(one) || !Array.isArray(other)) return one === other;
  return one.every((end, i) => Math.abs(Number(end) - Number(other[i])) <= ROUNDED);
}

describe("samples/survey-full.xlsx", () => {
  it("holds the points of samples/survey-full, each fact read as it was meant in either language and unit", async () => {
    const { records, factsAsked } = await readTestSurvey("samples/survey-full.xlsx");
    expect(records.map(({ sheet }) => sheet)).toEqual(POINTS.map(({ sheet }) => sheet));
    // What no rule asks for has no column.
    const facts = new Set(POINTS.flatMap((point) => Object.keys(point.facts)).filter((fact) => factsAsked.has(fact)));
    expect([...factsAsked].filter((fact) => !facts.has(fact) && fact !== "photo")).toEqual([]);
    let compared = 0;
    const differing = POINTS.flatMap((point, i) =>
      [...facts].flatMap((fact) => {
        compared += 1;
        const written = meant(fact, point.facts[fact]);
        const found = read(records[i]?.facts.get(fact));
        return agree(written, found) ? [] : [`${point.id} ${fact}: ${String(written)}, read as ${String(found)}`];
      }),
    );
    expect(differing).toEqual([]);
    expect(compared).toBeGreaterThan(20_000);
  });
});
