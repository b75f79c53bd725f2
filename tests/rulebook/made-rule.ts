import { type Interval, single } from "../../src/base/index.js";
import type { FactState, KnownFact, UnknownReason } from "../../src/facts/index.js";
import {
  compileRule,
  type Judgement,
  loadRulebook,
  modelFactsOn,
  type Rule,
  type Rulebook,
} from "../../src/rulebook/index.js";
import { smallFiles } from "./small-book.js";

/** A rule from some of its lines; the rest is filled in. */
export function bookWith(
  lines: string,
  changed: Readonly<Record<string, string>> = {},
): { rule: Rule; book: Rulebook } {
  const text = `id: made
title: "made"
sets: [core]
stages: [proposed, installed]
${lines}
citations: { c: { basis: from-memory, says: "x" } }
messages: { ${/^ *fail:/m.test(lines) || lines.includes(", fail:") ? 'fail: "f", ' : ""}${lines.includes("warn:") ? 'warn: "w"' : ""} }
remedy: { text: "x", change: [] }
cases:
  - { name: "good", given: {}, expect: pass }
  - { name: "poor", given: {}, expect: warn }
  - { name: "bad", given: {}, expect: fail }
  - { name: "open", given: {}, expect: undecided }
casesGive: { asOf: 2026-06-01 }
`;
  const loading = loadRulebook(smallFiles({ "made/made.yaml": text, ...changed }));
  if (!loading.ok) throw new Error(JSON.stringify(loading.findings));
  const rule = loading.rulebook.rules.find(({ id }) => id === "made");
  if (!rule) throw new Error("no rule");
  return { rule, book: loading.rulebook };
}

/** The limits of a rule with one entry, from its bands. */
export function limit(bands: string): string {
  return `limits: [{ from: 2026-01-01, until: null, reviewBy: 2026-09-01, ${bands}, cites: [c] }]`;
}

/** Facts as a test writes them. */
export type Given = Readonly<Record<string, number | string | boolean | Interval | { unknown: UnknownReason }>>;

/** A fact as it is kept. */
export function stateOf(value: Given[string]): FactState {
  const origin = { kind: "none" } as const;
  if (typeof value === "object" && "unknown" in value) return { known: false, reason: value.unknown, origin };
  const kept: KnownFact["value"] = typeof value === "number" ? single(value) : value;
  return { known: true, value: kept, origin };
}

/** What a rule made of some lines says of some facts, the baseline's among them, at the stage proposed. */
export function judge(
  lines: string,
  given: Given,
  options: { asOf?: string; files?: Readonly<Record<string, string>> } = {},
): Judgement {
  const { rule, book } = bookWith(lines, options.files);
  const asOf = options.asOf ?? "2026-06-01";
  const model = book.models.get("baseline");
  const facts = new Map([
    ...(model ? modelFactsOn(model, asOf) : []),
    ...Object.entries(given).map(([id, v]) => [id, stateOf(v)] as const),
  ]);
  const judgement = compileRule(rule, book, { stage: "proposed", asOf })?.judge(facts);
  if (!judgement) throw new Error("the rule is for the stage");
  return judgement;
}
