import { join } from "node:path";
import { sha256OfBytes } from "../base/index.js";
import { makeFolder, namesInFolder, OutputBatch } from "../disk/index.js";
import { exportReceiptText, leftOverParts } from "../handover/index.js";
import {
  GROUP_NAME,
  type HandoverFile,
  handoverFileNames,
  handoverFiles,
  handoverGroup,
  type WrittenFile,
} from "../outputs/index.js";
import type { ResultHead } from "../screening/index.js";
import { type ExportToWrite, RECEIPT_NAME } from "./export-difference.js";
import { writePieces } from "./pieces.js";
import { CannotRun, stop } from "./screen-inputs.js";
import type { Terminal } from "./terminal.js";

/** Writes all files of an export together, and the receipt; what stands in the way is said and ends the run. */
export async function writeExport(
  { filling, difference, asRead, receipt }: ExportToWrite,
  { asOf, program }: ResultHead,
  { out = ".", overwrite }: { readonly out?: string | undefined; readonly overwrite: boolean },
  inputs: readonly string[],
  terminal: Terminal,
): Promise<readonly WrittenFile[]> {
  const { mapping, targets } = filling;
  const group = handoverGroup({ mapping, targets, asOf, isWhole: difference === null });
  const names = targets.flatMap((filled) => handoverFileNames({ ...filled, asOf }));
  const there = await namesInFolder(out);
  if (!there.ok) return stop(terminal, `${there.error.path}: ${there.error.text}`);
  const stale = leftOverParts(mapping.targets, asOf, there.names, names);
  for (const name of stale) {
    terminal.err(`spotface: ${join(out, name)}: a part of an earlier export that this one does not write; remove it\n`);
  }
  if (stale.length > 0) throw new CannotRun();
  const unmade = await makeFolder(out);
  if (unmade !== null) stop(terminal, `${unmade.path}: ${unmade.text}`);
  const started = await OutputBatch.start(
    // What makes the set complete is put in place last.
    [...names, ...(group === null ? [] : [GROUP_NAME]), RECEIPT_NAME].map((name) => join(out, name)),
    // Told against a state that has moved on, it could not be accepted.
    { inputs, overwrite, asRead },
  );
  if (!started.ok) {
    for (const { path, text } of started.problems) terminal.err(`spotface: ${path}: ${text}\n`);
    throw new CannotRun();
  }
  const { batch } = started;
  const takeBack = terminal.onInterrupt(() => batch.abandon());
  const written: WrittenFile[] = [];
  const digests: { file: string; digest: string }[] = [];
  const write = async ({ name, what, bytes }: HandoverFile): Promise<void> => {
    await batch.write(join(out, name), bytes);
    written.push({ what, file: join(out, name), note: null });
    digests.push({ file: name, digest: sha256OfBytes(bytes) });
  };
  try {
    for (const filled of targets) {
      for await (const file of handoverFiles({ mapping, ...filled, asOf, program: program.name })) await write(file);
    }
    if (group !== null) await write(group);
    const path = join(out, RECEIPT_NAME);
    await writePieces(batch, path, exportReceiptText(receipt(digests)));
    written.push({ what: "receipt", file: path, note: null });
    const done = await batch.finish();
    if (!done.ok) stop(terminal, `${done.error.path}: ${done.error.text}`);
  } finally {
    takeBack();
    await batch.abandon();
  }
  return written;
}
