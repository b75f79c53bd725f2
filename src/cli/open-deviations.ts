import { readTextFile } from "../disk/index.js";
import { countOf } from "../outputs/index.js";
import type { Deviations, DeviationsReading, Rulebook } from "../rulebook/index.js";
import { readDeviations, UnclearDeviations } from "../screening/index.js";
import { findingLine, findingOf } from "./open-rulebook.js";
import { CannotRun, stop } from "./screen-inputs.js";
import type { ScreenOptions } from "./screen-options.js";
import type { Terminal } from "./terminal.js";

/** Reads a file of accepted deviations. */
export async function openDeviations(
  path: string,
  rulebook: Pick<Rulebook, "rules" | "switchedOff">,
): Promise<DeviationsReading> {
  const reading = await readTextFile(path);
  if (!reading.ok) return { ok: false, findings: [findingOf(reading.error)] };
  return readDeviations(reading.file, rulebook);
}

/** The accepted deviations of a run, if there are any; mistakes in their file are said and end it. */
export async function deviationsOf(
  options: Pick<ScreenOptions, "deviations">,
  rulebook: Pick<Rulebook, "rules" | "switchedOff">,
  terminal: Terminal,
): Promise<Deviations | null> {
  if (options.deviations === undefined) return null;
  const reading = await openDeviations(options.deviations, rulebook);
  if (reading.ok) return reading.deviations;
  for (const finding of reading.findings) terminal.err(findingLine(finding));
  const count = countOf(reading.findings.length, "mistake");
  return stop(terminal, `the file of deviations has ${count}; correct it and run again`);
}

/** Ends a command that could not run: it has been said why, or it is said here. Any other error goes on. */
export function endCommand(error: unknown, terminal: Terminal): void {
  if (error instanceof UnclearDeviations) {
    for (const finding of error.findings) terminal.err(findingLine(finding));
    terminal.err("spotface: it is not clear what is accepted; correct the file of deviations and run again\n");
  } else if (!(error instanceof CannotRun)) throw error;
  terminal.setExitCode(2);
}
