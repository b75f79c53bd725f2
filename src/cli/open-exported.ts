import { existsSync } from "node:fs";
import { readTextFile } from "../disk/index.js";
import {
  type ExportedState,
  type ExportReceipt,
  readExportedState,
  readReceipt,
  type StoredReading,
} from "../handover/index.js";
import { DEFAULT_LIMITS } from "../workbook/index.js";
import { shownFile } from "./open-surveys.js";
import { CannotRun } from "./screen-inputs.js";
import type { Terminal } from "./terminal.js";

/** Opens the receipt of an export; what is wrong with it is said and ends the run. */
export async function receiptAt(path: string, terminal: Terminal): Promise<ExportReceipt> {
  return orStop(path, await opened(path, readReceipt), terminal);
}

/** Opens a state of accepted exports, null where there is none yet; what is wrong with it is said and ends the run. */
export async function stateIfAny(path: string, terminal: Terminal): Promise<ExportedState | null> {
  return existsSync(path) ? orStop(path, await openExportedState(path), terminal) : null;
}

/** Opens a state of accepted exports. */
export async function openExportedState(path: string): Promise<StoredReading<ExportedState>> {
  return opened(path, readExportedState);
}

async function opened<Stored>(
  path: string,
  read: (text: string) => StoredReading<Stored>,
): Promise<StoredReading<Stored>> {
  const text = await readTextFile(path, DEFAULT_LIMITS.fileBytes);
  return text.ok ? read(text.file.text) : { ok: false, problems: [text.error.text] };
}

function orStop<Stored>(path: string, reading: StoredReading<Stored>, terminal: Terminal): Stored {
  if (reading.ok) return reading.stored;
  for (const problem of reading.problems) terminal.err(`spotface: ${shownFile(path)}: ${problem}\n`);
  throw new CannotRun();
}
