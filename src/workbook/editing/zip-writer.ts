import type { Inflating } from "../cells.js";
import type { ZipEntry } from "../zip-directory.js";
import { PartSink } from "./part-sink.js";

/** One part of a package that is written: taken over packed as it is, or made anew. */
export type OutgoingPart =
  | { readonly kind: "kept"; readonly entry: ZipEntry; readonly packed: Uint8Array }
  | {
      readonly kind: "made";
      /** Name as the package spells it, in bytes. */
      readonly name: Uint8Array;
      /** Writes the content; each step is a pause in which packed bytes are taken away. */
      readonly write: (sink: PartSink) => AsyncIterable<unknown> | Iterable<unknown>;
    };

const LOCAL_SIGNATURE = 0x04034b50;
const DESCRIPTOR_SIGNATURE = 0x08074b50;
const ENTRY_SIGNATURE = 0x02014b50;
const END_SIGNATURE = 0x06054b50;
const VERSION = 20;
const DEFLATED = 8;
/** Sizes and checksum follow the data, because the data are sent on as they are made. */
const DESCRIPTOR_FLAG = 0x0008;
const UTF8_FLAG = 0x0800;
/** 1 January 1980, midnight: the first moment that the format can state, so that equal content gives equal bytes. */
const DAY = 0x0021;
const MOMENT = 0;
const PIECE_BYTES = 262_144;
/** The short form of the format can state no more. */
const MOST_BYTES = 0xffffffff;

interface Written {
  readonly name: Uint8Array;
  readonly flags: number;
  readonly method: number;
  readonly crc: number;
  readonly packedBytes: number;
  readonly bytes: number;
  readonly offset: number;
}

/**
 * Writes a package piece by piece. Kept parts keep their packed bytes; times are fixed and the order is that of the
 * parts, so that the same parts give the same bytes.
 *
 * @throws RangeError if the package would grow beyond what its format can state (4 GiB)
 */
export async function* writeZip(
  parts: readonly OutgoingPart[],
  inflating: Pick<Inflating, "crc32" | "packing">,
): AsyncGenerator<Uint8Array> {
  let waiting: Uint8Array[] = [];
  let bytes = 0;
  // Most pieces are a few bytes; they go to the disk together, up to this many bytes.
  for await (const piece of writePieces(parts, inflating)) {
    if (bytes + piece.length > PIECE_BYTES && bytes > 0) {
      yield joined(waiting, bytes);
      waiting = [];
      bytes = 0;
    }
    waiting.push(piece);
    bytes += piece.length;
  }
  yield joined(waiting, bytes);
}

function joined(pieces: readonly Uint8Array[], bytes: number): Uint8Array {
  const [only] = pieces;
  if (only && pieces.length === 1) return only;
  const whole = new Uint8Array(bytes);
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

async function* writePieces(
  parts: readonly OutgoingPart[],
  inflating: Pick<Inflating, "crc32" | "packing">,
): AsyncGenerator<Uint8Array> {
  const written: Written[] = [];
  let offset = 0;
  for (const part of parts) {
    if (part.kind === "kept") {
      const entry = keptEntry(part.entry, offset);
      yield localHeader(entry, entry);
      yield part.packed;
      offset += LOCAL_BYTES + entry.name.length + part.packed.length;
      written.push(entry);
      continue;
    }
    const sink = new PartSink(inflating);
    const flags = DESCRIPTOR_FLAG | nameFlag(part.name);
    yield localHeader({ name: part.name, flags, method: DEFLATED }, { crc: 0, packedBytes: 0, bytes: 0 });
    for await (const _ of part.write(sink)) yield* await sink.packed();
    sink.end();
    yield* await sink.packed();
    const { tally } = sink;
    yield descriptor(tally);
    written.push({ name: part.name, flags, method: DEFLATED, offset, ...tally });
    offset += LOCAL_BYTES + part.name.length + tally.packedBytes + DESCRIPTOR_BYTES;
    if (offset > MOST_BYTES || tally.bytes > MOST_BYTES) throw new RangeError("a workbook cannot be larger than 4 GiB");
  }
  const directory = written.map(directoryEntry);
  yield* directory;
  const directoryBytes = directory.reduce((sum, entry) => sum + entry.length, 0);
  yield endRecord(written.length, directoryBytes, offset);
}

const LOCAL_BYTES = 30;
const DESCRIPTOR_BYTES = 16;
const ENTRY_BYTES = 46;
const END_BYTES = 22;

function keptEntry(entry: ZipEntry, offset: number): Written {
  const method = entry.method === "stored" ? 0 : DEFLATED;
  const { crc, bytes, compressedBytes: packedBytes, rawName: name } = entry;
  return { name, flags: entry.utf8 ? UTF8_FLAG : 0, method, crc, packedBytes, bytes, offset };
}

/** Names of our own are written in UTF-8; the flag says so where it makes a difference. */
function nameFlag(name: Uint8Array): number {
  return name.some((byte) => byte > 0x7f) ? UTF8_FLAG : 0;
}

function localHeader(
  { name, flags, method }: Pick<Written, "name" | "flags" | "method">,
  { crc, packedBytes, bytes }: Pick<Written, "crc" | "packedBytes" | "bytes">,
): Uint8Array {
  const header = new Uint8Array(LOCAL_BYTES + name.length);
  const view = new DataView(header.buffer);
  view.setUint32(0, LOCAL_SIGNATURE, true);
  view.setUint16(4, VERSION, true);
  view.setUint16(6, flags, true);
  view.setUint16(8, method, true);
  view.setUint16(10, MOMENT, true);
  view.setUint16(12, DAY, true);
  view.setUint32(14, crc, true);
  view.setUint32(18, packedBytes, true);
  view.setUint32(22, bytes, true);
  view.setUint16(26, name.length, true);
  header.set(name, LOCAL_BYTES);
  return header;
}

function descriptor({ crc, packedBytes, bytes }: PartSink["tally"]): Uint8Array {
  const view = new DataView(new ArrayBuffer(DESCRIPTOR_BYTES));
  view.setUint32(0, DESCRIPTOR_SIGNATURE, true);
  view.setUint32(4, crc, true);
  view.setUint32(8, packedBytes, true);
  view.setUint32(12, bytes, true);
  return new Uint8Array(view.buffer);
}

function directoryEntry(entry: Written): Uint8Array {
  const header = new Uint8Array(ENTRY_BYTES + entry.name.length);
  const view = new DataView(header.buffer);
  view.setUint32(0, ENTRY_SIGNATURE, true);
  view.setUint16(4, VERSION, true);
  view.setUint16(6, VERSION, true);
  view.setUint16(8, entry.flags, true);
  view.setUint16(10, entry.method, true);
  view.setUint16(12, MOMENT, true);
  view.setUint16(14, DAY, true);
  view.setUint32(16, entry.crc, true);
  view.setUint32(20, entry.packedBytes, true);
  view.setUint32(24, entry.bytes, true);
  view.setUint16(28, entry.name.length, true);
  view.setUint32(42, entry.offset, true);
  header.set(entry.name, ENTRY_BYTES);
  return header;
}

function endRecord(entries: number, directoryBytes: number, directoryStart: number): Uint8Array {
  const view = new DataView(new ArrayBuffer(END_BYTES));
  view.setUint32(0, END_SIGNATURE, true);
  view.setUint16(8, entries, true);
  view.setUint16(10, entries, true);
  view.setUint32(12, directoryBytes, true);
  view.setUint32(16, directoryStart, true);
  return new Uint8Array(view.buffer);
}
