import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { single } from "../../src/base/index.js";
import type { FactState } from "../../src/facts/index.js";
import type { Band, FileFinding } from "../../src/rulebook/index.js";
import { readyBand } from "../../src/rulebook/judging/band-check.js";
import { checkCovered } from "../../src/rulebook/reading/band-cover.js";
import { Report } from "../../src/rulebook/text/source.js";

const at = { file: "rule.yaml", line: 1, column: 1 };
const bound = fc.oneof(
  fc.integer({ min: 1, max: 6 }).map((value) => ({ kind: "number" as const, value })),
  fc.record({
    kind: fc.constant("fact" as const),
    fact: fc.constant("wall_thickness"),
    times: fc.constantFrom(1, 2, 0.5),
    plus: fc.constantFrom(0, 1),
  }),
);
const band: fc.Arbitrary<Band> = fc.oneof(
  fc.record({ is: fc.constantFrom("below", "above", "atOrBelow", "atOrAbove"), bound, at: fc.constant(at) }),
  fc.tuple(fc.integer({ min: 1, max: 3 }), fc.integer({ min: 3, max: 6 })).map(([low, high]) => ({
    is: "outside" as const,
    bounds: [
      { kind: "number" as const, value: low },
      { kind: "number" as const, value: high },
    ] as const,
    at,
  })),
);

function codes(fail: readonly Band[], warn: readonly Band[]): readonly string[] {
  const findings: FileFinding[] = [];
  const report = new Report({ path: "rule.yaml", data: {}, spots: new Map() }, findings);
  checkCovered(fail, warn, { fail: "/fail", warn: "/warn" }, report);
  return findings.map(({ code }) => code);
}

function breaks(one: Band, depth: number, wall: number): boolean | null {
  const facts = new Map<string, FactState>([
    ["thread_depth", { known: true, value: single(depth), origin: { kind: "none" } }],
    ["wall_thickness", { known: true, value: single(wall), origin: { kind: "none" } }],
  ]);
  const look = (id: string): FactState =>
    facts.get(id) ?? { known: false, reason: "missing", origin: { kind: "none" } };
  return readyBand(one, "thread_depth", new Map()).check.truth(look);
}

describe("limits that cover each other", () => {
  const grid = Array.from({ length: 29 }, (_, i) => i / 4);

  it("are reported only where no value breaks the one without the other", () => {
    fc.assert(
      fc.property(band, band, (fail, warn) => {
        if (!codes([fail], [warn]).includes("warning-never-heard")) return;
        for (const depth of grid) {
          for (const wall of grid) if (breaks(warn, depth, wall)) expect(breaks(fail, depth, wall)).toBe(true);
        }
      }),
      { numRuns: 300 },
    );
  });

  it("are reported wherever both are numbers and no value tells them apart", () => {
    const plain = band.filter((one) => !("bound" in one && one.bound.kind === "fact"));
    fc.assert(
      fc.property(plain, plain, (fail, warn) => {
        const covered = grid.every((depth) => !breaks(warn, depth, 1) || breaks(fail, depth, 1));
        expect(codes([fail], [warn]).includes("warning-never-heard")).toBe(covered);
      }),
      { numRuns: 300 },
    );
  });
});
