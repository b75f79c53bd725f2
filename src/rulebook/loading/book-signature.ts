import { canonicalJson, type TextFile } from "../../base/index.js";
import type { FileFinding } from "../book/rulebook.js";
import { SIGNATURE_SCHEMA } from "../schemas/index.js";
import { checkSchema } from "../text/check-schema.js";
import { RULEBOOK_LIMITS } from "../text/file-limits.js";
import { readYaml } from "../text/read-yaml.js";
import { Report } from "../text/source.js";

/** Name of the file that holds the signature of a rulebook folder; loading the rulebook passes it over. */
export const SIGNATURE_FILE = "rulebook.sig";

/** What is signed: which rulebook, and what the signer says of it. */
export interface SignedBook {
  readonly name: string;
  readonly version: string;
  /** SHA-256 of the canonical JSON of all data of the rulebook. */
  readonly digest: string;
  /** Who signs, and what for, in the words of the signer. */
  readonly says: string;
}

/** A signature as its file holds it; whether it is true only a key can tell. */
export interface BookSignature extends SignedBook {
  /** Fingerprint of the public key. */
  readonly key: string;
  /** Base64. */
  readonly signature: string;
}

/** A signature, or what is wrong with its file. */
export type SignatureReading =
  | { readonly ok: true; readonly signature: BookSignature }
  | { readonly ok: false; readonly findings: readonly FileFinding[] };

const ALGORITHM = "ed25519";

/**
 * The text that is signed: canonical JSON, with a word of its own so that a signature for something else is never
 * taken for one of a rulebook.
 */
export function textToSign({ name, version, digest, says }: SignedBook): string {
  return canonicalJson({ signs: "spotface rulebook", algorithm: ALGORITHM, name, version, digest, says });
}

/** A signature as the text of its file: YAML, all texts in quotes. */
export function signatureText({ name, version, digest, says, key, signature }: BookSignature): string {
  const lines = Object.entries({ name, version, digest, says, key, signature }).map(
    ([field, value]) => `${field}: ${JSON.stringify(value)}\n`,
  );
  return `# Written by spotface sign-rulebook. Any change to the rulebook makes it void.\nalgorithm: ${ALGORITHM}\n${lines.join("")}`;
}

/** Reads the file of a signature. */
export function readSignatureFile(file: TextFile): SignatureReading {
  const reading = readYaml(file, RULEBOOK_LIMITS);
  if (!reading.ok) return reading;
  const findings: FileFinding[] = [];
  if (!checkSchema(reading.source, SIGNATURE_SCHEMA, new Report(reading.source, findings))) {
    return { ok: false, findings };
  }
  return { ok: true, signature: reading.source.data as BookSignature };
}
