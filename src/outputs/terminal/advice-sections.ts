import type { Summary } from "../../screening/index.js";
import { methodNoun } from "../wording/methods.js";
import { countOf } from "../wording/numbers.js";
import { failAnywayInWords, notByFactsInWords, stepInWords } from "../wording/settling.js";
import { paragraph } from "./layout.js";

const STEPS_SHOWN = 6;

/** What to find out first: the facts that settle most points for the least that is fetched. */
export function settlingSection({ settling, openPoints }: Summary): readonly string[] {
  const { toSettle, failAnyway, notByFacts } = openPoints;
  const rest = [
    ...(failAnyway === 0 ? [] : [failAnywayInWords(failAnyway)]),
    ...(notByFacts === 0 ? [] : [notByFactsInWords(notByFacts)]),
  ];
  if (settling.length === 0 && rest.length === 0) return [];
  const shown = settling.slice(0, STEPS_SHOWN);
  const more = settling.length - shown.length;
  const left = toSettle - (shown.at(-1)?.pointsSoFar ?? 0);
  return [
    "To find out first",
    ...shown.flatMap((step, i) => paragraph(stepInWords(step), `  ${i + 1}. `)),
    ...(more > 0 ? paragraph(`${countOf(left, "point")} more in ${countOf(more, "further step")}`, "  - ") : []),
    ...rest.flatMap((text) => paragraph(text, "  - ")),
  ];
}

/** For how many points another method than the proposed one would do. */
export function methodsSection({ otherMethods }: Summary): readonly string[] {
  if (otherMethods.length === 0) return [];
  const lines = otherMethods.flatMap(({ method, wouldPass, closest }) => {
    const said = [
      ...(wouldPass > 0 ? [`${countOf(wouldPass, "point")} would pass the rules asked`] : []),
      ...(closest > 0 ? [`comes closest on ${countOf(closest, "point")}`] : []),
    ];
    return paragraph(`${methodNoun(method)}: ${said.join(", ")}`, "  - ");
  });
  return ["By another mounting method than the proposed one", ...lines];
}
