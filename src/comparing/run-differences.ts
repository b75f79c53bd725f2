import type { PlainDay, Stage } from "../base/index.js";
import type { SurveyNamed } from "./turned-points.js";

/** A result, stored or made now, as far as it is told of in a comparison. */
export interface RunCompared {
  /** Path and digest of the stored result; null of one that is made now. */
  readonly stored: { readonly file: string; readonly digest: string } | null;
  /** Digest of the run. */
  readonly digest: string;
  readonly asOf: PlainDay;
  readonly stage: Stage;
  readonly set: string;
  readonly rulebook: {
    readonly name: string;
    readonly version: string;
    readonly digest: string;
    /** What lay over it, the lowest first; none of a result of a version that knew no overlays. */
    readonly overlays: readonly { readonly name: string; readonly version: string }[];
  };
  readonly site: string | null;
  readonly surveys: readonly { readonly file: string; readonly digest: string }[];
}

/** What two results differ in beside their points. */
export interface RunDifferences {
  readonly rulebook: boolean;
  readonly asOf: boolean;
  readonly set: boolean;
  readonly site: boolean;
  /** Surveys by the digest of their bytes, wherever they lie. */
  readonly surveysOnlyBefore: readonly string[];
  readonly surveysOnlyAfter: readonly string[];
}

/** Tells what two results rest on that is not the same: whatever turned may come from that. */
export function runDifferences(before: RunCompared, after: RunCompared): RunDifferences {
  const lacking = (one: RunCompared, other: RunCompared): readonly string[] => {
    const there = new Set(other.surveys.map(({ digest }) => digest));
    return one.surveys.filter(({ digest }) => !there.has(digest)).map(({ file }) => file);
  };
  return {
    rulebook: before.rulebook.digest !== after.rulebook.digest,
    asOf: before.asOf !== after.asOf,
    set: before.set !== after.set,
    site: before.site !== after.site,
    surveysOnlyBefore: lacking(before, after),
    surveysOnlyAfter: lacking(after, before),
  };
}

/** Surveys told apart by their bytes: a row is the same row only in the same file. */
export function surveysByDigest({ surveys }: Pick<RunCompared, "surveys">): SurveyNamed {
  const digests = new Map(surveys.map(({ file, digest }) => [file, digest]));
  return (file) => digests.get(file) ?? file;
}
