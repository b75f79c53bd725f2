import type { Stage } from "../../src/base/index.js";
import type { ResultHead, Summary } from "../../src/screening/index.js";

/** What one rule gave at one stage: how often each outcome, and which of those that it can give it never gave. */
export interface RuleExercised {
  readonly rule: string;
  readonly stage: Stage;
  readonly counts: Readonly<Record<string, number>>;
  readonly lacking: readonly string[];
}

export function exercisedBy(head: ResultHead, summary: Summary): readonly RuleExercised[];
