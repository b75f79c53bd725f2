import { Ajv2020, type ErrorObject, type ValidateFunction } from "ajv/dist/2020.js";
import { isPlainDay, type Outcome, sha256OfBytes, showText, type Verdict } from "../base/index.js";
import { type IssuedPoint, type IssuedResult, worseOf } from "../built/index.js";
import { readSurveyFile } from "../disk/index.js";
import { ISSUED_HEAD_SCHEMA, ISSUED_POINT_SCHEMA } from "../outputs/index.js";
import { type DocumentPieces, documentPieces } from "./document-pieces.js";
import { shownFile } from "./open-surveys.js";

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

/** Mistakes named; a document of another kind has thousands. */
const MOST_NAMED = 5;
const EXPECTED = "hand in the result document that spotface screen writes with --result, --json or --ndjson";

const ajv = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true, verbose: true });
const checkHead: ValidateFunction<IssuedHead> = ajv.compile<IssuedHead>(ISSUED_HEAD_SCHEMA);
const checkPoint: ValidateFunction<PointChecked> = ajv.compile<PointChecked>(ISSUED_POINT_SCHEMA);

/** Says what is wrong, and ends the reading. */
class Mistaken extends Error {
  readonly problems: readonly string[];

  constructor(problems: readonly string[]) {
    super(problems.join("\n"));
    this.problems = problems;
  }
}

/**
 * Opens a stored result document. Nothing of it is taken on trust: its form is checked, and what is not compared is
 * dropped point by point.
 *
 * @param maxBytes - size above which the file is refused
 */
export async function openIssued(path: string, maxBytes: number): Promise<IssuedOpening> {
  const file = shownFile(path);
  const read = await readSurveyFile(path, maxBytes);
  if (!read.ok) return { ok: false, problems: [`${file}: ${read.error.text}`] };
  try {
    return { ok: true, issued: issuedOf(documentPieces(read.bytes), file, sha256OfBytes(read.bytes)) };
  } catch (error) {
    if (error instanceof Mistaken) return { ok: false, problems: error.problems };
    if (!(error instanceof SyntaxError || error instanceof TypeError)) throw error;
    return { ok: false, problems: [`${file}: it is not JSON in UTF-8, or it breaks off; ${EXPECTED}`] };
  }
}

function issuedOf({ head, points }: DocumentPieces, file: string, digest: string): IssuedResult {
  if (!checkHead(head)) throw new Mistaken(mistakes(file, "", checkHead.errors ?? []));
  if (!isPlainDay(head.asOf)) {
    throw new Mistaken([`${file}: /asOf: found "${head.asOf}", which is not a day that exists; ${EXPECTED}`]);
  }
  const kept = new Map<string, IssuedPoint>();
  const texts = new Map<string | null, string | null>();
  let i = 0;
  for (const one of points()) {
    if (!checkPoint(one)) throw new Mistaken(mistakes(file, `/points/${i}`, checkPoint.errors ?? []));
    const { id, point, verdict } = one;
    const findings = one.findings.map(({ rule, outcome, message }) => {
      // Thousands of points say few different things; each is kept once.
      const text = texts.get(message) ?? message;
      texts.set(message, text);
      return { rule, outcome, message: text };
    });
    if (id !== null) kept.set(id, worseOf(kept.get(id), { point, verdict, findings }));
    i += 1;
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

function mistakes(file: string, at: string, errors: readonly ErrorObject[]): readonly string[] {
  const lines = errors.slice(0, MOST_NAMED).map((error) => {
    const path = at + error.instancePath;
    return `${file}: ${path === "" ? "the document" : showText(path)}: ${mistake(error)}; ${EXPECTED}`;
  });
  const more = errors.length - lines.length;
  return more > 0 ? [...lines, `${file}: and ${more} more of that kind`] : lines;
}

function mistake({ keyword, params, data, message }: ErrorObject): string {
  if (keyword === "required") return `"${String(params.missingProperty)}" is missing`;
  const found = typeof data === "object" ? "" : `found ${showText(JSON.stringify(data) ?? "nothing")}, expected `;
  if (keyword === "enum") return `${found}${(params.allowedValues as readonly unknown[]).join(", ")}`;
  return `${found}${keyword === "pattern" ? "another form" : (message ?? "another form")}`;
}
