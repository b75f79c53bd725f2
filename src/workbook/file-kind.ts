import { refuse } from "./unreadable.js";
import { endsAsZip } from "./zip-end.js";

const HEAD_BYTES = 4_096;
const LOCK_FILE_BYTES = 165;

interface Signature {
  readonly bytes: readonly number[];
  readonly at?: number;
  readonly what: string;
}

/** First bytes by which a file shows that it is no survey, and the words for what it is. */
const OTHER_FILES: readonly Signature[] = [
  { bytes: ascii("%PDF-"), what: "a PDF document" },
  { bytes: [0x89, ...ascii("PNG")], what: "a picture (PNG)" },
  { bytes: [0xff, 0xd8, 0xff], what: "a picture (JPEG)" },
  { bytes: ascii("GIF8"), what: "a picture (GIF)" },
  { bytes: ascii("II*\0"), what: "a picture (TIFF)" },
  { bytes: ascii("MM\0*"), what: "a picture (TIFF)" },
  { bytes: ascii("WEBP"), at: 8, what: "a picture (WebP)" },
  { bytes: ascii("ftyp"), at: 4, what: "a picture or a film" },
  { bytes: [0x1f, 0x8b], what: "a packed file (gzip)" },
  { bytes: [0x37, 0x7a, 0xbc, 0xaf, 0x27, 0x1c], what: "a packed archive (7z)" },
  { bytes: ascii("Rar!\x1a"), what: "a packed archive (rar)" },
  { bytes: [0xfd, ...ascii("7zXZ\0")], what: "a packed file (xz)" },
  { bytes: ascii("BZh"), what: "a packed file (bzip2)" },
  { bytes: [0x28, 0xb5, 0x2f, 0xfd], what: "a packed file (zstd)" },
  { bytes: ascii("ustar"), at: 257, what: "a packed archive (tar)" },
  { bytes: ascii("{\\rtf"), what: "a word-processing document (RTF)" },
  { bytes: ascii("SQLite format 3\0"), what: "a database" },
  { bytes: ascii("MIME-Version:"), what: "a web page saved as one file" },
];

const COMPOUND = [0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1];
/** Second byte of the first record of workbooks from before there were containers; the first byte is 9. */
const EARLY_BINARY = [0, 2, 4, 8];
const HTML_START = /^<(?:!doctype\s+html|html|head|body|table|meta|style|div|script|title)\b/i;

/**
 * Tells by content, never by name, whether a file is to be read as a zipped workbook or as text.
 *
 * @throws Unreadable with what the file really is and what to do about it
 */
export function fileKind(bytes: Uint8Array): "zip" | "text" {
  if (bytes.length === 0) refuse("empty-file", "the file is empty (0 bytes); save or download the survey again");
  if (startsWith(bytes, ascii("PK\x03\x04")) || startsWith(bytes, ascii("PK\x05\x06"))) return "zip";
  if (startsWith(bytes, COMPOUND)) return refuseCompound(bytes);
  for (const { bytes: signature, at = 0, what } of OTHER_FILES) {
    if (startsWith(bytes, signature, at)) {
      refuse("other-file", `the file is ${what}, not a survey; hand in the survey as .xlsx or .csv`);
    }
  }
  if (bytes[0] === 0x09 && EARLY_BINARY.includes(bytes[1] ?? 0) && bytes[2] !== undefined && bytes[3] === 0) {
    refuse("old-binary", "the file is an old binary workbook (.xls); save it as .xlsx in a spreadsheet program");
  }
  if (bytes.length === LOCK_FILE_BYTES && bytes.includes(0)) {
    refuse(
      "lock-file",
      "the file is the mark that a spreadsheet program leaves while a workbook is open (its name begins with ~$); hand in the workbook itself",
    );
  }
  if (endsAsZip(bytes)) {
    refuse(
      "data-before-zip",
      "the workbook has other bytes in front of its beginning; download or copy it again, or get it again from whoever sent it",
    );
  }
  refuseMarkup(headText(bytes));
  return "text";
}

/** The start of the file as rough text, whatever its encoding: enough to see tags. */
function headText(bytes: Uint8Array): string {
  const ascii = bytes.subarray(0, HEAD_BYTES).filter((byte) => byte > 0 && byte < 128);
  return String.fromCharCode(...ascii).trimStart();
}

function refuseMarkup(head: string): void {
  if (!head.startsWith("<")) return;
  const isXml = head.startsWith("<?xml");
  if (isXml && (head.includes("office:spreadsheet") || head.includes("Excel.Sheet"))) {
    refuse("xml-2003", "the file is an old XML spreadsheet (2003); save it as .xlsx in a spreadsheet program");
  }
  if (isXml && head.includes("urn:oasis:names:tc:opendocument")) {
    refuse("open-document", "the file is a flat OpenDocument file; save it as .xlsx in a spreadsheet program");
  }
  const afterHeader = head.replace(/^(?:<\?[^>]{0,200}\?>\s*|<!--[^>]{0,500}-->\s*){0,5}/, "");
  if (HTML_START.test(afterHeader)) {
    refuse(
      "web-page",
      "the file is a web page with a table in it, not a workbook; open it in a spreadsheet program and save it as .xlsx",
    );
  }
  if (isXml) refuse("other-xml", "the file is an XML file that is no workbook; hand in the survey as .xlsx or .csv");
}

/** Old binary workbooks and password-protected new ones share a container; its directory tells which it is. */
function refuseCompound(bytes: Uint8Array): never {
  if (includes(bytes, wide("EncryptedPackage"))) {
    return refuse(
      "password-protected",
      "the workbook is protected by a password; open it in a spreadsheet program, remove the password and save it as .xlsx",
    );
  }
  if (includes(bytes, wide("Workbook")) || includes(bytes, wide("Book"))) {
    return refuse("old-binary", "the file is an old binary workbook (.xls); save it as .xlsx in a spreadsheet program");
  }
  return refuse(
    "old-binary-or-protected",
    "the file is an old binary file or a password-protected workbook; open it in a spreadsheet program, remove the password if it has one and save it as .xlsx",
  );
}

function startsWith(bytes: Uint8Array, signature: readonly number[], at = 0): boolean {
  return signature.every((byte, i) => bytes[at + i] === byte);
}

function includes(bytes: Uint8Array, wanted: readonly number[]): boolean {
  const [first = 0] = wanted;
  for (let at = bytes.indexOf(first); at >= 0; at = bytes.indexOf(first, at + 1)) {
    if (startsWith(bytes, wanted, at)) return true;
  }
  return false;
}

function ascii(text: string): readonly number[] {
  return [...text].map((character) => character.charCodeAt(0));
}

/** The text in two bytes per character, as names stand in a compound file. */
function wide(text: string): readonly number[] {
  return ascii(text).flatMap((byte) => [byte, 0]);
}
