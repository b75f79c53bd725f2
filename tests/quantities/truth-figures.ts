import { existsSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { projectPath } from "../tools/shipped.js";
import { agrees, type TruthEntry, truthOf } from "../tools/truth.js";

/** An entry with its inputs by name; asking for one that is not there is a mistake of the test. */
export interface Given {
  readonly number: (name: string) => number;
  readonly text: (name: string) => string;
  readonly numbers: (name: string) => readonly number[];
  readonly entry: TruthEntry;
}

/** What we say to an entry: a number, a word, a list or an object of the same shape as the expected. */
export type Answer = (given: Given) => unknown;

const COLLECTION = z.object({ entries: z.array(z.object({ id: z.string() })) });

/**
 * Tests every figure of a topic, and that none is passed over: each entry of the file, and of the larger collection where
 * a folder ../shared lies beside the project, is answered or left out with the reason.
 */
export function compareWithTruth(
  topic: string,
  answers: Readonly<Record<string, Answer>>,
  leftOut: Readonly<Record<string, string>> = {},
): void {
  const truth = truthOf(topic);
  describe(`published figures: ${topic}`, () => {
    it.each(Object.entries(answers))("%s", (id, answer) => {
      const entry = truth.get(id);
      if (!entry) throw new Error(`no entry ${id} in ${topic}`);
      const ours = answer(givenBy(entry));
      expect(differences(entry, ours, entry.expected, ""), `${entry.source.title} (${entry.basis})`).toEqual([]);
    });

    it("passes over no entry", () => {
      expect([...truth.keys()].filter((id) => !(id in answers) && !(id in leftOut))).toEqual([]);
    });

    it.skipIf(!existsSync(projectPath("../shared")))("passes over no entry of the larger collection", () => {
      const collection = projectPath(`../shared/truth/${topic}.json`);
      const text = existsSync(collection) ? readFileSync(collection, "utf8") : '{ "entries": [] }';
      const ids = COLLECTION.parse(JSON.parse(text)).entries.map(({ id }) => id);
      expect(ids.filter((id) => !(id in answers) && !(id in leftOut))).toEqual([]);
    });
  });
}

function givenBy(entry: TruthEntry): Given {
  return {
    entry,
    number: (name) => z.number().parse(entry.inputs[name]),
    text: (name) => z.string().parse(entry.inputs[name]),
    numbers: (name) => z.array(z.number()).parse(entry.inputs[name]),
  };
}

function differences(entry: TruthEntry, ours: unknown, expected: unknown, at: string): readonly string[] {
  if (typeof expected === "number") {
    const same = typeof ours === "number" && agrees(ours, expected, entry.tolerance);
    return same ? [] : [`${at || "value"}: ${ours} against ${expected}`];
  }
  if (typeof expected === "object" && expected !== null) {
    const found: Readonly<Record<string, unknown>> = typeof ours === "object" && ours !== null ? { ...ours } : {};
    if (Object.keys(found).length !== Object.keys(expected).length) return [`${at || "value"}: other parts`];
    return Object.entries(expected).flatMap(([key, part]) => differences(entry, found[key], part, `${at}.${key}`));
  }
  return ours === expected ? [] : [`${at || "value"}: ${ours} against ${expected}`];
}
