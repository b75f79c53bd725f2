import { ENTRY_LIMIT } from "./limits.js";
import { grouped, quoted, refuse } from "./unreadable.js";
import { type DirectoryEnd, findDirectoryEnd } from "./zip-end.js";

const ENTRY_SIGNATURE = 0x02014b50;
const LOCAL_SIGNATURE = 0x04034b50;
const ENTRY_BYTES = 46;
const LOCAL_BYTES = 30;
const ENCRYPTED_FLAGS = 0x2041;
const UTF8_FLAG = 0x0800;
const IN_ZIP64 = 0xffffffff;

/** One file inside a package, as the directory states it; nothing is inflated yet. */
export interface ZipEntry {
  /** Name as written. */
  readonly name: string;
  /** Name as it is looked up: forward slashes, lower case, no leading slash. */
  readonly key: string;
  readonly method: "stored" | "deflated";
  readonly compressedBytes: number;
  /** Size after inflating, as stated; checked while inflating. */
  readonly bytes: number;
  readonly crc: number;
  /** Where its data begin in the file. */
  readonly start: number;
  /** Name as written, in bytes, and whether the directory says that they are UTF-8. */
  readonly rawName: Uint8Array;
  readonly utf8: boolean;
}

/** The form in which names of parts are compared. */
export function partKey(name: string): string {
  return name.replace(/\\/g, "/").replace(/^\/+/, "").toLowerCase();
}

const DAMAGED = "the workbook is damaged (its list of contents does not fit the file); save or download it again";

/**
 * Reads and checks the whole directory before a single byte is inflated: two readers must not be able to see
 * two different surveys in one file.
 *
 * @throws Unreadable for anything truncated, ambiguous, encrypted, overlapping or hidden
 */
export function readZipDirectory(bytes: Uint8Array): readonly ZipEntry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = findDirectoryEnd(view);
  if (end.entries > ENTRY_LIMIT) {
    refuse(
      "too-many-parts",
      `the workbook holds ${grouped(end.entries)} parts, more than the ${grouped(ENTRY_LIMIT)} that are read; save the survey sheet alone as a new workbook`,
    );
  }
  const listed = readListed(view, end);
  refuseDuplicates(listed);
  return locate(view, listed, end.start);
}

interface Listed extends Omit<ZipEntry, "start"> {
  readonly offset: number;
  readonly methodNumber: number;
}

function readListed(view: DataView, end: DirectoryEnd): readonly Listed[] {
  const listed: Listed[] = [];
  let at = end.start;
  for (let i = 0; i < end.entries; i++) {
    if (at + ENTRY_BYTES > end.stop || view.getUint32(at, true) !== ENTRY_SIGNATURE) refuse("damaged-zip", DAMAGED);
    const nameBytes = view.getUint16(at + 28, true);
    const extraBytes = view.getUint16(at + 30, true);
    const next = at + ENTRY_BYTES + nameBytes + extraBytes + view.getUint16(at + 32, true);
    if (next > end.stop) refuse("damaged-zip", DAMAGED);
    const rawName = new Uint8Array(view.buffer, view.byteOffset + at + ENTRY_BYTES, nameBytes);
    const name = decodeName(rawName);
    const methodNumber = view.getUint16(at + 10, true);
    if ((view.getUint16(at + 8, true) & ENCRYPTED_FLAGS) !== 0) refuseEncrypted(name);
    if (methodNumber !== 0 && methodNumber !== 8) {
      refuse(
        "unknown-compression",
        `the part ${quoted(name)} is packed in a way that workbooks do not use (method ${methodNumber}); open the file in a spreadsheet program and save it again`,
      );
    }
    const sizes = readSizes(view, at, at + ENTRY_BYTES + nameBytes, extraBytes);
    const crc = view.getUint32(at + 16, true);
    const method = methodNumber === 0 ? "stored" : "deflated";
    const utf8 = (view.getUint16(at + 8, true) & UTF8_FLAG) !== 0;
    listed.push({ name, key: partKey(name), method, methodNumber, crc, rawName, utf8, ...sizes });
    at = next;
  }
  if (at !== end.stop) refuse("damaged-zip", DAMAGED);
  return listed;
}

