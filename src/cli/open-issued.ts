import type { Outcome, Verdict } from "../base/index.js";
import { type IssuedPoint, type IssuedResult, worseOf } from "../built/index.js";
import { ISSUED_HEAD_SCHEMA, ISSUED_POINT_SCHEMA } from "../outputs/index.js";
import { openStored, StoredMistake, type StoredResult, storedForm } from "./open-stored.js";

/** What stands before the points, as far as the schema has checked it. */
interface IssuedHead {
  readonly digest: string;
  readonly asOf: string;
  readonly set: string;
  readonly rulebook: { readonly name: string; readonly version: string; readonly digest: string };
  readonly surveys: readonly { readonly file: string; readonly digest: string }[];
  readonly rules: readonly { readonly id: string; readonly undecided: "warn" | "fail" }[];
}

/** A point, as far as the schema has checked it. */
interface PointChecked {
  readonly id: string | null;
  readonly point: string | null;
  readonly verdict: Verdict;
  readonly findings: readonly { readonly rule: string; readonly outcome: Outcome; readonly message: string | null }[];
}

/** The stored result, or what is wrong with its file, each in one sentence. */
export type IssuedOpening =
  | { readonly ok: true; readonly issued: IssuedResult }
  | { readonly ok: false; readonly problems: readonly string[] };

const FORM = storedForm<IssuedHead, PointChecked>(ISSUED_HEAD_SCHEMA, ISSUED_POINT_SCHEMA);

/**
 * Opens a stored result document under which orders were issued. Nothing of it is taken on trust: its form is checked,
 * and what is not compared is dropped point by point.
 *
 * @param maxBytes - size above which the file is refused
 */
export async function openIssued(path: string, maxBytes: number): Promise<IssuedOpening> {
  try {
    return { ok: true, issued: issuedOf(await openStored(path, maxBytes, FORM)) };
  } catch (error) {
    if (error instanceof StoredMistake) return { ok: false, problems: error.problems };
    throw error;
  }
}

function issuedOf({ file, digest, head, points }: StoredResult<IssuedHead, PointChecked>): IssuedResult {
  const kept = new Map<string, IssuedPoint>();
  const texts = new Map<string | null, string | null>();
  for (const one of points()) {
    const { id, point, verdict } = one;
    const findings = one.findings.map(({ rule, outcome, message }) => {
      // Thousands of points say few different things; each is kept once.
      const text = texts.get(message) ?? message;
      texts.set(message, text);
      return { rule, outcome, message: text };
    });
    if (id !== null) kept.set(id, worseOf(kept.get(id), { point, verdict, findings }));
  }
  const { name, version, digest: ofRulebook } = head.rulebook;
  return {
    file,
    digest,
    run: head.digest,
    asOf: head.asOf,
    set: head.set,
    rulebook: { name, version, digest: ofRulebook },
    surveys: head.surveys.map((survey) => ({ file: survey.file, digest: survey.digest })),
    gates: new Set(head.rules.filter(({ undecided }) => undecided === "fail").map(({ id }) => id)),
    points: kept,
  };
}
