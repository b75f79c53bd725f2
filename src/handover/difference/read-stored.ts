import { z } from "zod";
import { sha256OfData, sha256OfLargeData, showText } from "../../base/index.js";
import { EXPORTED_STATE, type ExportedState, STATE_FORMAT } from "./exported-state.js";
import { countsOf, digestOfReceipt, EXPORT_RECEIPT, type ExportReceipt, RECEIPT_FORMAT } from "./receipt.js";

/** A stored file, or what is wrong with it, each in one sentence without the file's name. */
export type StoredReading<Stored> =
  | { readonly ok: true; readonly stored: Stored }
  | { readonly ok: false; readonly problems: readonly string[] };

const MOST_NAMED = 5;
const FORMAT_ONLY = z.looseObject({ format: z.string() });

const RECEIPT_EXPECTED = "hand in the receipt as spotface export wrote it";
const STATE_EXPECTED = "hand in the state as spotface accept-export wrote it, or take it from a backup";

/**
 * Reads a receipt. Nothing of it is taken on trust: it must hold together, and give its own digest.
 */
export function readReceipt(text: string): StoredReading<ExportReceipt> {
  const reading = readForm(text, EXPORT_RECEIPT, RECEIPT_FORMAT, RECEIPT_EXPECTED);
  if (!reading.ok) return reading;
  const { stored } = reading;
  if (digestOfReceipt(stored) !== stored.digest) {
    return failed([`it was changed after it was written: its contents do not give its digest; ${RECEIPT_EXPECTED}`]);
  }
  const problems = stored.targets.flatMap((target) => notWhole(target, RECEIPT_EXPECTED));
  for (const { target, rows, counts } of stored.targets) {
    const { unchanged: _, ...sent } = counts;
    if (JSON.stringify(sent) !== JSON.stringify(countsOf(rows))) {
      problems.push(`${showText(target)}: its counts are not those of its rows; ${RECEIPT_EXPECTED}`);
    }
    const wrong = rows.find(({ values, digest }) => sha256OfData(values) !== digest);
    if (wrong)
      problems.push(
        `${showText(target)}: the values of row ${showText(wrong.id)} do not give its digest; ${RECEIPT_EXPECTED}`,
      );
  }
  return problems.length > 0 ? failed(problems) : reading;
}

/** Reads a state. Nothing of it is taken on trust: it must hold together. */
export function readExportedState(text: string): StoredReading<ExportedState> {
  const reading = readForm(text, EXPORTED_STATE, STATE_FORMAT, STATE_EXPECTED);
  if (!reading.ok) return reading;
  const problems = reading.stored.targets.flatMap((target) => notWhole(target, STATE_EXPECTED));
  return problems.length > 0 ? failed(problems) : reading;
}

/** The digest by which receipts name a state; blanks and line ends between its parts do not count. */
export function digestOfState(state: ExportedState): string {
  return sha256OfLargeData(state);
}

function readForm<Stored>(
  text: string,
  form: z.ZodType<Stored>,
  format: string,
  expected: string,
): StoredReading<Stored> {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    if (!(error instanceof SyntaxError)) throw error;
    return failed([`it is not JSON, or it breaks off; ${expected}`]);
  }
  const parsed = form.safeParse(data);
  if (parsed.success) return { ok: true, stored: parsed.data };
  // One file in place of the other is the likeliest slip.
  const found = FORMAT_ONLY.safeParse(data);
  if (found.success && found.data.format !== format)
    return failed([`it is a "${showText(found.data.format)}", not a "${format}"; ${expected}`]);
  const { issues } = parsed.error;
  const lines = issues.slice(0, MOST_NAMED).map(({ path, message }) => {
    const at = path.map(String).join("/");
    return `${at === "" ? "the document" : showText(`/${at}`)}: ${showText(message, 200)}; ${expected}`;
  });
  return failed(
    issues.length > lines.length ? [...lines, `and ${issues.length - lines.length} more of that kind`] : lines,
  );
}

/** Each row has a value for each column, and an id of its own. */
function notWhole(
  target: { target: string; columns: readonly unknown[]; rows: readonly { id: string; values: readonly unknown[] }[] },
  expected: string,
): string[] {
  const { columns, rows } = target;
  const short = rows.find(({ values }) => values.length !== columns.length);
  const problems: string[] = [];
  if (short) {
    problems.push(
      `${showText(target.target)}: row ${showText(short.id)} has ${short.values.length} values for ${columns.length} columns; ${expected}`,
    );
  }
  if (new Set(rows.map(({ id }) => id)).size < rows.length) {
    problems.push(`${showText(target.target)}: two rows have one id; ${expected}`);
  }
  return problems;
}

function failed(problems: readonly string[]): { readonly ok: false; readonly problems: readonly string[] } {
  return { ok: false, problems };
}
