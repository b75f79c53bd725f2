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
  return storedAt(path, readReceipt, terminal);
}

/** Opens a state of accepted exports; what is wrong with it is said and ends the run. */
export async function stateAt(path: string, terminal: Terminal): Promise<ExportedState> {
  return storedAt(path, readExportedState, terminal);
}

/** The same, null where there is no such file. */
export async function stateIfAny(path: string, terminal: Terminal): Promise<ExportedState | null> {
  return existsSync(path) ? stateAt(path, terminal) : null;
}

async function storedAt<Stored>(
  path: string,
  read: (text: string) => StoredReading<Stored>,
  terminal: Terminal,
): Promise<Stored> {
  const text = await readTextFile(path, DEFAULT_LIMITS.fileBytes);
  const reading = text.ok ? read(text.file.text) : { ok: false as const, problems: [text.error.text] };
  if (reading.ok) return reading.stored;
  for (const problem of reading.problems) terminal.err(`spotface: ${shownFile(path)}: ${problem}\n`);
  throw new CannotRun();
}
