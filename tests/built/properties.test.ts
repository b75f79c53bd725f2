import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FactDefinition, type FactState, SURVEY_FACTS } from "../../src/facts/index.js";
import { known, surveyOf, unknown } from "../tools/make-record.js";
import { shippedRulebook } from "../tools/shipped.js";
import { type Checked, checkSurveys, done, type Row, turnedIn } from "./made.js";

const { rules } = await shippedRulebook();
/** Rules that judge another fact once a point is built, or speak at one stage only. */
const OF_THE_STAGE = new Set(
  rules.filter(({ judges, stages }) => stages.length < 2 || judges.proposed !== judges.installed).map(({ id }) => id),
);
/** Facts of the point that both sides may state. */
const STATED = SURVEY_FACTS.filter(
  ({ group, id }) =>
    group !== "as-built" &&
    !["point_id", "site", "surveyed_by", "surveyed_on", "photo", "notes", "sensor_model"].includes(id) &&
    !["polarity_checked", "unused_sockets_capped", "install_temperature"].includes(id),
);

function stateOf(fact: FactDefinition): fc.Arbitrary<FactState> {
  const { lowest = 0, highest = 1 } = fact.plausible ?? {};
  const value: fc.Arbitrary<FactState> =
    fact.kind === "quantity" || fact.kind === "count"
      ? fc.double({ min: lowest, max: highest, noNaN: true }).map((number) => known(Number(number.toPrecision(6))))
      : fact.kind === "yes-no"
        ? fc.boolean().map((yes) => known(yes))
        : fc.constantFrom(...(fact.choices ?? ["IP67", "M6", "2026-01-02"])).map((word) => known(word));
  const open = fc.constantFrom("missing", "doubtful", "unreadable", "conflicting").map((reason) => unknown(reason));
  return fc.oneof({ weight: 9, arbitrary: value }, { weight: 1, arbitrary: open });
}

const facts = fc
  .subarray([...STATED], { minLength: 3 })
  .chain((some) => fc.record(Object.fromEntries(some.map((fact) => [fact.id, stateOf(fact)]))));
const survey = fc
  .array(facts, { minLength: 1, maxLength: 6 })
  .map((rows): readonly Row[] => rows.map((row, i) => ({ ...row, point_id: known(`P${i}`) })));

function check(proposed: readonly Row[], built: readonly Row[], set = "full"): Promise<Checked> {
  return checkSurveys([surveyOf(proposed, "proposed.xlsx")], [surveyOf(built, "built.csv")], { set });
}

/** What a comparison says of each point, without the rows that it stands in. */
function saidOf({ points }: Checked): ReadonlyMap<string | null, unknown> {
  return new Map(
    points.map((point) => {
      const { verdictThen, verdictNow, recall, differences, carried, notCarried, status } = point;
      const facts = differences.map(({ fact }) => fact);
      return [
        point.id,
        { verdictThen, verdictNow, recall, facts, carried, notCarried, status, turned: turnedIn(point) },
      ];
    }),
  );
}

describe("a comparison", () => {
  it("finds nothing where the same was built as was proposed, but what only fitting brings about", async () => {
    await fc.assert(
      fc.asyncProperty(survey, async (rows) => {
        const { points } = await check(rows, rows);
        for (const point of points) {
          expect(point).toMatchObject({ status: "matched", differences: [], notCarried: expect.any(Array) });
          expect(point.turned.map(({ rule }) => rule).filter((rule) => !OF_THE_STAGE.has(rule))).toEqual([]);
          if (point.recall) expect(point.turned.some(({ rule }) => OF_THE_STAGE.has(rule))).toBe(true);
        }
      }),
      { numRuns: 25 },
    );
  });

  it("judges a point of which nothing else is said by the proposal's word alone", async () => {
    await fc.assert(
      fc.asyncProperty(survey, async (rows) => {
        const silent = rows.map((_, i) => done(`P${i}`));
        const restated = rows.map((row, i) => ({ ...row, ...done(`P${i}`) }));
        const [one, other] = [saidOf(await check(rows, silent)), saidOf(await check(rows, restated))];
        for (const [id, said] of one) {
          const { turned, verdictNow } = said as { turned: unknown; verdictNow: unknown };
          expect(other.get(id)).toMatchObject({ turned, verdictNow });
        }
      }),
      { numRuns: 25 },
    );
  });

  it("lists exactly the fact that was changed", async () => {
    await fc.assert(
      fc.asyncProperty(survey, fc.nat(), async (rows, pick) => {
        const [first = {}, ...others] = rows;
        const ids = Object.keys(first).filter((id) => id !== "point_id" && first[id]?.known === true);
        const id = ids[pick % Math.max(1, ids.length)];
        if (id === undefined) return;
        const { points } = await check(rows, [{ ...first, [id]: changed(id, first[id]) }, ...others]);
        expect(points.flatMap(({ point, differences }) => differences.map(({ fact }) => [point, fact]))).toEqual([
          ["P0", id],
        ]);
      }),
      { numRuns: 60 },
    );
  });

  it("says the same whatever the order of the rows", async () => {
    await fc.assert(
      fc.asyncProperty(survey, survey, fc.infiniteStream(fc.nat()), async (rows, others, numbers) => {
        const shuffled = <T>(list: readonly T[]): readonly T[] =>
          list
            .map((one) => ({ one, at: numbers.next().value as number }))
            .sort((a, b) => a.at - b.at)
            .map(({ one }) => one);
        const straight = await check(rows, others);
        const mixed = await check(shuffled(rows), shuffled(others));
        expect(saidOf(mixed)).toEqual(saidOf(straight));
        expect(mixed.summary).toEqual(straight.summary);
      }),
      { numRuns: 25 },
    );
  });
});

function changed(id: string, state: FactState | undefined): FactState {
  const value = state?.known ? state.value : null;
  if (typeof value === "boolean") return known(!value);
  if (typeof value === "object" && value !== null) return known(value.highest + 1);
  const choices = SURVEY_FACTS.find((fact) => fact.id === id)?.choices ?? [];
  return known(choices.find((choice) => choice !== value) ?? `${value} or other`);
}
