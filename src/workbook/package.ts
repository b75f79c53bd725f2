import type { Inflating, ReadingLimits } from "./cells.js";
import { TOTAL_PART_BYTES } from "./limits.js";
import { grouped, quoted, refuse } from "./unreadable.js";
import { readZipDirectory, type ZipEntry } from "./zip-directory.js";

/** A part with its bytes, named as the package names it. */
export interface Part {
  readonly name: string;
  readonly bytes: Uint8Array;
}

/** The parts of one .xlsx file; each is inflated when asked for and never kept. */
export class WorkbookPackage {
  readonly names: readonly string[];
  readonly #entries: ReadonlyMap<string, ZipEntry>;
  readonly #file: Uint8Array;
  readonly #inflating: Inflating;
  readonly #limits: ReadingLimits;
  #inflatedBytes = 0;

  /** @throws Unreadable if the directory of the file does not hold up */
  constructor(file: Uint8Array, inflating: Inflating, limits: ReadingLimits) {
    const entries = readZipDirectory(file);
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

  /** Size of a part after inflating, bytes, as the directory states it; 0 for a part that does not exist. */
  statedBytes(key: string): number {
    return this.#entries.get(key)?.bytes ?? 0;
  }

  /**
   * Inflates a part, checking size and checksum.
   *
   * @returns the part, or null if there is none of that name
   * @throws Unreadable if it is too large, damaged or not what the directory says
   */
  async part(key: string, kind: "sheet" | "other"): Promise<Part | null> {
    const entry = this.#entries.get(key);
    if (!entry) return null;
    const limit = kind === "sheet" ? this.#limits.sheetPartBytes : this.#limits.otherPartBytes;
    if (entry.bytes > limit) {
      refuse(
        "part-too-large",
        `the part ${quoted(entry.name)} is ${grouped(entry.bytes)} bytes when unpacked, more than the limit of ${grouped(limit)}; save the survey sheet alone as a new workbook`,
      );
    }
    this.#inflatedBytes += entry.bytes;
    if (this.#inflatedBytes > TOTAL_PART_BYTES) {
      refuse(
        "workbook-too-large",
        `the workbook is more than ${grouped(TOTAL_PART_BYTES)} bytes when unpacked; save the survey sheet alone as a new workbook`,
      );
    }
    const bytes = await this.#inflated(entry);
    if (bytes.length !== entry.bytes || this.#inflating.crc32(bytes) >>> 0 !== entry.crc) {
      refuse(
        "damaged-part",
        `the part ${quoted(entry.name)} is damaged (its checksum does not match); save or download the workbook again`,
      );
    }
    return { name: entry.name, bytes };
  }

  async #inflated(entry: ZipEntry): Promise<Uint8Array> {
    const data = this.#file.subarray(entry.start, entry.start + entry.compressedBytes);
    if (entry.method === "stored") return data;
    try {
      return await this.#inflating.inflateRaw(data, entry.bytes);
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
