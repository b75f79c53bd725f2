import type { Outcome } from "../../base/index.js";
import type { PointTurned, RunCompared, RunDifferences, ThingChanged, Turned } from "../../comparing/index.js";
import { paragraph, table } from "../terminal/layout.js";
import { countOf } from "../wording/numbers.js";
import { markedOutcome } from "../wording/outcomes.js";
import { rowInWords } from "../wording/places.js";
import { leavesInWords } from "./leaf-words.js";
import { runLines, sideLines } from "./run-words.js";

/** What two rulebooks, or two results, differ in. */
export interface ChangesShown {
  readonly before: RunCompared;
  readonly after: RunCompared;
  readonly differences: RunDifferences;
  /** Null where a stored result stands for one of the rulebooks. */
  readonly things: readonly ThingChanged[] | null;
  readonly turned: Turned;
}

/** Points listed by name on the terminal; the JSON has all. */
const MOST_POINTS = 50;

/** What changes, for a person. */
export function changesText(shown: ChangesShown): string {
  const { before, after, things, turned } = shown;
  const lines = [
    ...sideLines("before: ", before),
    ...sideLines("after:  ", after),
    "",
    ...(things === null ? runLines(shown) : thingLines(things)),
    `${countOf(turned.turned.length, "point")} of ${turned.points} ${after.stored ? "turned" : "would turn"}`,
    ...(turned.onlyBefore > 0 ? [`${countOf(turned.onlyBefore, "point")} only before`] : []),
    ...(turned.onlyAfter > 0 ? [`${countOf(turned.onlyAfter, "point")} only after`] : []),
    ...turnLines(turned),
    ...(things === null ? [] : silentLines(things, turned)),
    ...pointLines(turned.turned),
  ];
  return lines.map((line) => `${line}\n`).join("");
}

function thingLines(things: readonly ThingChanged[]): readonly string[] {
  if (things.length === 0) return ["The rulebooks differ in nothing that an outcome rests on", ""];
  return [
    "What is different",
    ...things.flatMap(({ kind, id, how, leaves, saidBy }) => [
      `  ${kind} ${id}: ${how}`,
      ...saidBy.flatMap(({ overlay, reason, by, on }) => paragraph(`by ${overlay}: ${reason} (${by}, ${on})`, "    ")),
      ...leavesInWords(leaves).flatMap((words) => paragraph(words, "    ")),
    ]),
    "",
  ];
}

const outcomeInWords = (outcome: Outcome | null): string => (outcome === null ? NO_FINDING : markedOutcome(outcome));

/** What passes, does not apply or is not asked: results need not list it, so that the three are not told apart. */
const NO_FINDING = "no finding";

function turnLines({ byRule, verdicts }: Turned): readonly string[] {
  if (byRule.length === 0 && verdicts.length === 0) return [];
  const points = { heading: "points", width: 8, align: "right" } as const;
  const [before, after] = [
    { heading: "before", width: 20 },
    { heading: "after", width: 20 },
  ];
  return [
    "",
    ...(verdicts.length > 0
      ? [
          "Verdicts",
          ...table(
            [before, after, points],
            verdicts.map((turn) => [markedOutcome(turn.before), markedOutcome(turn.after), turn.points]),
          ),
          "",
        ]
      : []),
    "Findings",
    ...table(
      [{ heading: "rule", width: 34 }, before, after, points],
      byRule.map((turn) => [turn.rule, outcomeInWords(turn.before), outcomeInWords(turn.after), turn.points]),
    ),
    ...(byRule.some(({ before: one, after: other }) => one === null || other === null)
      ? [`  ${NO_FINDING}: the rule passes, does not apply or is not asked`]
      : []),
  ];
}

/** A change that turns nothing is worth knowing: either nothing rests on it yet, or it is not what was meant. */
function silentLines(things: readonly ThingChanged[], { byRule }: Turned): readonly string[] {
  const turned = new Set(byRule.map(({ rule }) => rule));
  const silent = things.filter(({ kind, id }) => kind === "rule" && !turned.has(id)).map(({ id }) => id);
  return silent.length === 0 ? [] : ["", ...paragraph(silent.join(", "), "Changed, and turns nothing: ")];
}

function pointLines(points: readonly PointTurned[]): readonly string[] {
  if (points.length === 0) return [];
  const more = points.length - MOST_POINTS;
  const stays = ({ before, after }: PointTurned): number => Number(before === after);
  const listed = more > 0 ? points.toSorted((a, b) => stays(a) - stays(b)) : points;
  return [
    "",
    more > 0 ? "Points, those whose verdict turns first" : "Points",
    ...listed
      .slice(0, MOST_POINTS)
      .flatMap((point) => [
        ...paragraph(
          `${point.point ?? rowInWords(point)}: ${markedOutcome(point.before)}${point.before === point.after ? " stays" : ` becomes ${markedOutcome(point.after)}`}`,
          "  ",
        ),
        ...point.findings.flatMap(({ rule, before, after, message }) =>
          paragraph(
            `${rule}: ${outcomeInWords(before)} becomes ${outcomeInWords(after)}${message === null ? "" : `: ${message}`}`,
            "    ",
          ),
        ),
      ]),
    ...(more > 0 ? [`  and ${more} more; --json lists all`] : []),
  ];
}
