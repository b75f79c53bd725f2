import { deflateRawSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nodeInflating } from "../../src/disk/index.js";
import { type Inflating, portableInflating } from "../../src/workbook/index.js";

const data = new TextEncoder().encode("1480 r/min, ".repeat(1_000));
const packed = deflateRawSync(data);

async function inPieces(inflating: Inflating, from: Uint8Array, most: number): Promise<Uint8Array> {
  const bytes: number[] = [];
  for await (const piece of inflating.inflateRawPieces(from, most)) for (const byte of piece) bytes.push(byte);
  return Uint8Array.from(bytes);
}

describe.each([
  ["node", nodeInflating],
  ["portable", portableInflating],
])("unpacking, %s", (_name, inflating) => {
  const ways = [
    ["whole", async (from: Uint8Array, most: number) => new Uint8Array(await inflating.inflateRaw(from, most))],
    ["in pieces", (from: Uint8Array, most: number) => inPieces(inflating, from, most)],
  ] as const;

  describe.each(ways)("%s", (_way, inflate) => {
    it.each([data.length, data.length + 1, 1_000_000_000])("gives all bytes up to %i", async (most) => {
      expect(await inflate(packed, most)).toEqual(data);
    });

    it.each([data.length - 1, 1, 0])("stops at %i bytes", async (most) => {
      await expect(inflate(packed, most)).rejects.toMatchObject({ name: "TooLarge" });
    });

    it("gives nothing for nothing", async () => {
      expect(await inflate(deflateRawSync(new Uint8Array()), 0)).toHaveLength(0);
    });

    it.each([new Uint8Array(), packed.subarray(0, 20), Uint8Array.from([255, 255, 255])])(
      "fails on damaged data, not as too large",
      async (damaged) => {
        await expect(inflate(damaged, 100_000)).rejects.toSatisfy(
          (error) => error instanceof Error && error.name !== "TooLarge",
        );
      },
    );
  });

  it("stops a bomb after the limit, not after the bomb", async () => {
    const bomb = deflateRawSync(new Uint8Array(200_000_000));
    let bytes = 0;
    const pour = async (): Promise<void> => {
      for await (const piece of inflating.inflateRawPieces(bomb, 1_000_000)) bytes += piece.length;
    };
    await expect(pour()).rejects.toMatchObject({ name: "TooLarge" });
    expect(bytes).toBeLessThanOrEqual(1_000_000);
  });

  it("takes the checksum that zip files use, in pieces too", () => {
    // Check value of CRC-32/ISO-HDLC in the catalogue of parametrised CRC algorithms.
    expect(inflating.crc32(new TextEncoder().encode("123456789"))).toBe(0xcbf43926);
    fc.assert(
      fc.property(fc.uint8Array(), fc.uint8Array(), (a, b) => {
        const whole = inflating.crc32(Uint8Array.from([...a, ...b]));
        expect(inflating.crc32(b, inflating.crc32(a))).toBe(whole);
        expect(whole).toBe(nodeInflating.crc32(Uint8Array.from([...a, ...b])));
      }),
    );
  });
});

it("gives a large part in many pieces that stay as they were given", async () => {
  const large = Uint8Array.from({ length: 3_000_000 }, (_, i) => (i * i) >> 7);
  const pieces: Uint8Array[] = [];
  for await (const piece of nodeInflating.inflateRawPieces(deflateRawSync(large), large.length)) pieces.push(piece);
  expect(pieces.length).toBeGreaterThan(5);
  expect(Buffer.compare(Buffer.concat(pieces), large)).toBe(0);
});

describe("packing, node", () => {
  it("packs what both unpack again, in whatever portions it comes", async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.uint8Array({ maxLength: 3_000 }), { maxLength: 20 }), async (portions) => {
        const packing = nodeInflating.packing();
        const pieces: Uint8Array[] = [];
        for (const portion of portions) {
          const lent = portion.slice();
          packing.push(lent);
          lent.fill(0);
          pieces.push(...(await packing.packed()));
        }
        packing.end();
        pieces.push(...(await packing.packed()));
        const whole = new Uint8Array(Buffer.concat(portions));
        const all = new Uint8Array(Buffer.concat(pieces));
        expect(new Uint8Array(await nodeInflating.inflateRaw(all, whole.length))).toEqual(whole);
        expect(await portableInflating.inflateRaw(all, whole.length)).toEqual(whole);
      }),
      { numRuns: 40 },
    );
  });

  it("holds back where more comes than can be packed at once", async () => {
    const packing = nodeInflating.packing();
    const noise = Uint8Array.from({ length: 3_000_000 }, (_, i) => (i * 2_654_435_761) >>> 13);
    packing.push(noise);
    const first = await packing.packed();
    packing.end();
    const all = Buffer.concat([...first, ...(await packing.packed())]);
    expect(first.length).toBeGreaterThan(0);
    expect(new Uint8Array(await nodeInflating.inflateRaw(new Uint8Array(all), noise.length))).toEqual(noise);
  });
});
