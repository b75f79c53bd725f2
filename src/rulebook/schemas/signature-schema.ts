import { DIALECT, type JsonSchema, TEXT } from "./parts.js";

const SHA256 = "[0-9a-f]{64}";

/** The signature of a released rulebook. */
export const SIGNATURE_SCHEMA: JsonSchema = {
  $schema: DIALECT,
  title: "signature of a rulebook",
  description: "Detached signature of a released rulebook, written by spotface sign-rulebook; not edited by hand.",
  type: "object",
  properties: {
    algorithm: { title: "algorithm", description: "How it is signed.", type: "string", enum: ["ed25519"] },
    name: { ...TEXT, description: "Name of the rulebook, as its manifest states it." },
    version: { ...TEXT, description: "Version of the rulebook, as its manifest states it." },
    digest: {
      title: "digest",
      description: "SHA-256 of the canonical JSON of all data of the rulebook.",
      type: "string",
      pattern: `^${SHA256}$`,
      $comment: "64 hexadecimal digits in lower case",
    },
    says: { ...TEXT, description: "Who signs, and what the signature stands for, in the words of the signer." },
    key: {
      title: "fingerprint",
      description: "Fingerprint of the public key: SHA-256 of its DER form.",
      type: "string",
      pattern: `^sha256:${SHA256}$`,
      $comment: "sha256: and 64 hexadecimal digits in lower case",
    },
    signature: {
      title: "signature",
      description: "The signature in base64, over the canonical JSON of algorithm, name, version, digest and says.",
      type: "string",
      pattern: "^[A-Za-z0-9+/]{86}==$",
      $comment: "88 characters of base64",
    },
  },
  required: ["algorithm", "name", "version", "digest", "says", "key", "signature"],
  additionalProperties: false,
};
