const ENCODER = new TextEncoder();

/** A text that a document repeats many times; it is encoded once, and kept in one form. */
export class Piece {
  #kept: string | Uint8Array;

  constructor(text: string) {
    this.#kept = text;
  }

  get text(): string {
    return typeof this.#kept === "string" ? this.#kept : new TextDecoder().decode(this.#kept);
  }

  /** In UTF-8. */
  get bytes(): Uint8Array {
    if (typeof this.#kept === "string") this.#kept = ENCODER.encode(this.#kept);
    return this.#kept;
  }
}

/** Where a document is written to, piece after piece. */
export interface Sink {
  piece(piece: Piece): void;
  text(text: string): void;
}

/** Puts a document together as text. */
export class TextSink implements Sink {
  #text = "";

  piece({ text }: Piece): void {
    this.#text += text;
  }

  text(text: string): void {
    this.#text += text;
  }

  /** What was written since it was last taken. */
  take(): string {
    const text = this.#text;
    this.#text = "";
    return text;
  }
}

/** Texts longer than this are left to the encoder, which is slow to start. */
const SHORT = 64;
/** Bytes that a character of a text takes at most in UTF-8. */
const MOST_BYTES = 3;
const FIRST_BYTES = 1 << 18;
/** What is taken is being written while the next is filled, and handed over while that is written. */
const MEMORIES = 3;

/**
 * Puts a document together as bytes in UTF-8. Most of a result document are repetitions, whose bytes are copied; as a
 * text of a gigabyte they would be joined, spread out and encoded once more for every point.
 */
export class ByteSink implements Sink {
  readonly #memories: Uint8Array[] = Array.from({ length: MEMORIES }, () => new Uint8Array(FIRST_BYTES));
  #turn = 0;
  #memory: Uint8Array = this.#memories[0] as Uint8Array;
  #length = 0;

  get length(): number {
    return this.#length;
  }

  piece({ bytes }: Piece): void {
    this.#makeRoom(bytes.length);
    this.#memory.set(bytes, this.#length);
    this.#length += bytes.length;
  }

  text(text: string): void {
    this.#makeRoom(text.length * MOST_BYTES);
    if (text.length > SHORT || !this.#putShort(text)) {
      this.#length += ENCODER.encodeInto(text, this.#memory.subarray(this.#length)).written;
    }
  }

  /** What was written since it was last taken; good until it has been taken two times more. */
  take(): Uint8Array {
    const taken = this.#memory.subarray(0, this.#length);
    this.#memories[this.#turn] = this.#memory;
    this.#turn = (this.#turn + 1) % MEMORIES;
    this.#memory = this.#memories[this.#turn] as Uint8Array;
    this.#length = 0;
    return taken;
  }

  /** False, and nothing written, where a character takes more than one byte. */
  #putShort(text: string): boolean {
    const memory = this.#memory;
    const from = this.#length;
    for (let i = 0; i < text.length; i++) {
      const code = text.charCodeAt(i);
      if (code > 0x7f) return false;
      memory[from + i] = code;
    }
    this.#length = from + text.length;
    return true;
  }

  #makeRoom(bytes: number): void {
    const needed = this.#length + bytes;
    if (needed <= this.#memory.length) return;
    const wider = new Uint8Array(Math.max(needed, this.#memory.length * 2));
    wider.set(this.#memory.subarray(0, this.#length));
    this.#memory = wider;
  }
}
