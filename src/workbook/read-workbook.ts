import type { Inflating, ReadingLimits, WorkbookReading } from "./cells.js";
import { readCsv } from "./csv.js";
import { fileKind } from "./file-kind.js";
import { limitsOf, orAllowMore } from "./limits.js";
import { grouped, refuse, Unreadable } from "./unreadable.js";
import { readXlsx } from "./xlsx.js";

/** How a survey file is to be read; all of it may be left out. */
export interface ReadingOptions {
  /** Limits other than the usual ones. */
  readonly limits?: Partial<ReadingLimits> | undefined;
  /** Encoding of a text file without a byte order mark, by any usual name; UTF-8 if left out. */
  readonly encoding?: string | undefined;
  /** Separator of a text file: one character, or comma, semicolon, tab, pipe; found by evidence if left out. */
  readonly separator?: string | undefined;
  /** Told the share of the file that is read, 0 to 1, never falling. */
  readonly onProgress?: ((doneFraction: number) => void) | undefined;
}

/**
 * Reads a survey file into raw cells, recognising by content what it is.
 *
 * @param bytes - the whole file
 * @param inflating - how this machine unpacks deflated data and takes checksums
 * @returns the cells, or one sentence on why the file cannot be read; a bad file never throws
 */
export async function readWorkbook(
  bytes: Uint8Array,
  inflating: Inflating,
  options: ReadingOptions = {},
): Promise<WorkbookReading> {
  const limits = limitsOf(options.limits);
  const onProgress = options.onProgress ?? (() => {});
  try {
    if (bytes.length > limits.fileBytes) {
      refuse(
        "file-too-large",
        `the file is ${grouped(bytes.length)} bytes, more than the limit of ${grouped(limits.fileBytes)}; save the survey sheet alone as a new workbook${orAllowMore("fileBytes")}`,
      );
    }
    const workbook =
      fileKind(bytes) === "zip"
        ? await readXlsx(bytes, { inflating, limits, onProgress })
        : readCsv(bytes, limits, options);
    onProgress(1);
    return { ok: true, workbook };
  } catch (error) {
    if (error instanceof Unreadable) return { ok: false, error: error.file };
    throw error;
  }
}
