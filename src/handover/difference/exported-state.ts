import { z } from "zod";
import { DIGEST, EXPORT_SOURCE } from "./source.js";

export const STATE_FORMAT = "spotface exported state 1";

/** A column as it was written. */
export const WRITTEN_COLUMN = z.strictObject({
  heading: z.string().describe("heading as written"),
  key: z.boolean().describe("whether its values name the row on the other side"),
});

/** A value for each column. */
export const WRITTEN_VALUES = z
  .array(z.string().nullable())
  .describe("a value for each column; null where it was left empty");

const STATE_TARGET = z.strictObject({
  target: z.string().describe("target file, by its name in the mapping"),
  columns: z.array(WRITTEN_COLUMN).describe("columns, in the order of the values"),
  refused: z.array(z.string()).describe("ids of rows that came back refused from the last accepted export"),
  rows: z
    .array(
      z.strictObject({
        id: z.string().describe("stable id of the row"),
        values: WRITTEN_VALUES,
      }),
    )
    .describe("rows that the other side is known to have, in the order of their ids"),
});

/** What the other side is known to have: the rows of every export that was accepted. */
export const EXPORTED_STATE = z
  .strictObject({
    format: z.literal(STATE_FORMAT).describe("form of this file"),
    accepted: z.array(DIGEST).describe("digests of the receipts that were accepted, the oldest first"),
    source: EXPORT_SOURCE.describe("what the last accepted export was made from"),
    targets: z.array(STATE_TARGET).describe("what was accepted, by target file"),
  })
  .describe("what a maintenance system is known to have taken: the rows of every export that was accepted");

export type ExportedState = z.infer<typeof EXPORTED_STATE>;
export type StateTarget = ExportedState["targets"][number];
export type StateRow = StateTarget["rows"][number];

/** A new state of these parts. */
export function exportedState(parts: Omit<ExportedState, "format">): ExportedState {
  return { format: STATE_FORMAT, ...parts };
}

/**
 * The state as a file: keys always in one order, one row to a line, so that two states can be compared line by line.
 *
 * @returns pieces to be written one after the other
 */
export function* exportedStateText({ format, accepted, source, targets }: ExportedState): IterableIterator<string> {
  yield `{"format":${JSON.stringify(format)},\n"accepted":${JSON.stringify(accepted)},\n`;
  yield `"source":${JSON.stringify(EXPORT_SOURCE.parse(source))},\n"targets":[`;
  let between = "\n";
  for (const { target, columns, refused, rows } of targets) {
    const head = { target, columns: columns.map(({ heading, key }) => ({ heading, key })), refused };
    yield `${between}${JSON.stringify(head).slice(0, -1)},"rows":[`;
    let comma = "\n";
    for (const { id, values } of rows) {
      yield comma + JSON.stringify({ id, values });
      comma = ",\n";
    }
    yield "\n]}";
    between = ",\n";
  }
  yield "\n]}\n";
}

/** Rows by their ids as code units: the same order on every machine. */
export function byId<Row extends { readonly id: string }>(rows: Iterable<Row>): Row[] {
  return [...rows].sort((one, other) => (one.id < other.id ? -1 : one.id > other.id ? 1 : 0));
}
