import type { PlainDay, Stage } from "../../base/index.js";
import { CATALOGUE, findFact } from "../../facts/index.js";
import { canBeChanged, factMeant, type Rulebook, type RulebookLoading } from "../../rulebook/index.js";
import type { WrittenCase } from "../suggested-case.js";
import { readBandWords, readConditionWords, type WordsReading, type Written } from "./asked-words.js";
import { completeCases } from "./complete-cases.js";
import { FILL_IN, type RuleWords, ruleText } from "./rule-text.js";

/** A rule as it is asked for, in the words of the one who asks. */
export interface AskedRule {
  readonly id: string;
  readonly title: string | null;
  readonly group: string | null;
  readonly sets: readonly string[];
  /** Null: both, or installed alone for a fact of what was built. */
  readonly stages: readonly Stage[] | null;
  readonly judges: string;
  readonly fails: readonly string[];
  readonly warns: readonly string[];
  readonly applies: readonly string[];
  readonly from: PlainDay;
  readonly schema: string;
}

/** The file of a new rule, or what is wrong with what was asked, by the name of the thing asked. */
export type NewRule =
  | {
      readonly ok: true;
      readonly text: string;
      readonly cases: number;
      /** What no case shows; the owner writes these. */
      readonly open: readonly string[];
      /** Facts that can be changed under a computed one, to choose from for the remedy. */
      readonly changeable: readonly string[];
    }
  | { readonly ok: false; readonly mistakes: readonly { readonly about: string; readonly text: string }[] };

/**
 * Writes a rule file that loads, with cases for its limits, outcomes, missing facts and dates.
 *
 * @param load - loads the rulebook with the text as the file of the rule
 */
export function newRule(asked: AskedRule, load: (text: string) => RulebookLoading): NewRule {
  const judged = findFact(asked.judges);
  if (!judged) {
    const near = factMeant(
      asked.judges,
      CATALOGUE.map(({ id }) => id),
    );
    return refused("judges", `"${asked.judges}" is no known fact${near}`);
  }
  if (asked.fails.length + asked.warns.length === 0) {
    return refused("fails", "the rule has no limit; say what breaks it, with --fails or --warns");
  }
  const mistakes: { about: string; text: string }[] = [];
  const read = (about: string, words: readonly string[], reader: (text: string) => WordsReading): readonly Written[] =>
    words.flatMap((text) => {
      const reading = reader(text);
      if (reading.ok) return [reading.data];
      mistakes.push({ about, text: reading.text });
      return [];
    });
  const band = (text: string): WordsReading => readBandWords(text, asked.judges);
  const words: RuleWords = {
    ...asked,
    stages: asked.stages ?? (judged.group === "as-built" ? ["installed"] : ["proposed", "installed"]),
    applies: read("applies", asked.applies, readConditionWords),
    fails: read("fails", asked.fails, band),
    warns: read("warns", asked.warns, band),
    change: asked.group === null && canBeChanged(judged.id) ? [judged.id] : [],
  };
  if (mistakes.length > 0) return { ok: false, mistakes };
  return written(words, load);
}

function refused(about: string, text: string): NewRule {
  return { ok: false, mistakes: [{ about, text }] };
}

function written(words: RuleWords, load: (text: string) => RulebookLoading): NewRule {
  const given = { asOf: words.from };
  const draft = ruleText(words, placeholders(words), given);
  const loading = load(draft);
  if (!loading.ok) return { ok: false, mistakes: loading.findings.map((one) => aboutOption(one, draft)) };
  const rule = loading.rulebook.rules.find(({ id }) => id === words.id);
  const completed = rule && completeCases(rule, loading.rulebook, words.from);
  if (!completed) {
    return refused(
      "fails",
      "no values were found under which the rule applies and passes; check the limits and the conditions against each other",
    );
  }
  const text = ruleText(words, completed.rule.cases, completed.rule.casesGive);
  const proven = load(text);
  if (!proven.ok) return { ok: false, mistakes: proven.findings.map((one) => aboutOption(one, text)) };
  return {
    ok: true,
    text,
    cases: completed.rule.cases.length,
    open: completed.open,
    changeable: words.change.length > 0 ? [] : changeableUnder(words, proven.rulebook),
  };
}

/** One case for each outcome, so that the rule loads before its cases are written. */
function placeholders({ fails, warns }: RuleWords): readonly WrittenCase[] {
  const outcomes = [
    "pass" as const,
    "undecided" as const,
    ...(fails.length > 0 ? (["fail"] as const) : []),
    ...(warns.length > 0 ? (["warn"] as const) : []),
  ];
  return outcomes.map((expect) => ({ name: expect, given: {}, expect, missing: null }));
}

/** What can be changed of all that the judged fact is computed from. */
function changeableUnder({ judges, group }: RuleWords, { rules }: Rulebook): readonly string[] {
  if (group !== null || rules.length === 0) return [];
  const facts = new Set([judges]);
  for (const fact of facts) for (const needed of findFact(fact)?.needs ?? []) facts.add(needed);
  return [...facts].filter(canBeChanged).sort();
}

const ABOUT: readonly (readonly [start: RegExp, about: string])[] = [
  [/^id:/, "id"],
  [/^title:/, "title"],
  [/^group:/, "group"],
  [/^sets:/, "set"],
  [/^stages:/, "stage"],
  [/^appliesWhen:/, "applies"],
  [/^judges:/, "judges"],
  [/^ {2}- from:/, "from"],
  [/^ {4}fail:/, "fails"],
  [/^ {4}warn:/, "warns"],
];

/** A finding about a line of the draft as one about what was asked. */
function aboutOption({ line, text }: { readonly line: number; readonly text: string }, draft: string) {
  const written = draft.split("\n")[line - 1] ?? "";
  return { about: ABOUT.find(([start]) => start.test(written))?.[1] ?? "rule", text };
}

/** What the owner of a new rule still has to write, by line. */
export function linesToFill(text: string): readonly number[] {
  return text.split("\n").flatMap((line, index) => (line.includes(FILL_IN) ? [index + 1] : []));
}
