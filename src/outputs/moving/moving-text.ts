import { formatNumber } from "../../base/index.js";
import type { LimitMoved, MovedStep, Stretch } from "../../moving/index.js";
import { paragraph, type TableColumn, table } from "../terminal/layout.js";
import { countOf } from "../wording/numbers.js";
import { markedOutcome } from "../wording/outcomes.js";
import { bookInWords } from "../wording/overlays.js";
import { DIGITS, holdsValue, movedInWords, valueInWords } from "./words.js";

/** Lines of the list of changes on the terminal; the JSON has all. */
const MOST_CHANGES = 1000;

/** How the counts move, for a person: at every step, or at every value where a count moves. */
export function movingText(moved: LimitMoved, form: "steps" | "changes"): string {
  const { head, rule, inForce, points, alsoMoved } = moved;
  const { rulebook } = head;
  const lines = [
    ...paragraph(`${rule.id}: ${rule.title}`),
    ...paragraph(`moves: ${movedInWords(moved)}; in force: ${valueInWords(moved, inForce)}`),
    ...(alsoMoved.length > 0
      ? paragraph(`with it move the rules that rest on the same value: ${alsoMoved.join(", ")}`)
      : []),
    ...paragraph(
      `${countOf(points, "point")}, ${bookInWords(rulebook)} (digest ${rulebook.digest.slice(0, 12)}), ` +
        `set ${head.set}, stage ${head.stage}, limits as of ${head.asOf}`,
    ),
    "",
    ...(form === "steps" ? stepLines(moved) : changeLines(moved)),
    ...beyondLines(moved, form),
  ];
  return lines.map((line) => `${line}\n`).join("");
}

const number = (heading: string, width: number): TableColumn => ({ heading, width, align: "right" });

const COUNTS: readonly TableColumn[] = [
  number(markedOutcome("fail"), 6),
  number(markedOutcome("warn"), 6),
  number(markedOutcome("undecided"), 9),
  number(markedOutcome("pass"), 6),
  number(markedOutcome("not-applicable"), 10),
];

const VERDICTS: readonly TableColumn[] = [
  number(`points ${markedOutcome("fail")}`, 6),
  number(`points ${markedOutcome("warn")}`, 6),
  number(`points ${markedOutcome("pass")}`, 6),
];

const NOT_ASKED = number("not asked", 5);

function columns(lines: readonly Pick<MovedStep, "rule">[]): readonly TableColumn[] {
  const anyNotAsked = lines.some(({ rule }) => rule.notAsked > 0);
  return [...COUNTS, ...(anyNotAsked ? [NOT_ASKED] : []), ...VERDICTS];
}

function cells(
  { rule, points }: Pick<MovedStep, "rule" | "points">,
  shown: readonly TableColumn[],
): readonly (string | number)[] {
  const { fail, warn, undecided, pass, notApplicable, notAsked } = rule;
  const asked = shown.includes(NOT_ASKED) ? [notAsked] : [];
  return [fail, warn, undecided, pass, notApplicable, ...asked, points.fail, points.warn, points.pass];
}

function stepLines(moved: LimitMoved): readonly string[] {
  const shown = columns(moved.steps);
  return table(
    [number(limitHeading(moved), 14), { heading: "", width: 10 }, ...shown],
    moved.steps.map((step) => [bare(step.value), mark(step), ...cells(step, shown)]),
  );
}

function mark({ inForce, changes }: MovedStep): string {
  if (inForce) return changes ? "< in force" : "  in force";
  return changes ? "<" : "";
}

function changeLines(moved: LimitMoved): readonly string[] {
  const { stretches, inForce } = moved;
  const listed = stretches.slice(0, MOST_CHANGES);
  const shown = columns(listed.map(({ counted }) => counted));
  const lines = table(
    [{ heading: limitHeading(moved), width: 20 }, { heading: "", width: 8 }, ...shown],
    listed.map((stretch) => [
      stretchInWords(stretch),
      holdsValue(stretch, inForce) ? "in force" : "",
      ...cells(stretch.counted, shown),
    ]),
  );
  const more = stretches.length - listed.length;
  return more > 0 ? [...lines, `  and ${more} more; --json lists all, --from and --to look closer`] : lines;
}

/** "28", "above 28 to 30", "28 to below 30". */
function stretchInWords({ from, fromIncluded, to, toIncluded }: Stretch): string {
  if (from === to) return bare(from);
  return `${fromIncluded ? "" : "above "}${bare(from)} to ${toIncluded ? "" : "below "}${bare(to)}`;
}

/** The unit stands in the heading. */
function bare(value: number): string {
  return formatNumber(value, null, DIGITS);
}

function limitHeading({ place }: LimitMoved): string {
  if (place.moves === "factor") return "factor";
  const what = place.moves === "shift" ? "shift" : "limit";
  return place.unit === null || place.unit === "" ? what : `${what} (${place.unit})`;
}

function beyondLines({ below, above }: LimitMoved, form: "steps" | "changes"): readonly string[] {
  const parts = [
    ...(below > 0 ? [`below it for ${countOf(below, "point")}`] : []),
    ...(above > 0 ? [`above it for ${countOf(above, "point")}`] : []),
  ];
  const legend = form === "steps" ? paragraph('"<": a count is another than in the line before') : [];
  const beyond =
    parts.length === 0 ? [] : paragraph(`beyond this range more changes: ${parts.join(", ")}; see --from and --to`);
  return legend.length + beyond.length === 0 ? [] : ["", ...legend, ...beyond];
}
