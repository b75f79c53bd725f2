/**
 * The points of a report as its page holds them: every text once, everything else by its place among the texts. Text 0
 * is the empty one. What thousands of points have in common, a finding in all but its cells, stands once too.
 */
export interface ReportData {
  /** Some are put together from others, told by their places. */
  readonly texts: readonly (string | readonly number[])[];
  /** Ids and titles. */
  readonly rules: readonly (readonly [id: number, title: number])[];
  readonly files: readonly number[];
  /** Names; 0 for a text table, which has no sheets. */
  readonly sheets: readonly number[];
  readonly findings: readonly FindingData[];
  /** Names of machines with their tags, in the order of the survey. */
  readonly machines: readonly number[];
  readonly points: readonly PointData[];
  readonly groups: readonly GroupData[];
}

/** A finding without its cells. All but outcome and fraction are places; `facts` are texts such as "hole depth 14 mm". */
export type FindingData = readonly [
  rule: number,
  outcome: number,
  message: number,
  limit: number,
  source: number,
  remedy: number,
  margin: number,
  missing: number,
  accepted: number,
  group: number,
  /** Margin as a fraction of the limit. */
  fraction: number | null,
  /** How well its sources are founded; on paper they are told in full with the rule. */
  bases: number,
  ...facts: readonly number[],
];

/** Findings with the cells of each of their facts: place, cells, place, cells, … */
export type FindingsData = readonly (number | string)[];

/** A point; its findings begin at `POINT_FINDINGS`. */
export type PointData = readonly [
  machine: number,
  /** In words, without the machine. */
  label: number,
  /** As the survey names it. */
  name: number,
  id: string,
  file: number,
  sheet: number,
  row: number,
  verdict: number,
  accepted: 0 | 1,
  /** What another mounting method would do. */
  other: number,
  /** Every method tried, line by line. */
  tried: number,
  settledBy: number,
  ...findings: FindingsData,
];

/** A group; its findings begin at `GROUP_FINDINGS`. */
export type GroupData = readonly [
  /** What the rows have in common. */
  title: number,
  id: number,
  rows: number,
  /** Cells that contradict each other. */
  disagreements: number,
  /** Rows that may belong to it and are not counted. */
  notCounted: number,
  ...findings: FindingsData,
];

/** Where the findings of a point begin. */
export const POINT_FINDINGS = 12;
/** Where the findings of a group begin. */
export const GROUP_FINDINGS = 5;

/** Outcomes by their number in the data, the gravest first. */
export const OUTCOMES = ["fail", "warn", "undecided", "no-limit-in-force", "pass", "not-applicable"] as const;

/** The text at a place; empty where there is none. */
export function textAt(data: Pick<ReportData, "texts">, place: number): string {
  const text = data.texts[place] ?? "";
  return typeof text === "string" ? text : text.map((piece) => textAt(data, piece)).join("");
}
