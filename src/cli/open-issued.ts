import { Ajv2020, type ErrorObject } from "ajv/dist/2020.js";
import { isPlainDay, type Outcome, sha256OfBytes, showText, type Verdict } from "../base/index.js";
import { type IssuedPoint, type IssuedResult, worseOf } from "../built/index.js";
import { readSurveyFile } from "../disk/index.js";
import { ISSUED_SCHEMA } from "../outputs/index.js";
import { shownFile } from "./open-surveys.js";

/** The parts of a result document that the schema has checked. */
interface IssuedDocument {
  readonly digest: string;
  readonly asOf: string;
  readonly set: string;
  readonly rulebook: { readonly name: string; readonly version: string; readonly digest: string };
  readonly surveys: readonly { readonly file: string; readonly digest: string }[];
  readonly rules: readonly { readonly id: string; readonly undecided: "warn" | "fail" }[];
  readonly points: readonly {
    readonly id: string | null;
    readonly point: string | null;
    readonly verdict: Verdict;
    readonly findings: readonly {
      readonly rule: string;
      readonly outcome: Outcome;
      readonly message: string | null;
    }[];
  }[];
}

/** The stored result, or what is wrong with its file, each in one sentence. */
export type IssuedOpening =
  | { readonly ok: true; readonly issued: IssuedResult }
  | { readonly ok: false; readonly problems: readonly string[] };

/** Mistakes named; a document of another kind has thousands. */
const MOST_NAMED = 5;
const EXPECTED = "hand in the result document that spotface screen writes with --result or --json";

const validate = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true, verbose: true }).compile(
  ISSUED_SCHEMA,
);

/**
 * Opens a stored result document. Nothing of it is taken on trust: its form is checked, and what is not compared is
 * dropped.
 *
 * @param maxBytes - size above which the file is refused
 */
export async function openIssued(path: string, maxBytes: number): Promise<IssuedOpening> {
  const file = shownFile(path);
  const read = await readSurveyFile(path, maxBytes);
  if (!read.ok) return { ok: false, problems: [`${file}: ${read.error.text}`] };
  const data = parsed(read.bytes);
  if (data === undefined)
    return { ok: false, problems: [`${file}: it is not one JSON document in UTF-8; ${EXPECTED}`] };
  if (!isIssued(data)) return { ok: false, problems: mistakes(file, validate.errors ?? []) };
  if (!isPlainDay(data.asOf)) {
    return {
      ok: false,
      problems: [`${file}: /asOf: found "${data.asOf}", which is not a day that exists; ${EXPECTED}`],
    };
  }
  return { ok: true, issued: issuedOf(data, file, sha256OfBytes(read.bytes)) };
}

function parsed(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder("utf-8", { fatal: true }).decode(bytes));
  } catch {
    return undefined;
  }
}

function isIssued(data: unknown): data is IssuedDocument {
  return validate(data);
}

function mistakes(file: string, errors: readonly ErrorObject[]): readonly string[] {
  const lines = errors.slice(0, MOST_NAMED).map((error) => {
    const place = error.instancePath === "" ? "the document" : showText(error.instancePath);
    return `${file}: ${place}: ${mistake(error)}; ${EXPECTED}`;
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

function issuedOf(document: IssuedDocument, file: string, digest: string): IssuedResult {
  const points = new Map<string, IssuedPoint>();
  for (const { id, point, verdict, findings } of document.points) {
    if (id === null) continue;
    const kept = findings.map(({ rule, outcome, message }) => ({ rule, outcome, message }));
    points.set(id, worseOf(points.get(id), { point, verdict, findings: kept }));
  }
  const { name, version, digest: ofRulebook } = document.rulebook;
  return {
    file,
    digest,
    run: document.digest,
    asOf: document.asOf,
    set: document.set,
    rulebook: { name, version, digest: ofRulebook },
    surveys: document.surveys.map((survey) => ({ file: survey.file, digest: survey.digest })),
    gates: new Set(document.rules.filter(({ undecided }) => undecided === "fail").map(({ id }) => id)),
    points,
  };
}
