import { windows1252Byte } from "../../base/index.js";
import { type Encoding, type MappedColumn, type MappedRow, SIGNS, type Target } from "../../handover/index.js";

const LINE_ENDS = { crlf: "\r\n", lf: "\n" } as const;

/**
 * A mapped table as RFC 4180 wants it, with the separator and line end of the target: a heading row, then a record for each
 * row. Fields stand in quotes where they must, and an empty text does, so that it differs from no value at all.
 */
export function csvText(
  { form }: Pick<Target, "form">,
  columns: readonly MappedColumn[],
  rows: readonly MappedRow[],
): string {
  const sign = SIGNS[form.separator];
  const end = LINE_ENDS[form.lineEnd];
  const record = (fields: readonly (string | null)[]): string => {
    const text = fields.map((field) => csvField(field, sign)).join(sign);
    // A record of one field without a value would be a blank line, which readers skip.
    return (fields.length === 1 && text === "" ? '""' : text) + end;
  };
  return [columns.map(({ heading }) => heading), ...rows.map(({ values }) => values)].map(record).join("");
}

function csvField(field: string | null, sign: string): string {
  if (field === null) return "";
  // A record that begins with "#" is a comment to readers that go by the metadata, which cannot say otherwise.
  const plain = field !== "" && !field.includes(sign) && !/["\r\n]|^\s|\s$|^[\ufeff#]/.test(field);
  return plain ? field : `"${field.replaceAll('"', '""')}"`;
}

/**
 * A text in an encoding.
 *
 * @throws RangeError for a character that the encoding does not have; a filled mapping has none
 */
export function encoded(text: string, encoding: Encoding): Uint8Array {
  if (encoding !== "windows-1252") return new TextEncoder().encode(encoding === "utf-8-bom" ? `\ufeff${text}` : text);
  // A byte for a character, and no list of them all beside it. No character beyond 16 bits has a byte.
  const bytes = new Uint8Array(text.length);
  for (let at = 0; at < text.length; at++) {
    const byte = windows1252Byte(text.charCodeAt(at));
    if (byte === null) throw new RangeError(`${encoding} has no "${String.fromCodePoint(text.codePointAt(at) ?? 0)}"`);
    bytes[at] = byte;
  }
  return bytes;
}
