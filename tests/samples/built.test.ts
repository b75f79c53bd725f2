import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checkBuiltFiles } from "../../src/index.js";
import { projectPath } from "../tools/shipped.js";

/** What a row of the built survey must give. */
interface ExpectedRow {
  readonly point: string | null;
  readonly status: string;
  readonly before: string | null;
  readonly now: string | null;
  readonly recall?: boolean;
  readonly onlyUndecided?: boolean;
  readonly needsNewVerdict?: boolean;
  readonly worse?: readonly string[];
  readonly differences?: readonly string[];
  readonly notCarried?: readonly string[];
}

const EXPECTED = JSON.parse(readFileSync(projectPath("tests/samples/built.expect.json"), "utf8")) as {
  readonly rows: Readonly<Record<string, ExpectedRow>>;
  readonly summary: Readonly<Record<string, number>>;
};

describe("the sample of what was built", () => {
  it("gives every row the verdicts, differences and recalls that were worked out by hand", async () => {
    const run = await checkBuiltFiles([projectPath("samples/survey.xlsx")], {
      built: [projectPath("samples/built.csv")],
      siteFile: projectPath("samples/site.yaml"),
      asOf: "2026-11-25",
      set: "core",
    });
    if (!run.ok) throw new Error(JSON.stringify(run));
    const points = [...run.check.points()];
    const found = points.flatMap((point) => {
      const [row] = point.built;
      if (row === undefined) return [];
      const worse = point.turned.flatMap((one) => (one.worse ? [one.rule] : []));
      const said: Required<ExpectedRow> = {
        point: point.point,
        status: point.status,
        before: point.verdictThen,
        now: point.verdictNow,
        recall: point.recall,
        onlyUndecided: point.onlyUndecided,
        needsNewVerdict: point.needsNewVerdict,
        // Rows that are matched with none are short of everything, which says nothing about the comparison.
        worse: point.status === "matched" ? worse : [],
        differences: point.differences.map(({ fact }) => fact),
        notCarried: point.notCarried,
      };
      return [[String(row.row), said] as const];
    });
    const empty = {
      recall: false,
      onlyUndecided: false,
      needsNewVerdict: false,
      worse: [],
      differences: [],
      notCarried: [],
    };
    const expected = Object.entries(EXPECTED.rows).map(([row, said]) => [row, { ...empty, ...said }]);
    expect(Object.fromEntries(found)).toEqual(Object.fromEntries(expected));
    expect(run.check.summary()).toMatchObject(EXPECTED.summary);
    const turned = points.find(({ built }) => built[0]?.row === 9);
    expect(turned?.likely.map(({ at }) => at.row)).toContain(36);
    expect(points.find(({ proposed }) => proposed[0]?.row === 36)?.likely.map(({ at }) => at.row)).toContain(9);
  });
});
