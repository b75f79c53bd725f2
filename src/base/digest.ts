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
