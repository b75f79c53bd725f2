import { describe, expect, it } from "vitest";
import { resultOf, runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const SAMPLE = [
  projectPath("samples/survey.xlsx"),
  "--site-file",
  projectPath("samples/site.yaml"),
  "--as-of",
  "2026-11-25",
] as const;

/** What the remarks in the file say of each, in its order. */
const STANDING = [
  ["seat-diameter", "in-use", "fail", false],
  ["tightening-torque", "in-use", "undecided", false],
  ["speed-reference", "in-use", "warn", true],
  ["min-speed", "expired", "fail", false],
  ["seat-diameter", "worse-than-accepted", "fail", false],
  ["thread-depth", "limit-changed", "fail", false],
  ["seat-material", "nothing-to-accept", null, false],
  ["hole-depth", "point-not-found", null, false],
  ["hole-depth", "not-yet-in-force", "fail", false],
];

interface Document {
  readonly deviations: {
    readonly list: readonly { rule: string; status: string; found: string | null; endsSoon: boolean }[];
  };
  readonly points: readonly { readonly point: string; readonly accepted: boolean; readonly verdict: string }[];
  readonly summary: { readonly accepted: number; readonly fail: number; readonly warn: number };
}

describe("the sample of accepted deviations", () => {
  it("stands on its day as its remarks say, and accepts three points", async () => {
    const run = await runCommand("screen", ...SAMPLE, "--deviations", projectPath("samples/deviations.yaml"), "--json");
    const { deviations, points, summary } = resultOf(run) as unknown as Document;
    expect(deviations.list.map(({ rule, status, found, endsSoon }) => [rule, status, found, endsSoon])).toEqual(
      STANDING,
    );
    const accepted = points.filter((point) => point.accepted).map(({ point, verdict }) => `${point}: ${verdict}`);
    expect(accepted).toEqual([
      "P-1101, pump, non drive end, vertical: fail",
      "A-1203, motor, drive end, horizontal: warn",
      "P-2201, pump, non drive end, horizontal: warn",
    ]);
    expect(summary).toMatchObject({ accepted: 3, fail: 21, warn: 16 });
    expect(run.err).toContain("21 fail, 3 accepted;");
  });
});
