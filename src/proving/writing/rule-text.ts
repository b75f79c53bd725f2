import type { PlainDay, Stage } from "../../base/index.js";
import { factName, plainWords } from "../../facts/index.js";
import { flowYaml } from "../flow-yaml.js";
import { caseLine, type WrittenCase } from "../suggested-case.js";
import type { Written } from "./asked-words.js";

/** What a new rule is to say. */
export interface RuleWords {
  readonly id: string;
  readonly title: string | null;
  readonly group: string | null;
  readonly sets: readonly string[];
  readonly stages: readonly Stage[];
  readonly judges: string;
  readonly applies: readonly Written[];
  readonly fails: readonly Written[];
  readonly warns: readonly Written[];
  readonly from: PlainDay;
  /** What can be changed so that the rule passes. */
  readonly change: readonly string[];
  /** Where an editor finds the schema, from the file. */
  readonly schema: string;
}

/** Marks what the owner of the rule has to write. */
export const FILL_IN = "FILL IN:";

/** A rule file: one line for each thing that was asked, so that a finding about a line is one about an option. */
export function ruleText(
  words: RuleWords,
  cases: readonly WrittenCase[],
  casesGive: Readonly<Record<string, unknown>>,
): string {
  const { id, group, sets, stages, judges, applies, fails, warns, from, change, schema } = words;
  const quoted = (text: string): string => JSON.stringify(text);
  const [only] = applies;
  const lines = [
    `# yaml-language-server: $schema=${schema}`,
    `id: ${id}`,
    `title: ${quoted(words.title ?? titleOf(words))}`,
    ...(group === null ? [] : [`group: ${flowYaml(group)}`]),
    `sets: ${flowYaml(sets)}`,
    `stages: ${flowYaml(stages)}`,
    ...(only === undefined ? [] : [`appliesWhen: ${flowYaml(applies.length === 1 ? only : { all: applies })}`]),
    `judges: ${flowYaml(judges)}`,
    "limits:",
    `  - from: ${from}`,
    "    until: null",
    ...bandLine("fail", fails),
    ...bandLine("warn", warns),
    "    cites: [source]",
    "citations:",
    `  source: { basis: from-memory, says: ${quoted(`${FILL_IN} what the limit rests on, in words of your own`)} }`,
    "messages:",
    ...(fails.length === 0 ? [] : [`  fail: ${quoted(messageOf(judges, fails))}`]),
    ...(warns.length === 0 ? [] : [`  warn: ${quoted(messageOf(judges, warns))}`]),
    "remedy:",
    `  text: ${quoted(`${FILL_IN} what to do on site`)}`,
    `  change: ${flowYaml(change)}`,
    "undecided: warn",
    "cases:",
    ...cases.map(caseLine),
    `casesGive: ${flowYaml(casesGive)}`,
  ];
  return `${lines.join("\n")}\n`;
}

function bandLine(side: "fail" | "warn", bands: readonly Written[]): readonly string[] {
  const [only] = bands;
  if (only === undefined) return [];
  return [`    ${side}: ${flowYaml(bands.length === 1 ? only : bands)}`];
}

function titleOf({ judges, fails, warns }: RuleWords): string {
  const [band = {}] = fails.length > 0 ? fails : warns;
  const name = factName(judges);
  return `The ${name} ${goodOf(band, boundTitle)}`;
}

/** The facts' values stand in the message; texts of a finding name them by their ids in braces. */
function messageOf(judges: string, bands: readonly Written[]): string {
  const good = bands.map((band) => goodOf(band, boundMessage)).join(", and ");
  return `the ${factName(judges)} is {${judges}}; wanted is one that ${good}`;
}

/** What a value does that does not break the band. */
function goodOf(band: Written, said: (bound: unknown) => string): string {
  const [[kind, value] = ["when", null]] = Object.entries(band);
  const list = Array.isArray(value) ? value : [];
  switch (kind) {
    case "below":
      return `is not below ${said(value)}`;
    case "above":
      return `is not above ${said(value)}`;
    case "atOrBelow":
      return `is above ${said(value)}`;
    case "atOrAbove":
      return `is below ${said(value)}`;
    case "outside":
      return `lies between ${said(list[0])} and ${said(list[1])}`;
    case "oneOf":
      return `is none of ${list.map((one) => plainWords(String(one))).join(", ")}`;
    case "noneOf":
      return `is one of ${list.map((one) => plainWords(String(one))).join(", ")}`;
    default:
      return "is as it should be";
  }
}

function boundTitle(bound: unknown): string {
  return boundIn(bound, (fact) => `the ${factName(fact)}`);
}

function boundMessage(bound: unknown): string {
  return boundIn(bound, (fact) => `{${fact}}`);
}

function boundIn(bound: unknown, named: (fact: string) => string): string {
  if (typeof bound !== "object" || bound === null || !("fact" in bound)) return String(bound);
  const times = "times" in bound ? `${bound.times} times ` : "";
  const plus = "plus" in bound ? ` plus ${bound.plus}` : "";
  return `${times}${named(String(bound.fact))}${plus}`;
}
