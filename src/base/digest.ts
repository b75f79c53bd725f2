import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import canonicalize from "canonicalize";

/** SHA-256 of bytes, lower-case hexadecimal. */
export function sha256OfBytes(bytes: Uint8Array): string {
  return bytesToHex(sha256(bytes));
}

/**
 * Plain data as canonical JSON (RFC 8785): the same text for the same data, whatever the order of its keys.
 *
 * @throws TypeError if the data has no JSON form; callers hand in plain data only
 */
export function canonicalJson(data: unknown): string {
  const text = canonicalize(data);
  if (text === undefined) throw new TypeError("data without a JSON form cannot be digested");
  return text;
}

/**
 * SHA-256 of the canonical JSON (RFC 8785) of plain data, lower-case hexadecimal.
 *
 * @throws TypeError if the data has no JSON form; callers hand in plain data only
 */
export function sha256OfData(data: unknown): string {
  return bytesToHex(sha256(utf8ToBytes(canonicalJson(data))));
}

/** Levels of lists and objects that are taken apart; a row of a table of a document lies below. */
const TAKEN_APART = 4;

/**
 * The same digest as `sha256OfData`, for data whose canonical JSON would be a text of a hundred megabytes: it is made and
 * digested piece by piece.
 *
 * @throws TypeError if the data has no JSON form; callers hand in plain data only
 */
export function sha256OfLargeData(data: unknown): string {
  const hash = sha256.create();
  for (const piece of canonicalPieces(data, TAKEN_APART)) hash.update(utf8ToBytes(piece));
  return bytesToHex(hash.digest());
}

function* canonicalPieces(data: unknown, levels: number): IterableIterator<string> {
  if (levels === 0 || typeof data !== "object" || data === null) {
    yield canonicalJson(data);
    return;
  }
  const isList = Array.isArray(data);
  yield isList ? "[" : "{";
  // By UTF-16 units, as RFC 8785 sorts keys; a property without a value is none.
  const entries: readonly (readonly [string, unknown])[] = isList
    ? data.map((item: unknown) => ["", item])
    : Object.keys(data)
        .sort()
        .map((key) => [key, Reflect.get(data, key)] as const)
        .filter(([, value]) => value !== undefined);
  let between = "";
  for (const [key, value] of entries) {
    yield isList ? between : `${between}${canonicalJson(key)}:`;
    yield* canonicalPieces(value, levels - 1);
    between = ",";
  }
  yield isList ? "]" : "}";
}
