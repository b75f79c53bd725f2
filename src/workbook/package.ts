import type { Inflating, ReadingLimits } from "./cells.js";
import { orAllowMore, TOTAL_PART_BYTES } from "./limits.js";
import { grouped, quoted, refuse } from "./unreadable.js";
import { readZipDirectory, type ZipEntry } from "./zip-directory.js";

/** A part with its bytes, named as the package names it. */
export interface Part {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** Takes a part piece by piece. */
export interface PartReceiver {
  write(piece: Uint8Array): void;
  /** Called once the part is whole. */
  end(): void;
}

/** Pieces in which a part that is not packed is handed over. */
const PIECE_BYTES = 262_144;

/** The parts of one .xlsx file; each is inflated when asked for and never kept. */
export class WorkbookPackage {
  readonly names: readonly string[];
  /** What the directory lists, in its order. */
  readonly entries: readonly ZipEntry[];
  readonly #entries: ReadonlyMap<string, ZipEntry>;
  readonly #file: Uint8Array;
  readonly #inflating: Inflating;
  readonly #limits: ReadingLimits;
  #inflatedBytes = 0;

  /** @throws Unreadable if the directory of the file does not hold up */
  constructor(file: Uint8Array, inflating: Inflating, limits: ReadingLimits) {
    const entries = readZipDirectory(file);
    this.entries = entries;
    this.names = entries.map((entry) => entry.name);
    this.#entries = new Map(entries.map((entry) => [entry.key, entry]));
    this.#file = file;
    this.#inflating = inflating;
    this.#limits = limits;
  }

  /** Whether the part exists; `key` as made by `partKey`. */
  has(key: string): boolean {
    return this.#entries.has(key);
  }

  /** The bytes of an entry as they lie in the file. */
  packed(entry: ZipEntry): Uint8Array {
    return this.#file.subarray(entry.start, entry.start + entry.compressedBytes);
  }

  /** Size of a part after inflating, bytes, as the directory states it; 0 for a part that does not exist. */
  statedBytes(key: string): number {
    return this.#entries.get(key)?.bytes ?? 0;
  }

  /**
   * Inflates a part, checking size and checksum.
   *
   * @param key - as made by `partKey`; null for a part that nothing leads to
   * @returns the part, or null if there is none of that name
   * @throws Unreadable if it is too large, damaged or not what the directory says
   */
  async part(key: string | null, kind: "sheet" | "other"): Promise<Part | null> {
    const entry = key === null ? undefined : this.#entries.get(key);
    if (!entry) return null;
    this.#admit(entry, kind);
    const data = this.packed(entry);
    const bytes =
      entry.method === "stored" ? data : await this.#sized(entry, this.#inflating.inflateRaw(data, entry.bytes));
    this.#check(entry, bytes.length, this.#inflating.crc32(bytes));
    return { name: entry.name, bytes };
  }

  /**
   * Inflates a part piece by piece, without ever holding the whole. What the receiver made of it counts only once
   * this is done: size and checksum are known at the end.
   *
   * @param receiverOf - makes the receiver, given the name of the part
   * @returns whether there is a part of that name
   * @throws Unreadable if it is too large, damaged or not what the directory says, before anything that the
   * receiver throws
   */
  async pour(
    key: string | null,
    kind: "sheet" | "other",
    receiverOf: (name: string) => PartReceiver,
  ): Promise<boolean> {
    const entry = key === null ? undefined : this.#entries.get(key);
    if (!entry) return false;
    this.#admit(entry, kind);
    const receiver = receiverOf(entry.name);
    let bytes = 0;
    let crc = 0;
    // A damaged part seems to hold anything; what it really has is said only if it is whole.
    let refusal: unknown = null;
    const take = (piece: Uint8Array): void => {
      bytes += piece.length;
      crc = this.#inflating.crc32(piece, crc);
      if (refusal !== null) return;
      try {
        receiver.write(piece);
      } catch (error) {
        refusal = error;
      }
    };
    await this.#sized(entry, this.#eachPiece(entry, take));
    this.#check(entry, bytes, crc);
    if (refusal !== null) throw refusal;
    receiver.end();
    return true;
  }

  /** An entry inflated piece by piece, as it lies in the file: only for a part that was poured before, and is whole. */
  async *pieces(entry: ZipEntry): AsyncGenerator<Uint8Array> {
    const data = this.packed(entry);
    if (entry.method === "deflated") yield* this.#inflating.inflateRawPieces(data, entry.bytes);
    else for (let at = 0; at < data.length; at += PIECE_BYTES) yield data.subarray(at, at + PIECE_BYTES);
  }

  async #eachPiece(entry: ZipEntry, take: (piece: Uint8Array) => void): Promise<void> {
    for await (const piece of this.pieces(entry)) take(piece);
  }

  #admit(entry: ZipEntry, kind: "sheet" | "other"): void {
    const limit = kind === "sheet" ? this.#limits.sheetPartBytes : this.#limits.otherPartBytes;
    if (entry.bytes > limit) {
      refuse(
        "part-too-large",
        `the part ${quoted(entry.name)} is ${grouped(entry.bytes)} bytes when unpacked, more than the limit of ${grouped(limit)}; save the survey sheet alone as a new workbook${orAllowMore(kind === "sheet" ? "sheetPartBytes" : "otherPartBytes")}`,
      );
    }
    this.#inflatedBytes += entry.bytes;
    if (this.#inflatedBytes > TOTAL_PART_BYTES) {
      refuse(
        "workbook-too-large",
        `the workbook is more than ${grouped(TOTAL_PART_BYTES)} bytes when unpacked; save the survey sheet alone as a new workbook`,
      );
    }
  }

  #check(entry: ZipEntry, bytes: number, crc: number): void {
    if (bytes === entry.bytes && crc >>> 0 === entry.crc) return;
    refuse(
      "damaged-part",
      `the part ${quoted(entry.name)} is damaged (its checksum does not match); save or download the workbook again`,
    );
  }

  async #sized<T>(entry: ZipEntry, inflating: Promise<T>): Promise<T> {
    try {
      return await inflating;
    } catch (error) {
      // The directory may understate a size to slip past the limits, so its figure is the limit.
      const tooLarge = error instanceof Error && error.name === "TooLarge";
      return refuse(
        tooLarge ? "part-size-lies" : "damaged-part",
        tooLarge
          ? `the part ${quoted(entry.name)} unpacks to more than the ${grouped(entry.bytes)} bytes that the workbook states; get the workbook again from whoever sent it`
          : `the part ${quoted(entry.name)} is damaged (it cannot be unpacked); save or download the workbook again`,
      );
    }
  }
}
