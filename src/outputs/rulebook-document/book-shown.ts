import type { PlainDay } from "../../base/index.js";
import { inForce, type Rule, type Rulebook } from "../../rulebook/index.js";
import { type ChangeRecord, readChangeRecord } from "./change-record.js";
import { factsUsed } from "./facts-used.js";

/** How the document tells of the cases of rules: folded away on a screen, open, or not at all. */
export type CasesShown = "folded" | "open" | "none";

/** What a document of the rulebook is made from. */
export interface RulebookDocumentInput {
  readonly rulebook: Rulebook;
  /** The set whose rules are shown; null for the rules of all sets. */
  readonly set: string | null;
  /** The day for which the document says what is in force. */
  readonly asOf: PlainDay;
  /** The change records in Markdown, of the rulebook and then of each overlay; empty where there is none. */
  readonly changes: readonly string[];
  readonly cases: CasesShown;
  readonly program: { readonly name: string; readonly version: string };
}

/** Rules of one topic, which is the name of their folder. */
export interface Topic {
  readonly name: string;
  readonly rules: readonly Rule[];
}

/** A rulebook as its document shows it. */
export interface BookShown extends Omit<RulebookDocumentInput, "changes"> {
  readonly rules: readonly Rule[];
  readonly topics: readonly Topic[];
  readonly changes: ChangeRecord;
  readonly used: ReadonlySet<string>;
  /** Whether a fact has an entry in the document. */
  hasFact(id: string): boolean;
}

/** Rules by topic and all that goes with them. */
export function bookShown({ changes, ...input }: RulebookDocumentInput): BookShown {
  const { rulebook, set } = input;
  const rules = rulebook.rules.filter(({ sets }) => set === null || sets.includes(set));
  const used = factsUsed(rules, rulebook);
  const models = [...rulebook.models.values()].flatMap(({ facts }) => [...facts.keys()]);
  const described = new Set([...used, ...models]);
  return {
    ...input,
    rules,
    topics: topicsOf(rules),
    changes: changes.flatMap((record, index) => readChangeRecord(record, rulebook.overlays[index - 1]?.name ?? null)),
    used: described,
    hasFact: (id) => described.has(id),
  };
}

/** Topics in the order of their names, in each the rules in the order of their ids. */
export function topicsOf(rules: readonly Rule[]): readonly Topic[] {
  const names = [...new Set(rules.map(topicOf))].sort(byText);
  const inOrder = [...rules].sort((a, b) => byText(a.id, b.id));
  return names.map((name) => ({ name, rules: inOrder.filter((rule) => topicOf(rule) === name) }));
}

/** The folder that the file of a rule lies in. */
function topicOf({ at }: Rule): string {
  return at.file.split("/").at(-2) ?? "";
}

/** The order of code units, the same everywhere. */
export function byText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

/** How dated things stand on a day, in words ("from 2026-01-01, in force"). */
export function datesInWords(
  dated: { readonly from: PlainDay; readonly until: PlainDay | null; readonly reviewBy?: PlainDay | null },
  asOf: PlainDay,
): string {
  const { from, until, reviewBy = null } = dated;
  const ends = until === null ? `from ${from} on` : `from ${from}, ends on ${until} (first day without it)`;
  const stands = inForce(dated, asOf) ? "in force" : asOf < from ? "not yet in force" : "no longer in force";
  const due =
    reviewBy !== null && reviewBy < asOf ? `, review was due by ${reviewBy}` : `, to be reviewed by ${reviewBy}`;
  return `${ends}, ${stands}${reviewBy === null ? "" : due}`;
}
