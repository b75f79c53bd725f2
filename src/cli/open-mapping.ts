import { readTextFile } from "../disk/index.js";
import { type Mapping, type MappingReading, readMapping } from "../handover/index.js";
import { countOf } from "../outputs/index.js";
import type { Rulebook } from "../rulebook/index.js";
import { findingLine, findingOf } from "./open-rulebook.js";
import { stop } from "./screen-inputs.js";
import type { Terminal } from "./terminal.js";

/** Reads a mapping file and tries its sample rows. */
export async function openMapping(path: string, rulebook: Pick<Rulebook, "rules">): Promise<MappingReading> {
  const reading = await readTextFile(path);
  return reading.ok ? readMapping(reading.file, rulebook) : { ok: false, findings: [findingOf(reading.error)] };
}

/** The mapping of a run; mistakes in its file are said and end it. */
export async function mappingOf(path: string, rulebook: Pick<Rulebook, "rules">, terminal: Terminal): Promise<Mapping> {
  const reading = await openMapping(path, rulebook);
  if (reading.ok) return reading.mapping;
  for (const finding of reading.findings) terminal.err(findingLine(finding));
  return stop(terminal, `the mapping has ${countOf(reading.findings.length, "mistake")}; correct it and run again`);
}
