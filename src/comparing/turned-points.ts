import type { Outcome, Verdict } from "../base/index.js";
import type { Finding, PointResult } from "../screening/index.js";

/** A point as two results are compared by. */
export type PointCompared = Pick<PointResult, "id" | "point" | "file" | "sheet" | "row" | "verdict"> & {
  readonly findings: readonly Pick<Finding, "rule" | "outcome" | "message">[];
};

/** A finding that came out otherwise; null where the rule passes or does not apply, which results need not list. */
export interface FindingTurned {
  readonly rule: string;
  readonly before: Outcome | null;
  readonly after: Outcome | null;
  /** What the newer finding says, or the older one where it is gone. */
  readonly message: string | null;
}

/** A point whose verdict or findings are others. */
export interface PointTurned {
  readonly id: string | null;
  readonly point: string | null;
  readonly file: string;
  readonly sheet: string | null;
  readonly row: number;
  readonly before: Verdict;
  readonly after: Verdict;
  readonly findings: readonly FindingTurned[];
}

/** How many points a rule turned in one way. */
export interface Turn {
  readonly rule: string;
  readonly before: Outcome | null;
  readonly after: Outcome | null;
  readonly points: number;
}

/** What turned between two results on the same points. */
export interface Turned {
  readonly points: number;
  readonly turned: readonly PointTurned[];
  /** By rule and way, most points first. */
  readonly byRule: readonly Turn[];
  readonly verdicts: readonly { readonly before: Verdict; readonly after: Verdict; readonly points: number }[];
  /** Points that only one of the results has. */
  readonly onlyBefore: number;
  readonly onlyAfter: number;
}

/** Outcomes that a result need not list. */
const CLEAR: ReadonlySet<Outcome | null> = new Set([null, "pass", "not-applicable"]);

/** What survey a file of a result is, by whatever text tells surveys apart. */
export type SurveyNamed = (file: string) => string;

const BY_FILE: SurveyNamed = (file) => file;

/**
 * Compares two results point by point. Points are matched by their id, those without one by survey, sheet and row.
 *
 * @param before - iterated to its end before `after` is begun
 * @param surveys - which survey a file is in each of them; left out: the file's name says it
 */
export function compareResults(
  before: Iterable<PointCompared>,
  after: Iterable<PointCompared>,
  surveys: { readonly before: SurveyNamed; readonly after: SurveyNamed } = { before: BY_FILE, after: BY_FILE },
): Turned {
  const older = new Map<string, PointCompared>();
  const [keyBefore, keyAfter] = [keys(surveys.before), keys(surveys.after)];
  for (const point of before) older.set(keyBefore(point), slimmed(point));
  const turned: PointTurned[] = [];
  const turns = new Map<string, { -readonly [K in keyof Turn]: Turn[K] }>();
  const verdicts = new Map<string, { before: Verdict; after: Verdict; points: number }>();
  let points = 0;
  let onlyAfter = 0;
  for (const point of after) {
    const key = keyAfter(point);
    const old = older.get(key);
    if (!old) {
      onlyAfter += 1;
      continue;
    }
    older.delete(key);
    points += 1;
    const findings = findingsTurned(old, point);
    for (const { rule, before: from, after: to } of findings) {
      const way = `${rule} ${from} ${to}`;
      const turn = turns.get(way) ?? { rule, before: from, after: to, points: 0 };
      turn.points += 1;
      turns.set(way, turn);
    }
    if (old.verdict !== point.verdict) {
      const way = `${old.verdict} ${point.verdict}`;
      const count = verdicts.get(way) ?? { before: old.verdict, after: point.verdict, points: 0 };
      count.points += 1;
      verdicts.set(way, count);
    }
    if (findings.length === 0 && old.verdict === point.verdict) continue;
    const { id, point: name, file, sheet, row } = point;
    turned.push({ id, point: name, file, sheet, row, before: old.verdict, after: point.verdict, findings });
  }
  return {
    points,
    turned,
    byRule: [...turns.values()].sort((a, b) => b.points - a.points || (a.rule < b.rule ? -1 : 1)),
    verdicts: [...verdicts.values()].sort((a, b) => b.points - a.points),
    onlyBefore: older.size,
    onlyAfter,
  };
}

/** Numbers points that share an id, or have none, so that each finds its like in a result of the same surveys. */
function keys(surveyOf: SurveyNamed): (point: PointCompared) => string {
  const seen = new Map<string, number>();
  return ({ id, file, sheet, row }) => {
    const key = id ?? JSON.stringify([surveyOf(file), sheet, row]);
    const count = (seen.get(key) ?? 0) + 1;
    seen.set(key, count);
    return count === 1 ? key : `${key} ${count}`;
  };
}

/** Of the older result only what is compared is kept. */
function slimmed({ findings, ...point }: PointCompared): PointCompared {
  const listed = findings.filter(({ outcome }) => !CLEAR.has(outcome));
  return { ...point, findings: listed.map(({ rule, outcome, message }) => ({ rule, outcome, message })) };
}

function findingsTurned(before: PointCompared, after: PointCompared): readonly FindingTurned[] {
  const old = new Map(before.findings.map((finding) => [finding.rule, finding]));
  const fresh = new Map(after.findings.map((finding) => [finding.rule, finding]));
  const outcomeIn = (findings: typeof old, rule: string): Outcome | null => {
    const outcome = findings.get(rule)?.outcome ?? null;
    return CLEAR.has(outcome) ? null : outcome;
  };
  return [...new Set([...old.keys(), ...fresh.keys()])].flatMap((rule): FindingTurned[] => {
    const [from, to] = [outcomeIn(old, rule), outcomeIn(fresh, rule)];
    if (from === to) return [];
    return [{ rule, before: from, after: to, message: (fresh.get(rule) ?? old.get(rule))?.message ?? null }];
  });
}
