import { isUtf8 } from "../xml-encoding.js";
import { cannotEditSheet } from "./sheet-wish.js";

/** Bytes in which a part tells its encoding. */
const TELLING_BYTES = 200;

/** Looks at the beginning of a sheet part: what is added to it is UTF-8, and so must the part be. */
export class Utf8Check {
  readonly #sheet: string;
  #head: number[] | null = [];

  constructor(sheet: string) {
    this.#sheet = sheet;
  }

  /** @throws Uneditable if the part is written in another encoding */
  see(piece: Uint8Array): void {
    if (this.#head === null) return;
    this.#head.push(...piece.subarray(0, TELLING_BYTES));
    if (!isUtf8(Uint8Array.from(this.#head))) cannotEditSheet(this.#sheet, "not-utf-8", "is not written in UTF-8");
    if (this.#head.length >= TELLING_BYTES) this.#head = null;
  }
}
