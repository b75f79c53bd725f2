import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type FactState, factOf, isNumeric } from "../../src/facts/index.js";
import type { Survey } from "../../src/records/index.js";
import { ChangedRecord, supposed } from "../../src/screening/changed-record.js";
import type { MethodTried, PointResult } from "../../src/screening/index.js";
import { GOOD_POINT, known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { readTestSurvey, shippedRulebook } from "../tools/shipped.js";

const rulebook = await shippedRulebook();
const METHODS = factOf("mounting_method").choices ?? [];

/** What a method was said to give, and what a screening gives, in one form. */
function said(tried: MethodTried) {
  const { verdict, fails, warns, undecided, missing } = tried;
  return {
    verdict,
    fails: [...fails].sort(),
    warns: [...warns].sort(),
    open: [...undecided].sort(),
    missing: [...missing].sort(),
  };
}

function found({ verdict, findings }: PointResult): ReturnType<typeof said> {
  const rules = (outcome: string) => findings.filter((f) => f.outcome === outcome).map(({ rule }) => rule);
  const missing = findings.flatMap((finding) => finding.missing.map(({ fact }) => fact));
  return {
    verdict,
    fails: rules("fail").sort(),
    warns: rules("warn").sort(),
    open: rules("undecided").sort(),
    missing: [...new Set(missing)].sort(),
  };
}

function replaced(survey: Survey, method: string): Survey {
  const changes = new Map([["mounting_method", supposed(method)]]);
  return {
    ...survey,
    records: survey.records.map((record) => ({ ...record, facts: new ChangedRecord(record.facts, changes) })),
  };
}

describe("each method tried", () => {
  it.each(["samples/survey.xlsx", "samples/survey.csv", "tests/data/surveys/dunkelforst.xlsx"])(
    "gives what screening a copy of %s with that method gives",
    async (path) => {
      const survey = await readTestSurvey(path);
      const { points } = screenRows(rulebook, [survey], { allFindings: true });
      let compared = 0;
      for (const method of METHODS) {
        const copy = screenRows(rulebook, [replaced(survey, method)]).points;
        for (const [i, point] of points.entries()) {
          const tried = point.methods?.find((one) => one.method === method);
          const same = copy[i];
          if (!tried || !same) continue;
          expect(said(tried), `${path} row ${point.row}, ${method}`).toEqual(found(same));
          compared += 1;
        }
      }
      expect(compared).toBeGreaterThan(2 * points.length);
    },
  );

  it("gives what screening one more row with that method gives, on generated rows of the full set", () => {
    const fields = [
      ...Object.keys(GOOD_POINT),
      ...["behind_wall", "cure_time", "hot_work_allowed", "certified_enclosure", "hazardous_area", "wall_thickness"],
      ...["thread", "surface_radius", "under_warranty", "maker_consent", "highest_frequency", "welding_agreed"],
    ];
    const columns = fc.uniqueArray(fc.constantFrom(...fields), { minLength: 12 });
    const survey = columns.chain((ids) =>
      fc.array(
        fc.tuple(...ids.map(stateFor)).map((s) => rowOf(ids, s)),
        { minLength: 1, maxLength: 4 },
      ),
    );
    fc.assert(
      fc.property(survey, fc.constantFrom(...METHODS), (rows, method) => {
        const { points } = screenRows(rulebook, [surveyOf(rows)], { set: "full", allFindings: true });
        const [row] = rows;
        const tried = points[0]?.methods?.find((one) => one.method === method);
        if (!row || !tried || tried.proposed) return;
        const more = { ...row, mounting_method: known(method) };
        const copy = screenRows(rulebook, [surveyOf([...rows, more])], { set: "full" });
        const last = copy.points.at(-1);
        if (!last) throw new Error("no point");
        expect(said(tried)).toEqual(found(last));
        const notAsked = copy.screening.head.surveys[0]?.notAsked.map(({ rule }) => rule);
        expect(notAsked).toEqual(expect.arrayContaining([...tried.notAsked]));
      }),
      { numRuns: 150 },
    );
  });
});

function stateFor(id: string): fc.Arbitrary<FactState> {
  const definition = factOf(id);
  const open = fc.constantFrom("missing", "doubtful", "unreadable").map((reason) => unknown(reason));
  const { choices, kind, plausible } = definition;
  if (choices)
    return fc.oneof(
      open,
      fc.constantFrom(...choices).map((choice) => known(choice)),
    );
  if (kind === "yes-no")
    return fc.oneof(
      open,
      fc.boolean().map((value) => known(value)),
    );
  if (!isNumeric(definition))
    return fc.oneof(
      open,
      fc.constantFrom("M6", "M8", "odd").map((word) => known(word)),
    );
  const { lowest = 0, highest = 100 } = plausible ?? {};
  const good = GOOD_POINT[id];
  const values = fc.double({ min: lowest, max: highest, noNaN: true }).map((value) => known(value));
  return fc.oneof(open, values, fc.constant(good ?? known(lowest)));
}

/** The method has a column in every survey: without one, no row could have another method. */
function rowOf(ids: readonly string[], states: readonly FactState[]): Readonly<Record<string, FactState>> {
  const row = Object.fromEntries(ids.map((id, i) => [id, states[i] ?? unknown("missing")]));
  return { mounting_method: unknown("missing"), ...row };
}
