import type { PlainDay } from "../../base/index.js";
import { type FilePart, type MappedFile, type Mapping, partsOf, type Target } from "../../handover/index.js";
import { csvText, encoded } from "./csv-text.js";
import { csvwMetadata, metadataName } from "./csvw-metadata.js";
import { mappedWorkbook } from "./workbook.js";

/** A file of a handover, complete. */
export interface HandoverFile {
  readonly name: string;
  /** What it is, for people. */
  readonly what: string;
  readonly rows: number;
  readonly bytes: Uint8Array;
}

/** What a handover is made of: a target with the rows that are to be written, all of them or those that changed. */
export interface HandoverInput {
  readonly mapping: Pick<Mapping, "title">;
  readonly target: Target;
  readonly mapped: MappedFile;
  readonly asOf: PlainDay;
  /** Name of the program, which stands in workbooks. */
  readonly program: string;
}

/** The names of all files that `handoverFiles` makes of a target, in their order. */
export function handoverFileNames({
  target,
  mapped,
  asOf,
}: Pick<HandoverInput, "target" | "mapped" | "asOf">): readonly string[] {
  return partsOf(target, mapped, asOf).flatMap(({ name }) =>
    target.form.kind === "csv" ? [name, metadataName(name)] : [name],
  );
}

/**
 * The files of one target, part by part: text tables with the metadata beside them, or workbooks. The same rows give the
 * same bytes on any machine.
 */
export async function* handoverFiles(input: HandoverInput): AsyncIterableIterator<HandoverFile> {
  const { target, mapped, mapping, asOf, program } = input;
  for (const part of partsOf(target, mapped, asOf)) {
    const { name, rows } = part;
    const what = `${target.id}`;
    if (target.form.kind === "xlsx") {
      yield { name, what, rows: rows.length, bytes: await mappedWorkbook(target, mapped.columns, rows, program) };
      continue;
    }
    yield { name, what, rows: rows.length, bytes: textOf(target, mapped, part) };
    const metadata = csvwMetadata(target, name, `${mapping.title}: ${target.id}`);
    yield { name: metadataName(name), what: `${what}, metadata`, rows: 0, bytes: new TextEncoder().encode(metadata) };
  }
}

function textOf(target: Target, { columns }: MappedFile, { rows }: FilePart): Uint8Array {
  return encoded(csvText(target, columns, rows), target.form.encoding);
}
