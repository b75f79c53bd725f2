import type { Outcome } from "../../base/index.js";
import { type Block, type Row, text } from "./block.js";

/** When a rule says what, and what it counts for. */
const OUTCOMES: readonly (readonly [outcome: Outcome, when: string, counts: string])[] = [
  ["fail", "a failing limit is broken, whatever else may be unknown", "the point fails"],
  ["warn", "no failing limit is broken and a warning one is", "the point warns, unless another rule fails"],
  ["pass", "no limit is broken, whatever else may be unknown", "nothing against the point"],
  [
    "undecided",
    "what is not known, or not known well enough, could turn out either way; the missing facts are named",
    "the point warns at best; it fails where the rule says so",
  ],
  ["no-limit-in-force", "the rule has no limit in force on the day that was asked for", "as undecided"],
  ["not-applicable", "the rule does not speak of this point", "not counted"],
];

/** How verdicts come about, in plain words. */
export function verdictPart(): readonly Block[] {
  return [
    { is: "heading", level: 2, id: "verdicts", line: ["2 How a verdict comes about"] },
    { is: "heading", level: 3, id: "outcomes", line: ["2.1 What a rule says of a point"] },
    text(
      "A rule first asks whether it applies. If it does, it holds what it judges against the limits in force. It then says " +
        "one of the following:",
    ),
    {
      is: "table",
      caption: "Outcomes of a rule",
      headings: ["outcome", "when", "in the verdict"],
      rows: OUTCOMES.map(([outcome, when, counts]): Row => ({ cells: [[{ outcome }], [when], [counts]] })),
    },
    text(
      "A point ",
      { strong: "fails" },
      " if any rule fails, else it ",
      { strong: "warns" },
      " if any rule warns or is undecided, else it ",
      { strong: "passes" },
      ". Points that warn only because something is not known are counted apart.",
    ),
    { is: "heading", level: 3, id: "not-known", line: ["2.2 What is not known"] },
    text(
      "Each question has three answers: yes, no, and not known. Nothing is guessed. An empty cell, “tbc”, a number that " +
        "cannot be read, two cells that contradict each other: all leave the fact not known, with the reason. A rule is " +
        "decided only if every value that the unknown facts could have would decide it alike. “A and B” with A known to be " +
        "false is false, whatever B is; “A or B” with A known to be true is true. So no verdict gets better because " +
        "something is not known.",
    ),
    { is: "heading", level: 3, id: "accuracy", line: ["2.3 How accurately a number is known"] },
    text(
      "A number with an accuracy, 15.3 mm ± 0.5 mm, is every value from 14.8 mm to 15.8 mm. It keeps a limit only if all " +
        "of them keep it, and breaks it only if all of them break it; in between the rule is undecided, and the finding says how " +
        "accurately to measure again. This is the worst-case reading in the manner of ISO 14253-1. A bare number counts as exact. " +
        "Facts that are computed from others are known as well as those allow.",
    ),
    { is: "heading", level: 3, id: "days", line: ["2.4 Limits in time"] },
    text(
      "Every limit has a first day and may have a first day on which it no longer holds. A screening asks for one day, and the " +
        "limits of that day count. A limit whose day of review has passed still holds; every result that used it says so.",
    ),
    { is: "heading", level: 3, id: "groups-judged", line: ["2.5 Groups of points"] },
    text(
      "Some rules judge all points that share something as a whole: a supply, a machine, a channel (annex D). What such a rule " +
        "says counts in the verdict of each of these points.",
    ),
    { is: "heading", level: 3, id: "deviations", line: ["2.6 Accepted deviations"] },
    text(
      "A finding that cannot be mended can be accepted for a time, by somebody who answers for it. The finding and the " +
        "verdict stay and are marked as accepted. From rules marked “none is accepted” there is no deviation.",
    ),
  ];
}
