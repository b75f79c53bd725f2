import type { PlainDay, Verdict } from "../base/index.js";
import type { Survey } from "../records/index.js";
import type { Rulebook } from "../rulebook/index.js";
import type { IssuedShown } from "./result.js";
import type { RowsById } from "./rows.js";
import type { VerdictSaid } from "./turned.js";

/** A point of a stored result. */
export interface IssuedPoint extends VerdictSaid {
  readonly point: string | null;
}

/** A stored result document under which orders were issued, as far as it is compared. */
export interface IssuedResult {
  readonly file: string;
  /** SHA-256 of the file. */
  readonly digest: string;
  /** Digest of the run that it is of. */
  readonly run: string;
  readonly asOf: PlainDay;
  readonly set: string;
  readonly rulebook: { readonly name: string; readonly version: string; readonly digest: string };
  readonly surveys: readonly { readonly file: string; readonly digest: string }[];
  /** Rules that counted an open question as a fail. */
  readonly gates: ReadonlySet<string>;
  /** By id; of an id that stands twice, the worst verdict. */
  readonly points: ReadonlyMap<string, IssuedPoint>;
}

const RANK: Readonly<Record<Verdict, number>> = { pass: 0, warn: 1, fail: 2 };

/** The worse of two verdicts on a point that stands twice in a result. */
export function worseOf(one: IssuedPoint | undefined, other: IssuedPoint): IssuedPoint {
  return one !== undefined && RANK[one.verdict] >= RANK[other.verdict] ? one : other;
}

/** What is told of a stored result beside the rulebook, surveys and points of today. */
export function issuedShown(
  issued: IssuedResult,
  rulebook: Rulebook,
  surveys: readonly Survey[],
  proposed: RowsById,
): IssuedShown {
  const { file, digest, run, asOf, set } = issued;
  // A survey may lie elsewhere by now; the same bytes are the same survey.
  const now = (survey: { readonly file: string; readonly digest: string }): string | null =>
    (surveys.find(({ digest: one }) => one === survey.digest) ?? surveys.find((one) => one.file === survey.file))
      ?.digest ?? null;
  const gone: IssuedShown["gone"][number][] = [];
  for (const [id, { point, verdict }] of issued.points) {
    if (proposed.of(id).length === 0) gone.push({ id, point, verdict });
  }
  return {
    file,
    digest,
    run,
    asOf,
    set,
    rulebook: issued.rulebook,
    rulebookChanged: issued.rulebook.digest !== rulebook.digest,
    surveys: issued.surveys.map((survey) => ({ ...survey, now: now(survey) })),
    gone,
  };
}
