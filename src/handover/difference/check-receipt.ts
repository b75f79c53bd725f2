import type { ExportedState } from "./exported-state.js";
import { digestOfState } from "./read-stored.js";
import type { ExportReceipt } from "./receipt.js";

/** What stands somewhere now: a digest, or one sentence why there is none. */
export type FoundNow = { readonly digest: string } | { readonly missing: string };

/** What the files and inputs of an export are now, in the order of the receipt. */
export interface ExportNow {
  readonly program: { readonly name: string; readonly version: string };
  readonly rulebook: FoundNow;
  readonly files: readonly FoundNow[];
  readonly sources: readonly FoundNow[];
  /** State with which was compared; null where the receipt names none. */
  readonly since: { readonly state: ExportedState } | { readonly missing: string } | null;
}

/**
 * Compares a receipt with what stands there now.
 *
 * @returns each deviation in one sentence that begins with the file; none where all is as it was
 */
export function deviationsFromReceipt(receipt: ExportReceipt, now: ExportNow): readonly string[] {
  const { source, since } = receipt;
  const { rulebook, program } = source;
  const book = `rulebook ${rulebook.folder ?? "of the program"}`;
  const all: (string | null)[] = [
    ...receipt.files.map(({ file, digest }, i) => deviation(file, digest, now.files[i], "it is not as it was written")),
    ...source.files.map(({ role, file, digest }, i) =>
      deviation(`${role} ${file}`, digest, now.sources[i], "it is not the one that went in"),
    ),
    deviation(book, rulebook.digest, now.rulebook, `it is not the one that went in (version ${rulebook.version})`),
    program.name === now.program.name && program.version === now.program.version
      ? null
      : `program: the export was made by ${program.name} ${program.version}, this is ${now.program.name} ${now.program.version}`,
  ];
  if (since !== null) all.push(stateMoved(receipt, since, now.since));
  return all.filter((one) => one !== null);
}

function deviation(what: string, digest: string, now: FoundNow | undefined, text: string): string | null {
  if (now === undefined) throw new Error(`nothing was found out about ${what}`);
  if ("missing" in now) return `${what}: ${now.missing}`;
  return now.digest === digest ? null : `${what}: ${text}; its digest was ${digest}, and is ${now.digest}`;
}

/** A state that has accepted the export has moved on as it should. */
function stateMoved(
  { digest }: ExportReceipt,
  since: { readonly file: string; readonly digest: string },
  now: ExportNow["since"],
): string | null {
  const what = `state ${since.file}`;
  if (now === null || "missing" in now) return `${what}: ${now?.missing ?? "it was not looked at"}`;
  if (now.state.accepted.includes(digest) || digestOfState(now.state) === since.digest) return null;
  return `${what}: it is not the one with which was compared, and has not accepted this export`;
}
