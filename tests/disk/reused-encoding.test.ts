import * as fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ReusedEncoding } from "../../src/disk/reused-encoding.js";

describe("encoding into the same memory", () => {
  it("gives what a new encoding gives, one text after the other", () => {
    const encoding = new ReusedEncoding();
    const texts = fc.array(fc.string({ unit: "binary", maxLength: 200 }), { maxLength: 5 });
    fc.assert(
      fc.property(texts, (given) => {
        for (const text of given) {
          expect(Array.from(encoding.encode(text))).toEqual(Array.from(new TextEncoder().encode(text)));
          encoding.release();
        }
      }),
    );
  });

  it("never writes over bytes that are still in use", () => {
    const encoding = new ReusedEncoding();
    const [first, second] = [encoding.encode("first"), encoding.encode("other")];
    encoding.release();
    const third = encoding.encode("third");
    expect([first, second, third].map((bytes) => new TextDecoder().decode(bytes))).toEqual(["first", "other", "third"]);
  });

  it("takes the same memory again once nothing is in use", () => {
    const encoding = new ReusedEncoding();
    const first = encoding.encode("first");
    encoding.release();
    expect(encoding.encode("other").buffer).toBe(first.buffer);
  });
});
