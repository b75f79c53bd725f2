import { factName } from "../../facts/index.js";
import type { Finding, GroupRow, GroupShown } from "../../screening/index.js";
import { gravestFirst } from "./leading.js";
import { reasonOf } from "./reasons.js";
import type { RuleIndex } from "./rule-index.js";

/** Rows named where people read; the rest are counted, and stand in the result document. */
const ROWS_SHOWN = 12;

/** Which of the groups are meant. */
export interface OfGroups {
  /** Only groups with a row in one of these files; null for all. */
  readonly files: ReadonlySet<string> | null;
}

/** What one rule says of one group that does not pass. */
export interface GroupFinding {
  readonly group: GroupShown;
  readonly finding: Finding;
}

const OUTCOMES: readonly Finding["outcome"][] = ["fail", "warn", "undecided", "no-limit-in-force"];

/** What keeps groups from passing: all that fails before all that warns, then what is open; else in their order. */
export function* groupFindings(
  groups: readonly GroupShown[],
  rules: RuleIndex,
  { files }: OfGroups,
): Generator<GroupFinding> {
  const own = files === null ? groups : groups.filter(({ rows }) => rows.some(({ file }) => files.has(file)));
  // Findings are made when they are asked for; keeping those of tens of thousands of groups would take much room.
  const places = own.flatMap(({ findings }, at) =>
    [...new Set(gravestFirst(findings, rules).map(({ outcome }) => outcome))].map((outcome) => ({ at, outcome })),
  );
  for (const outcome of OUTCOMES) {
    for (const { at } of places.filter((place) => place.outcome === outcome)) {
      const group = own[at];
      if (!group) continue;
      for (const finding of gravestFirst(group.findings, rules)) {
        if (finding.outcome === outcome) yield { group, finding };
      }
    }
  }
}

/** Why, and where rows contradict each other, in which cells. */
export function groupReasonOf({ group, finding }: GroupFinding, rules: RuleIndex): string {
  const said = group.disagreements.flatMap(({ fact, values }) => {
    if (!finding.missing.some((one) => one.fact === fact && one.reason === "conflicting")) return [];
    const stated = values.map(({ value, rows, cells }) => {
      const more = rows > cells.length ? " and more" : "";
      return cells.length === 0 ? value : `${value} in ${cells.map(({ cell }) => cell).join(", ")}${more}`;
    });
    return [`${factName(fact)}: ${stated.join("; ")}`];
  });
  return [reasonOf(finding, rules), ...said].join("; ");
}

/**
 * Where the rows of a group stand: the first of them, rows that follow each other as one ("rows 11 to 14, 17"), the
 * rest counted.
 *
 * @param files - whether the run has several files, so that each must be named
 */
export function rowsOfGroupInWords(rows: readonly GroupRow[], files: boolean): string {
  const shown = rows.slice(0, ROWS_SHOWN);
  const sheets = new Map<string, number[]>();
  for (const { file, sheet, row } of shown) {
    const place = [...(files ? [file] : []), ...(sheet === null ? [] : [sheet])].join(" > ");
    sheets.set(place, [...(sheets.get(place) ?? []), row]);
  }
  const words = [...sheets].map(([place, numbers]) => {
    const which = `${numbers.length === 1 ? "row" : "rows"} ${stretchesOf(numbers).join(", ")}`;
    return place === "" ? which : `${place}, ${which}`;
  });
  const more = rows.length - shown.length;
  return [...words, ...(more > 0 ? [`and ${more} more`] : [])].join("; ");
}

function stretchesOf(numbers: readonly number[]): readonly string[] {
  const stretches: [first: number, last: number][] = [];
  for (const number of numbers) {
    const last = stretches.at(-1);
    if (last && number === last[1] + 1) last[1] = number;
    else stretches.push([number, number]);
  }
  return stretches.map(([first, last]) => (first === last ? `${first}` : `${first} to ${last}`));
}
