const SPARE_BYTES = 1_024;

/** The bytes in hand of a stream that is larger than memory should be: what came last, and what is not done before it. */
export class XmlWindow {
  bytes: Uint8Array = new Uint8Array(0);
  /** The first byte that is not done. */
  at = 0;
  to = 0;
  /** Bytes of the stream before those in hand. */
  before = 0;

  /** Bytes in hand that are not done. */
  get pending(): number {
    return this.to - this.at;
  }

  /** Adds the next bytes; what is not done moves to the beginning. */
  append(piece: Uint8Array): void {
    const { pending } = this;
    if (pending + piece.length > this.bytes.length) {
      const wider = new Uint8Array(Math.max(2 * pending, pending + piece.length) + SPARE_BYTES);
      wider.set(this.bytes.subarray(this.at, this.to));
      this.bytes = wider;
    } else this.bytes.copyWithin(0, this.at, this.to);
    this.bytes.set(piece, pending);
    this.before += this.at;
    this.at = 0;
    this.to = pending + piece.length;
  }

  /** Whether a line ends at the byte: a carriage return with its line feed is one end. */
  endsLine(at: number): boolean {
    const byte = this.bytes[at];
    return byte === 10 || (byte === 13 && (at + 1 >= this.to || this.bytes[at + 1] !== 10));
  }
}
