import { existsSync } from "node:fs";
import { sha256OfBytes } from "../base/index.js";
import { type AsRead, readSurveyFile, textOfBytes } from "../disk/index.js";
import {
  type ExportedState,
  type ExportReceipt,
  readExportedState,
  readReceipt,
  type StoredReading,
} from "../handover/index.js";
import { shownFile } from "./open-surveys.js";
import { CannotRun } from "./screen-inputs.js";
import type { Terminal } from "./terminal.js";

/** Size above which a receipt or state is refused, bytes: what one text of the engine holds. */
export const STORED_BYTES = 500_000_000;

/** A stored file with what was read for it, or what is wrong with it. */
export type ExportedReading<Stored> =
  | { readonly ok: true; readonly stored: Stored; readonly asRead: AsRead }
  | { readonly ok: false; readonly problems: readonly string[] };

/** Opens the receipt of an export; what is wrong with it is said and ends the run. */
export async function receiptAt(path: string, terminal: Terminal): Promise<ExportReceipt> {
  return orStop(path, await opened(path, readReceipt), terminal).stored;
}

/** Opens a state of accepted exports, null where there is none yet; what is wrong with it is said and ends the run. */
export async function stateIfAny(
  path: string,
  terminal: Terminal,
): Promise<{ readonly stored: ExportedState | null; readonly asRead: AsRead }> {
  if (!existsSync(path)) return { stored: null, asRead: { path, digest: null } };
  return orStop(path, await openExportedState(path), terminal);
}

/** Opens a state of accepted exports. */
export async function openExportedState(path: string): Promise<ExportedReading<ExportedState>> {
  return opened(path, readExportedState);
}

async function opened<Stored>(
  path: string,
  read: (text: string) => StoredReading<Stored>,
): Promise<ExportedReading<Stored>> {
  const reading = await readSurveyFile(path, STORED_BYTES);
  if (!reading.ok) return { ok: false, problems: [reading.error.text] };
  const text = textOfBytes(path, reading.bytes);
  if (!text.ok) return { ok: false, problems: [text.error.text] };
  const found = read(text.file.text);
  return found.ok ? { ...found, asRead: { path, digest: sha256OfBytes(reading.bytes) } } : found;
}

function orStop<Stored>(
  path: string,
  reading: ExportedReading<Stored>,
  terminal: Terminal,
): Extract<ExportedReading<Stored>, { ok: true }> {
  if (reading.ok) return reading;
  for (const problem of reading.problems) terminal.err(`spotface: ${shownFile(path)}: ${problem}\n`);
  throw new CannotRun();
}