/** Sizes and offset of an entry, from the zip64 field where the short fields are full. */
function readSizes(view: DataView, at: number, extraAt: number, extraBytes: number) {
  const short = [view.getUint32(at + 24, true), view.getUint32(at + 20, true), view.getUint32(at + 42, true)];
  const wide = short.includes(IN_ZIP64) ? wideFields(view, extraAt, extraAt + extraBytes) : [];
  const [bytes = 0, compressedBytes = 0, offset = 0] = short.map((value) => {
    if (value !== IN_ZIP64) return value;
    return wide.shift() ?? refuse("damaged-zip", DAMAGED);
  });
  return { bytes, compressedBytes, offset };
}

function wideFields(view: DataView, from: number, to: number): number[] {
  for (let at = from; at + 4 <= to; at += 4 + view.getUint16(at + 2, true)) {
    if (view.getUint16(at, true) !== 1) continue;
    const stop = Math.min(to, at + 4 + view.getUint16(at + 2, true));
    const fields: number[] = [];
    for (let field = at + 4; field + 8 <= stop; field += 8) fields.push(Number(view.getBigUint64(field, true)));
    return fields;
  }
  return [];
}

function refuseDuplicates(listed: readonly Listed[]): void {
  const seen = new Set<string>();
  for (const entry of listed) {
    if (seen.has(entry.key)) {
      refuse(
        "duplicate-part",
        `the workbook holds the part ${quoted(entry.name)} twice, so it cannot be said which one counts; open it in a spreadsheet program, check it and save it again`,
      );
    }
    seen.add(entry.key);
  }
}

/** Finds where the data of each entry begin and refuses overlaps, gaps in front and headers that say otherwise. */
function locate(view: DataView, listed: readonly Listed[], directoryStart: number): readonly ZipEntry[] {
  const inOrder = [...listed].sort((a, b) => a.offset - b.offset);
  let free = 0;
  const starts = new Map<Listed, number>();
  for (const entry of inOrder) {
    if (entry.offset < free) {
      refuse(
        "overlapping-parts",
        `the part ${quoted(entry.name)} shares its bytes with another part, which no spreadsheet program writes; get the workbook again from whoever sent it`,
      );
    }
    if (free === 0 && entry.offset !== 0) refuse("damaged-zip", DAMAGED);
    const start = dataStart(view, entry);
    free = start + entry.compressedBytes;
    if (free > directoryStart) refuse("damaged-zip", DAMAGED);
    starts.set(entry, start);
  }
  return listed.map((entry) => {
    const { offset: _offset, methodNumber: _methodNumber, ...stated } = entry;
    return { ...stated, start: starts.get(entry) ?? 0 };
  });
}

function dataStart(view: DataView, entry: Listed): number {
  const at = entry.offset;
  if (at + LOCAL_BYTES > view.byteLength || view.getUint32(at, true) !== LOCAL_SIGNATURE) {
    refuse("damaged-zip", DAMAGED);
  }
  if ((view.getUint16(at + 6, true) & ENCRYPTED_FLAGS) !== 0) refuseEncrypted(entry.name);
  const nameBytes = view.getUint16(at + 26, true);
  const start = at + LOCAL_BYTES + nameBytes + view.getUint16(at + 28, true);
  const sameName =
    nameBytes === entry.rawName.length &&
    start <= view.byteLength &&
    entry.rawName.every((byte, i) => view.getUint8(at + LOCAL_BYTES + i) === byte);
  if (!sameName || view.getUint16(at + 8, true) !== entry.methodNumber) refuse("damaged-zip", DAMAGED);
  return start;
}

function refuseEncrypted(name: string): never {
  return refuse(
    "encrypted-part",
    `the part ${quoted(name)} is encrypted; remove the password in a spreadsheet program and save the workbook again`,
  );
}

/** UTF-8 where it is that, else byte by byte; names serve for looking up only and parts are named in ASCII. */
function decodeName(raw: Uint8Array): string {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(raw);
  } catch {
    return String.fromCharCode(...raw);
  }
}
