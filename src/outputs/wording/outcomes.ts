import type { Outcome } from "../../base/index.js";

const MARKS: Readonly<Record<Outcome, string>> = {
  pass: "●",
  warn: "▲",
  fail: "■",
  undecided: "◇",
  "no-limit-in-force": "◇",
  "not-applicable": "–",
};

const WORDS: Readonly<Record<Outcome, string>> = {
  pass: "pass",
  warn: "warn",
  fail: "fail",
  undecided: "undecided",
  "no-limit-in-force": "no limit in force",
  "not-applicable": "not applicable",
};

/** Shape and word together ("■ fail"): readable without colour, on paper and by a screen reader. */
export function markedOutcome(outcome: Outcome): string {
  return `${MARKS[outcome]} ${WORDS[outcome]}`;
}
