import type { Command } from "commander";
import { z } from "zod";
import { showText, type TextFile } from "../base/index.js";
import { type FileFinding, readSignatureFile, type SignedBook, textToSign } from "../rulebook/index.js";
import { fingerprintOf, isSignedBy, readPublicKey } from "./signing-keys.js";

/** Files of public keys of which one must have signed the rulebook; none where nobody asks. */
export const TRUST_OPTION = { trust: z.array(z.string()).default([]) };

/** Adds the option that asks for a signed rulebook. */
export function addTrustOption(command: Command): Command {
  return command.option(
    "--trust <file>",
    "public key (PEM) that must have signed the rulebook; repeatable, one of them is enough",
    (path: string, before: readonly string[] = []): readonly string[] => [...before, path],
  );
}

/** `rulebook.sig` of a folder; the text is null where there is none. */
export interface SignatureText {
  readonly path: string;
  readonly text: string | null;
}

/** By whom a rulebook is signed, or why it is not trusted. */
export type TrustChecked =
  | { readonly ok: true; readonly signedBy: string }
  | { readonly ok: false; readonly findings: readonly FileFinding[] };

const NOT_TRUSTED = "not-trusted";

/** Whether findings are about the signature of a rulebook, and none about the rulebook itself. */
export function isAboutTrust(findings: readonly FileFinding[]): boolean {
  return findings.every(({ code }) => code === NOT_TRUSTED);
}

/**
 * Checks the signature of a rulebook, or of a folder that is laid over one: each folder is signed for itself.
 *
 * @param book - name, version and digest as they were loaded
 * @param trust - files of public keys
 */
export async function checkTrust(
  book: Omit<SignedBook, "says">,
  file: SignatureText,
  trust: readonly string[],
): Promise<TrustChecked> {
  const refuse = (text: string, path = file.path): TrustChecked => ({
    ok: false,
    findings: [{ file: path, line: 1, column: 1, code: NOT_TRUSTED, text }],
  });
  const keys = await Promise.all(trust.map(readPublicKey));
  for (const reading of keys) if (!reading.ok) return refuse(reading.text, reading.path);
  if (file.text === null) {
    return refuse(
      "there is no signature that can be read, and --trust asks for one; sign the rulebook with spotface sign-rulebook, or get the signed one",
    );
  }
  const reading = readSignatureFile(file as TextFile);
  if (!reading.ok) return { ok: false, findings: reading.findings.map((one) => ({ ...one, code: NOT_TRUSTED })) };
  const { signature } = reading;
  const trusted = keys.flatMap((one) => (one.ok ? [one.key] : [])).find((key) => fingerprintOf(key) === signature.key);
  if (!trusted) {
    return refuse(
      `it is signed by another key, ${signature.key} ("${showText(signature.says)}"); ask whose that is, and only then give that key with --trust`,
    );
  }
  if (!isSignedBy(textToSign(signature), signature.signature, trusted)) {
    return refuse(
      "the signature does not match what this file says, so one of them was changed; get the file from the signer again",
    );
  }
  if (signature.name !== book.name || signature.version !== book.version) {
    return refuse(
      `it is over version ${signature.version} of "${showText(signature.name)}", and this is version ${book.version} of "${showText(book.name)}"; get the signature of this one, or the rulebook that was signed`,
    );
  }
  if (signature.digest !== book.digest) {
    return refuse(
      `the rulebook was changed after it was signed: its digest is ${book.digest}, signed was ${signature.digest}; take the change back, or give it a version of its own and have that signed`,
    );
  }
  return { ok: true, signedBy: signature.key };
}
