import { statSync } from "node:fs";
import type { Outcome, PlainDay, Stage, Verdict } from "../base/index.js";
import type { PointCompared, RunCompared } from "../comparing/index.js";
import { COMPARED_HEAD_SCHEMA, COMPARED_POINT_SCHEMA } from "../outputs/index.js";
import type { Screening } from "../screening/index.js";
import { openStored, storedForm } from "./open-stored.js";

/** What stands before the points, as far as the schema has checked it. */
interface StoredHead {
  readonly digest: string;
  readonly asOf: PlainDay;
  readonly stage: Stage;
  readonly set: string;
  readonly rulebook: {
    readonly name: string;
    readonly version: string;
    readonly digest: string;
    readonly overlays?: readonly { readonly name: string; readonly version: string }[];
  };
  readonly site: { readonly name: string | null; readonly file: string | null };
  readonly surveys: readonly { readonly file: string; readonly digest: string }[];
}

/** A point, as far as the schema has checked it. */
interface StoredPoint {
  readonly id: string | null;
  readonly point: string | null;
  readonly file: string;
  readonly sheet: string | null;
  readonly row: number;
  readonly verdict: Verdict;
  readonly findings: readonly { readonly rule: string; readonly outcome: Outcome; readonly message: string | null }[];
}

/** One side of a comparison. */
export interface ComparedSide {
  readonly run: RunCompared;
  /** @throws StoredMistake where a stored result is not what it should be */
  points(): Iterable<PointCompared>;
}

/** A stored result, and the site file that its run was given. */
export interface StoredSide extends ComparedSide {
  readonly siteFile: string | null;
}

const FORM = storedForm<StoredHead, StoredPoint>(COMPARED_HEAD_SCHEMA, COMPARED_POINT_SCHEMA);

/** Whether what is given for a side is a stored result; a rulebook is a folder, or FOLDER@COMMIT. */
export function isStoredResult(path: string): boolean {
  const found = statSync(path, { throwIfNoEntry: false });
  return found === undefined ? /\.(?:nd)?json$/i.test(path) : found.isFile();
}

/**
 * Opens a stored result as one side of a comparison.
 *
 * @param maxBytes - size above which the file is refused
 * @throws StoredMistake where it cannot be read or is none
 */
export async function storedSide(path: string, maxBytes: number): Promise<StoredSide> {
  const { file, digest, head, points } = await openStored(path, maxBytes, FORM);
  const { name, version, digest: ofBook, overlays = [] } = head.rulebook;
  return {
    run: {
      stored: { file, digest },
      digest: head.digest,
      asOf: head.asOf,
      stage: head.stage,
      set: head.set,
      rulebook: { name, version, digest: ofBook, overlays: overlays.map(named) },
      site: head.site.name,
      surveys: head.surveys.map((survey) => ({ file: survey.file, digest: survey.digest })),
    },
    siteFile: head.site.file,
    points,
  };
}

function named({ name, version }: { readonly name: string; readonly version: string }) {
  return { name, version };
}

/** A run of now as one side of a comparison. */
export function screenedSide(screening: Screening): ComparedSide {
  const { digest, asOf, stage, set, rulebook, site, surveys } = screening.head;
  return {
    run: {
      stored: null,
      digest,
      asOf,
      stage,
      set,
      rulebook: { ...named(rulebook), digest: rulebook.digest, overlays: rulebook.overlays.map(named) },
      site: site.name,
      surveys: surveys.map((survey) => ({ file: survey.file, digest: survey.digest })),
    },
    points: () => screening.points(),
  };
}
