import type { BuiltPoint } from "../../built/index.js";
import { factName } from "../../facts/index.js";
import { paragraph } from "../terminal/layout.js";
import { rowInWords } from "../wording/places.js";
import { differenceInWords, partnerInWords, turnedInWords, verdictsInWords, worseRules } from "./words.js";

/** Points shown in one list; all of them stand in the table and in the document. */
const MOST_SHOWN = 12;
/** Reasons and differences shown of one point. */
const MOST_LINES = 6;

interface List {
  readonly title: string;
  readonly takes: (point: BuiltPoint) => boolean;
  readonly lines: (point: BuiltPoint) => readonly string[];
}

/** In the order in which a person should read them. */
const LISTS: readonly List[] = [
  {
    title: "Recall the order",
    takes: (point) => point.recall,
    lines: (point) => [...worseRules(point).map(turnedInWords), ...point.differences.map(differenceInWords)],
  },
  {
    title: "Built, but not proposed",
    takes: ({ status }) => status === "not-proposed",
    lines: (point) => partnerLines(point),
  },
  {
    title: "Built although the proposal failed",
    takes: ({ againstVerdict, recall }) => againstVerdict && !recall,
    lines: (point) => [...point.turned.map(turnedInWords), ...differingLines(point)],
  },
  {
    title: "In several rows of one side, and not matched",
    takes: ({ status, recall }) => status === "twice" && !recall,
    lines: ({ text }) => (text === null ? [] : [text]),
  },
  {
    title: "Rows without an id, and not matched",
    takes: ({ status }) => status === "no-id",
    lines: (point) => partnerLines(point),
  },
  {
    title: "Built with another method or at another place than was judged, or without an issued verdict",
    takes: ({ status, needsNewVerdict, recall }) => status === "matched" && needsNewVerdict && !recall,
    lines: (point) => [...(point.text === null ? [] : [point.text]), ...differingLines(point)],
  },
  {
    title: "Built otherwise than proposed",
    takes: ({ differences, needsNewVerdict, recall }) => differences.length > 0 && !needsNewVerdict && !recall,
    lines: differingLines,
  },
  {
    title: "Verdict better now",
    takes: ({ change }) => change === "rises",
    lines: (point) => point.turned.map(turnedInWords),
  },
  {
    title: "Not built yet",
    takes: ({ status, recall }) => status === "not-built" && !recall,
    lines: (point) => [...(point.text === null ? [] : [point.text]), ...partnerLines(point)],
  },
];

function partnerLines({ likely }: BuiltPoint): readonly string[] {
  return likely.map((one) => `perhaps ${partnerInWords(one)}, of the same machine; settle it in the survey`);
}

function differingLines({ differences, notCarried }: BuiltPoint): readonly string[] {
  const anew = notCarried.map(factName).join(", ");
  return [...differences.map(differenceInWords), ...(anew === "" ? [] : [`to be measured anew: ${anew}`])];
}

/** The lists of a report, gathered while the points pass by. */
export class BuiltLists {
  readonly #found = LISTS.map((list) => ({ list, count: 0, lines: [] as string[] }));

  see(point: BuiltPoint): void {
    for (const found of this.#found) {
      if (!found.list.takes(point)) continue;
      found.count += 1;
      if (found.count <= MOST_SHOWN) found.lines.push(...pointLines(point, found.list.lines(point)));
    }
  }

  sections(): readonly (readonly string[])[] {
    return this.#found.map(({ list, count, lines }) => {
      if (count === 0) return [];
      const more = count > MOST_SHOWN ? [`  and ${count - MOST_SHOWN} more; --csv and --json list all`] : [];
      return [`${list.title}: ${count}`, ...lines, ...more];
    });
  }
}

function pointLines(point: BuiltPoint, reasons: readonly string[]): readonly string[] {
  const at = point.built[0] ?? point.proposed[0];
  const name = point.point ?? point.machine ?? "a point without a name";
  const place = at === undefined ? "" : `, ${rowInWords(at)}`;
  const more = reasons.length > MOST_LINES ? [`    - and ${reasons.length - MOST_LINES} more`] : [];
  return [
    ...paragraph(`${verdictsInWords(point)}  ${name}${place}`, "  "),
    ...reasons.slice(0, MOST_LINES).flatMap((reason) => paragraph(reason, "    - ")),
    ...more,
  ];
}
