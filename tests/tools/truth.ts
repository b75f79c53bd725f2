import { readFileSync } from "node:fs";
import { z } from "zod";
import { projectPath } from "./shipped.js";

const NUMBER = z.number();
const TRUTH = z.object({
  entries: z.array(
    z.object({
      id: z.string(),
      quantity: z.string(),
      inputs: z.record(z.string(), z.union([NUMBER, z.string(), z.array(NUMBER)])),
      expected: z.unknown(),
      unit: z.string(),
      tolerance: z.union([z.object({ abs: NUMBER }), z.object({ rel: NUMBER })]),
      basis: z.string(),
      source: z.object({ title: z.string(), clause: z.string().nullable() }).loose(),
    }),
  ),
});

export type TruthEntry = z.infer<typeof TRUTH>["entries"][number];

/** Figures from outside the project, by id. */
export function truthOf(name: string): ReadonlyMap<string, TruthEntry> {
  const { entries } = TRUTH.parse(JSON.parse(readFileSync(projectPath(`tests/data/truth/${name}.json`), "utf8")));
  return new Map(entries.map((entry) => [entry.id, entry]));
}

/** Whether a figure of ours lies within the tolerance of the source. */
export function agrees(ours: number, expected: number, tolerance: TruthEntry["tolerance"]): boolean {
  const allowed = "abs" in tolerance ? tolerance.abs : tolerance.rel * Math.abs(expected);
  // The last digit of a double; a tolerance of 0 means exact to that.
  return Math.abs(ours - expected) <= allowed + Math.abs(expected) * 1e-12;
}
