/** A field of a table: text, a number, or nothing. */
export type Field = string | number | null;

/**
 * One record as RFC 4180 wants it: comma, double quotes where needed, CRLF. Numbers with a decimal point in their
 * shortest form. The text is written as it is; `safeText` is for the caller.
 *
 * @throws RangeError for a number that is not finite
 */
export function csvRecord(fields: readonly Field[]): string {
  const record = fields.map(csvField).join(",");
  // A record of one empty field would be a blank line, which readers skip.
  return `${fields.length === 1 && record === "" ? '""' : record}\r\n`;
}

function csvField(field: Field): string {
  if (field === null) return "";
  if (typeof field === "number") {
    if (!Number.isFinite(field)) throw new RangeError(`a field must be a finite number, got ${field}`);
    return String(field + 0);
  }
  return /[",\r\n]|^\s|\s$|^\ufeff/.test(field) ? `"${field.replace(/"/g, '""')}"` : field;
}
