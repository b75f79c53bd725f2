import type { PlainDay } from "../base/index.js";
import { fileNameOf } from "./file-name.js";
import type { MappedFile, MappedRow } from "./mapped.js";
import type { Target } from "./mapping.js";

/** One file to be written: a target, or a part of it that can be loaded by itself. */
export interface FilePart {
  readonly name: string;
  readonly rows: readonly MappedRow[];
}

/** The files of a target; one without rows has one file, with nothing but headings. */
export function partsOf(target: Target, { rows }: Pick<MappedFile, "rows">, asOf: PlainDay): readonly FilePart[] {
  const most = target.rowLimit ?? Math.max(rows.length, 1);
  const count = Math.max(1, Math.ceil(rows.length / most));
  return Array.from({ length: count }, (_, index) => ({
    name: fileNameOf(target, index + 1, asOf),
    rows: rows.slice(index * most, (index + 1) * most),
  }));
}
