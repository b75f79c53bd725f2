import { Ajv2020, type ErrorObject, type ValidateFunction } from "ajv/dist/2020.js";
import { isPlainDay, sha256OfBytes, showText } from "../base/index.js";
import { readSurveyFile } from "../disk/index.js";
import type { SchemaPart } from "../outputs/index.js";
import { documentPieces } from "./document-pieces.js";
import { shownFile } from "./open-surveys.js";

/** A stored result document, its head checked; its points are checked one by one while they are iterated. */
export interface StoredResult<Head, Point> {
  /** Path as results show it. */
  readonly file: string;
  /** SHA-256 of the file. */
  readonly digest: string;
  readonly head: Head;
  /** @throws StoredMistake where a point is no point, or the file breaks off */
  points(): Iterable<Point>;
}

/** The form that is asked of a stored result: of what stands before the points, and of each point. */
export interface StoredForm<Head, Point> {
  readonly head: ValidateFunction<Head>;
  readonly point: ValidateFunction<Point>;
}

/** Something is wrong with a stored result. */
export class StoredMistake extends Error {
  /** Each in one sentence, with the file. */
  readonly problems: readonly string[];

  constructor(problems: readonly string[]) {
    super(problems.join("\n"));
    this.problems = problems;
  }
}

/** Mistakes named; a document of another kind has thousands. */
const MOST_NAMED = 5;
const EXPECTED = "hand in the result document that spotface screen writes with --result, --json or --ndjson";

const ajv = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true, verbose: true });

/** Makes the form ready that two schemas describe. */
export function storedForm<Head, Point>(head: SchemaPart, point: SchemaPart): StoredForm<Head, Point> {
  return { head: ajv.compile<Head>(head), point: ajv.compile<Point>(point) };
}

/**
 * Opens a stored result document. Nothing of it is taken on trust: its form is checked, point by point.
 *
 * @param maxBytes - size above which the file is refused
 * @throws StoredMistake where it cannot be read or is none
 */
export async function openStored<Head extends { readonly asOf: string }, Point>(
  path: string,
  maxBytes: number,
  form: StoredForm<Head, Point>,
): Promise<StoredResult<Head, Point>> {
  const file = shownFile(path);
  const read = await readSurveyFile(path, maxBytes);
  if (!read.ok) throw new StoredMistake([`${file}: ${read.error.text}`]);
  const { head, points } = mended(file, () => documentPieces(read.bytes));
  if (!form.head(head)) throw new StoredMistake(mistakes(file, "", form.head.errors ?? []));
  if (!isPlainDay(head.asOf)) {
    throw new StoredMistake([`${file}: /asOf: found "${head.asOf}", which is not a day that exists; ${EXPECTED}`]);
  }
  return {
    file,
    digest: sha256OfBytes(read.bytes),
    head,
    points: function* () {
      const pieces = points()[Symbol.iterator]();
      for (let i = 0; ; i++) {
        const next = mended(file, () => pieces.next());
        if (next.done) return;
        const point = next.value;
        if (!form.point(point)) throw new StoredMistake(mistakes(file, `/points/${i}`, form.point.errors ?? []));
        yield point;
      }
    },
  };
}

/** What JSON and UTF-8 complain of, as a sentence about the file. */
function mended<Thing>(file: string, read: () => Thing): Thing {
  try {
    return read();
  } catch (error) {
    if (!(error instanceof SyntaxError || error instanceof TypeError)) throw error;
    throw new StoredMistake([`${file}: it is not JSON in UTF-8, or it breaks off; ${EXPECTED}`]);
  }
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
