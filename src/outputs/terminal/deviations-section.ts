import type { DeviationsShown, ResultHead, Summary } from "../../screening/index.js";
import { deviationInWords, STATUS_WORDS, toActOn } from "../wording/deviations.js";
import { countOf } from "../wording/numbers.js";
import { paragraph } from "./layout.js";

const SHOWN = 12;

/** How accepted deviations stand: counts, then those that somebody has to act on. */
export function deviationsSection(
  { deviations }: Pick<ResultHead, "deviations">,
  { accepted }: Summary,
): readonly string[] {
  if (deviations === null) return [];
  const pressing = toActOn(deviations.list);
  const more = pressing.length - SHOWN;
  return [
    `Accepted deviations`,
    ...paragraph(`${deviations.file}: ${countsInWords(deviations)}`, "  "),
    ...paragraph(
      `${countOf(accepted, "point")} with everything accepted that speaks against ${accepted === 1 ? "it" : "them"}`,
      "  ",
    ),
    ...pressing.slice(0, SHOWN).flatMap((one) => paragraph(deviationInWords(one), "  - ")),
    ...(more > 0 ? [`  - and ${more} more`] : []),
  ];
}

/** How many there are of each status, those in use first. */
export function countsInWords({ list, endingWithin }: DeviationsShown): string {
  const counts = new Map<string, number>([["in-use", 0]]);
  for (const { status } of list) counts.set(status, (counts.get(status) ?? 0) + 1);
  const soon = list.filter(({ endsSoon }) => endsSoon).length;
  const said = Object.entries(STATUS_WORDS).flatMap(([status, words]) => {
    const count = counts.get(status);
    return count === undefined ? [] : [`${count} ${words}`];
  });
  return [...said.reverse(), ...(soon === 0 ? [] : [`${soon} ending within ${countOf(endingWithin, "day")}`])].join(
    ", ",
  );
}
