import { factName } from "../../facts/index.js";
import type { Summary } from "../../screening/index.js";
import { methodNoun } from "../wording/methods.js";
import { failAnywayInWords, notByFactsInWords } from "../wording/settling.js";
import { BLANK_ROW, bodyRow, headingRow, type TextRow } from "./text-sheet.js";

/** What to find out one after the other, and the points for which that changes nothing. */
export function settlingRows({ settling, openPoints }: Summary): readonly TextRow[] {
  const { failAnyway, notByFacts } = openPoints;
  return [
    headingRow("to find out first", "these facts, one step after the other", "settle", "by then"),
    ...settling.map(({ facts, points, pointsSoFar }, i) =>
      bodyRow(`step ${i + 1}`, facts.map(factName).join(", "), points, pointsSoFar),
    ),
    ...(failAnyway === 0 ? [] : [bodyRow("", failAnywayInWords(failAnyway))]),
    ...(notByFacts === 0 ? [] : [bodyRow("", notByFactsInWords(notByFacts))]),
    BLANK_ROW,
  ];
}

/** For how many points another method than the proposed one would do. */
export function otherMethodRows({ otherMethods }: Summary): readonly TextRow[] {
  if (otherMethods.length === 0) return [];
  return [
    BLANK_ROW,
    headingRow("another method", "than the proposed one", "would pass", "closest"),
    ...otherMethods.map(({ method, wouldPass, closest }) => bodyRow("", methodNoun(method), wouldPass, closest)),
  ];
}
