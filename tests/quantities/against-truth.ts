import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { type Thread, threadDesignated } from "../../src/quantities/index.js";
import { projectPath } from "../tools/shipped.js";
import { agrees, type TruthEntry, truthOf } from "../tools/truth.js";

/** What a source states, or what our functions make of the same inputs: a number, or numbers by name or in order. */
export type Figures = number | readonly Figures[] | { readonly [name: string]: Figures };

const FIGURES: z.ZodType<Figures> = z.lazy(() =>
  z.union([z.number(), z.array(FIGURES), z.record(z.string(), FIGURES)]),
);
const IDS = z.object({ entries: z.array(z.object({ id: z.string() })) });

/** The inputs of an entry, asked for by name. */
export class Inputs {
  constructor(private readonly entry: TruthEntry) {}

  number(name: string): number {
    return z.number({ error: `${this.entry.id} has no number ${name}` }).parse(this.entry.inputs[name]);
  }

  text(name: string): string {
    return z.string({ error: `${this.entry.id} has no text ${name}` }).parse(this.entry.inputs[name]);
  }

  has(name: string): boolean {
    return this.entry.inputs[name] !== undefined;
  }

  /** The thread by its designation, or by major diameter and pitch in mm. */
  thread(): Thread {
    return this.has("designation")
      ? threadOf(this.text("designation"))
      : threadOf(`M${this.number("major_diameter_mm")}x${this.number("pitch_mm")}`);
  }
}

/** The thread of a designation that must be one. */
export function threadOf(designation: string): Thread {
  const thread = threadDesignated(designation);
  if (!thread) throw new Error(`"${designation}" is no thread`);
  return thread;
}

/** How our functions answer the entries whose id a pattern matches. */
export type Answer = readonly [ids: RegExp, answer: (inputs: Inputs, expected: Figures) => Figures];

/**
 * Holds our functions against every entry of a file of outside figures: each must be answered by exactly one of the
 * answers, and every figure must lie within the tolerance of its source. Where a folder ../shared lies beside the
 * project, its file of the same name must have no entry that this one lacks.
 */
export function holdAgainst(file: string, answers: readonly Answer[]): void {
  const truth = truthOf(file);
  const rows = [...truth.values()];

  describe(`figures of others: ${file}`, () => {
    it.each(rows.map((entry) => [entry.id, entry] as const))("%s", (id, entry) => {
      const matching = answers.filter(([ids]) => ids.test(id));
      expect(matching.length, `answers for ${id}`).toBe(1);
      const expected = FIGURES.parse(entry.expected);
      const ours = matching[0]?.[1](new Inputs(entry), expected) ?? Number.NaN;
      const differences = compare(ours, expected, entry.tolerance, id);
      expect(differences, `${entry.source.title} (${entry.basis}), ${entry.unit}`).toEqual([]);
    });

    it("uses every answer", () => {
      expect(answers.map(([ids]) => ids).filter((ids) => !rows.some(({ id }) => ids.test(id)))).toEqual([]);
    });

    const shared = projectPath(`../shared/truth/${file}.json`);
    if (!existsSync(shared)) return;
    it("has every entry of the larger collection", () => {
      const { entries } = IDS.parse(JSON.parse(readFileSync(shared, "utf8")));
      expect(entries.map(({ id }) => id).filter((id) => !truth.has(id))).toEqual([]);
    });
  });
}

function compare(ours: Figures, expected: Figures, tolerance: TruthEntry["tolerance"], at: string): readonly string[] {
  if (typeof expected === "number") {
    return typeof ours === "number" && agrees(ours, expected, tolerance) ? [] : [`${at}: ${ours} against ${expected}`];
  }
  const named = (figures: Figures): ReadonlyMap<string, Figures> =>
    new Map(typeof figures === "number" ? [] : Object.entries(figures));
  const mine = named(ours);
  return [...named(expected)].flatMap(([name, figure]) =>
    compare(mine.get(name) ?? Number.NaN, figure, tolerance, `${at} ${name}`),
  );
}
