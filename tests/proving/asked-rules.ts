import { expect } from "vitest";
import type { TextFile } from "../../src/base/index.js";
import { CATALOGUE, type FactDefinition, factOf, isNumeric } from "../../src/facts/index.js";
import { type AskedRule, alterBook, coverageOf, type NewRule, newRule } from "../../src/proving/index.js";
import { isRulePath, loadRulebook, type Rule, type RulebookLoading, runCase } from "../../src/rulebook/index.js";
import { shippedFiles } from "../tools/shipped.js";

/** The shipped rulebook without its rules, and without the words and ways of measuring, on which no case rests. */
export async function bookWithoutRules(): Promise<(text: string) => RulebookLoading> {
  const files = (await shippedFiles()).flatMap((file): readonly TextFile[] => {
    const inside = file.path.slice("rules/".length);
    if (isRulePath(inside) || /^(?:words|measuring|conditions)\//.test(inside)) return [];
    // The gates of the methods are rules.
    return [{ ...file, text: file.text.replace(/\nmethods:\n(?: .*\n)*/, "\n") }];
  });
  return (text) => loadRulebook([...files, { path: "rules/own/new-rule.yaml", text }], { root: "rules" });
}

const ASKED: AskedRule = {
  id: "new-rule",
  title: null,
  group: null,
  sets: ["full"],
  stages: null,
  judges: "thread_depth",
  fails: [],
  warns: [],
  applies: [],
  from: "2026-11-26",
  schema: "../../schemas/rule.schema.json",
};

/** A new rule on the depth of a thread, with what is asked beside. */
export function asked(load: (text: string) => RulebookLoading, more: Partial<AskedRule>): NewRule {
  return newRule({ ...ASKED, ...more }, load);
}

/** The rule that is written, its cases held to all that check-rules --complete asks. */
export function provenRule(
  load: (text: string) => RulebookLoading,
  more: Partial<AskedRule>,
): { readonly text: string; readonly rule: Rule } {
  const made = asked(load, more);
  if (!made.ok) throw new Error(`${JSON.stringify(more)}: ${JSON.stringify(made.mistakes)}`);
  const loading = load(made.text);
  if (!loading.ok) throw new Error(`${made.text}\n${JSON.stringify(loading.findings)}`);
  const [rule] = loading.rulebook.rules;
  if (!rule) throw new Error("no rule");
  for (const one of rule.cases) {
    for (const { difference } of runCase(rule, one, loading.rulebook)) expect(difference, one.name).toBeNull();
  }
  const notShown = coverageOf(loading.rulebook).items.filter(({ isShown }) => !isShown);
  expect(notShown.map(({ what }) => what)).toEqual(made.open);
  expect(made.open).toEqual([]);
  const { unnoticed, counts } = alterBook(loading.rulebook);
  const blind = unnoticed.filter(({ suggestion }) => suggestion !== null);
  expect(blind.map(({ alteration }) => alteration.what)).toEqual([]);
  expect(counts.reduce((sum, { noticed }) => sum + noticed, 0)).toBeGreaterThan(3);
  return { text: made.text, rule };
}

/** Every fact of which a rule can speak. */
export const JUDGEABLE = CATALOGUE.filter(({ source }) => source !== "run");

/** Limits that fit a fact, each kind of band once. */
export function bandsFor(definition: FactDefinition): readonly string[] {
  const { id, kind, choices = [], unit } = definition;
  if (kind === "yes-no") return ["is yes", "is no"];
  if (kind === "choice") {
    const [first = "", second = ""] = choices;
    return choices.length > 2
      ? [`is ${first}`, `none of ${first}, ${second}`, `one of ${first}, ${second}`]
      : [`is ${first}`];
  }
  if (kind === "date") return ["is 2026-05-01"];
  if (!isNumeric(definition)) return ["is not M6", `when ${id} in A 1, B 2`];
  const numbers = [0.3, 0.4, 0.6, 0.7].map(
    (share) => `${within(definition, share)}${kind === "count" ? "" : ` ${unit}`}`,
  );
  const [a, b, c, d] = numbers;
  return [`below ${b}`, `at or above ${c}`, `outside ${a} to ${d}`, `above ${c}`, `at or below ${b}`];
}

function within({ kind, source, plausible, dimension, needs = [] }: FactDefinition, share: number): number {
  // What a computed fact can be follows from like facts under it.
  const like = needs.map(factOf).find((one) => one.plausible && one.dimension === dimension)?.plausible;
  const { lowest, highest } = plausible ?? like ?? { lowest: 5, highest: 50 };
  const value = lowest + (highest - lowest) * share;
  const isWhole = kind === "count" && (source === "survey" || source === "group");
  return isWhole ? Math.round(value) : Number(value.toPrecision(3));
}
