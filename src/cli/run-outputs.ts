import type { DiskProblem, OutputBatch } from "../disk/index.js";
import {
  findingsCsv,
  htmlReport,
  jsonDocument,
  jsonDocumentBytes,
  ndjsonDocument,
  pointsCsv,
  type WrittenFile,
} from "../outputs/index.js";
import type { Screening } from "../screening/index.js";
import type { OpenedSurvey } from "./open-surveys.js";
import { printPieces, writePieces } from "./pieces.js";
import type { Targets } from "./targets.js";
import type { Terminal } from "./terminal.js";
import { writeWorkbooks } from "./write-workbooks.js";

/** Writes the result to standard output as it is made. */
export async function printResult(screening: Screening, form: "json" | "ndjson", terminal: Terminal): Promise<void> {
  await printPieces(form === "json" ? jsonDocument(screening) : ndjsonDocument(screening), terminal);
}

/**
 * Writes all files of a run together: all of them or none. The points are judged anew for each file: remembering
 * what is alike makes that cheap, where a hundred thousand points with their findings would fill the memory.
 */
export async function writeFiles(
  batch: OutputBatch,
  targets: Targets,
  screening: Screening,
  surveys: readonly OpenedSurvey[],
): Promise<{ ok: true; written: readonly WrittenFile[] } | { ok: false; error: DiskProblem }> {
  const { head } = screening;
  const written: WrittenFile[] = [...(await writeWorkbooks(batch, targets.workbooks, screening, surveys))];
  const stream = async (
    what: string,
    file: string | null,
    pieces: () => Iterable<string> | Iterable<Uint8Array>,
  ): Promise<void> => {
    if (file === null) return;
    await writePieces(batch, file, pieces());
    written.push({ what, file, note: null });
  };
  await stream("table of points", targets.csv, () => pointsCsv(head, screening.points()));
  await stream("table of findings", targets.findings, () => findingsCsv(head, screening.points()));
  await stream("result document", targets.result, () => jsonDocumentBytes(screening));
  await stream("report", targets.report, () => htmlReport(screening));
  const done = await batch.finish();
  return done.ok ? { ok: true, written } : { ok: false, error: done.error };
}
