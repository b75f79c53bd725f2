import { z } from "zod";
import { sha256OfData, sha256OfLargeData } from "../../base/index.js";
import { WRITTEN_COLUMN, WRITTEN_VALUES } from "./exported-state.js";
import { CAUSES, DIGEST, EXPORT_SOURCE, type ExportSource } from "./source.js";
import { CHANGES, type TargetDifference } from "./target-difference.js";

export const RECEIPT_FORMAT = "spotface export receipt 1";

const COUNT = z.int().nonnegative();

const RECEIPT_ROW = z.strictObject({
  id: z.string().describe("stable id of the row"),
  change: z.enum(CHANGES).describe("what it is to the other side"),
  replaces: z.string().nullable().describe("id of a row that is gone and whose key this row has now"),
  because: z.array(z.enum(CAUSES)).describe("what may be the cause of the change; where it is one, that is the cause"),
  changed: z
    .array(
      z.strictObject({
        heading: z.string().describe("heading of the column"),
        old: z.string().nullable().describe("value that was accepted before"),
        new: z.string().nullable().describe("value that was written now"),
      }),
    )
    .describe("values that changed; none where the row is new"),
  digest: DIGEST.describe("SHA-256 of the canonical JSON of the values"),
  values: WRITTEN_VALUES,
});

const RECEIPT_TARGET = z.strictObject({
  target: z.string().describe("target file, by its name in the mapping"),
  columns: z.array(WRITTEN_COLUMN).describe("columns, in the order of the values"),
  counts: z
    .strictObject({
      new: COUNT.describe("rows that it did not have"),
      changed: COUNT.describe("rows with another value"),
      withdrawn: COUNT.describe("rows that are gone"),
      unchanged: COUNT.describe("rows that were not written"),
    })
    .describe("rows by what they are to the other side; unchanged ones were not written"),
  addedColumns: z.array(z.string()).describe("columns that the last accepted export did not have"),
  droppedColumns: z.array(z.string()).describe("columns that only the last accepted export had"),
  rows: z.array(RECEIPT_ROW).describe("rows that were written"),
});

/** What an export wrote, and what it was made from. */
export const EXPORT_RECEIPT = z
  .strictObject({
    format: z.literal(RECEIPT_FORMAT).describe("form of this file"),
    digest: DIGEST.describe("SHA-256 of the canonical JSON of all else in this file"),
    since: z
      .strictObject({
        file: z.string().describe("path as given, with /"),
        digest: DIGEST.describe("SHA-256 of the canonical JSON of the state"),
      })
      .nullable()
      .describe("state with which was compared; null where every row was written"),
    source: EXPORT_SOURCE,
    files: z
      .array(
        z.strictObject({
          file: z
            .string()
            .regex(/^[^/\\]+$/, "expected a name without a folder")
            .describe("name of the file, in the folder of the receipt"),
          digest: DIGEST.describe("SHA-256 of its bytes"),
        }),
      )
      .describe("every file that was written beside the receipt"),
    targets: z.array(RECEIPT_TARGET).describe("what was written, by target file"),
  })
  .describe("what an export wrote, and digests of all that it was made from");

export type ExportReceipt = z.infer<typeof EXPORT_RECEIPT>;

/**
 * The receipt of an export.
 *
 * @param since - the state with which was compared, with its digest; null where there was none
 * @param files - every file that was written, with the digest of its bytes
 */
export function exportReceipt(
  targets: readonly TargetDifference[],
  since: ExportReceipt["since"],
  source: ExportSource,
  files: ExportReceipt["files"],
): ExportReceipt {
  const content: Omit<ExportReceipt, "digest"> = {
    format: RECEIPT_FORMAT,
    since,
    source,
    files,
    targets: targets.map(({ target, columns, rows, unchanged, addedColumns, droppedColumns }) => ({
      target,
      columns: columns.map(({ heading, key }) => ({ heading, key })),
      counts: { ...countsOf(rows), unchanged },
      addedColumns: [...addedColumns],
      droppedColumns: [...droppedColumns],
      rows: rows.map(({ id, change, replaces, because, changed, values }) => ({
        id,
        change,
        replaces,
        because: [...because],
        changed: changed.map(({ heading, old, new: now }) => ({ heading, old, new: now })),
        digest: sha256OfData(values),
        values: [...values],
      })),
    })),
  };
  return { ...content, digest: sha256OfLargeData(content) };
}

/** The rows that are sent, by what they are to the other side. */
export function countsOf(rows: readonly { readonly change: (typeof CHANGES)[number] }[]): {
  new: number;
  changed: number;
  withdrawn: number;
} {
  const counts = { new: 0, changed: 0, withdrawn: 0 };
  for (const { change } of rows) counts[change] += 1;
  return counts;
}

/** The digest that the contents of a receipt give, whatever digest stands in it. */
export function digestOfReceipt({ digest: _, ...content }: ExportReceipt): string {
  return sha256OfLargeData(content);
}

/**
 * The receipt as a file: keys always in one order, one row to a line.
 *
 * @returns pieces to be written one after the other
 */
export function* exportReceiptText(receipt: ExportReceipt): IterableIterator<string> {
  const { format, digest, since, source, files, targets } = receipt;
  const head = { format, digest, since, source: EXPORT_SOURCE.parse(source), files };
  yield `{${Object.entries(head)
    .map(([key, value]) => `"${key}":${JSON.stringify(value)}`)
    .join(",\n")},\n"targets":[`;
  let between = "\n";
  for (const { rows, ...target } of targets) {
    yield `${between}${JSON.stringify(target).slice(0, -1)},"rows":[`;
    let comma = "\n";
    for (const row of rows) {
      yield comma + JSON.stringify(row);
      comma = ",\n";
    }
    yield "\n]}";
    between = ",\n";
  }
  yield "\n]}\n";
}
