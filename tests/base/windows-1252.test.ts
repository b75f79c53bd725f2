import { describe, expect, it } from "vitest";
import { windows1252Byte } from "../../src/base/index.js";

/** Bytes that stand for nothing; decoders give a control character for them. */
const NOTHING = [0x81, 0x8d, 0x8f, 0x90, 0x9d];

describe("Windows-1252", () => {
  it("has a byte for what the decoder of the platform reads from it, and for nothing else", () => {
    const decoder = new TextDecoder("windows-1252");
    // In one go some versions of Node take it for Latin-1; as a stream all decode it as it is.
    const stream = { stream: true };
    const read = Array.from(
      { length: 256 },
      (_, byte) => decoder.decode(Uint8Array.of(byte), stream).codePointAt(0) ?? -1,
    );
    for (const [byte, code] of read.entries()) {
      if (NOTHING.includes(byte)) continue;
      expect(windows1252Byte(code), `byte ${byte}`).toBe(byte);
    }
    const known = new Set(read.filter((_, byte) => !NOTHING.includes(byte)));
    for (let code = 0; code < 0x3000; code++) expect(windows1252Byte(code) !== null, `U+${code}`).toBe(known.has(code));
    expect([...known].filter((code) => code > 0xff)).toHaveLength(27);
  });
});
