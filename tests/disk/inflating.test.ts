import { deflateRawSync } from "node:zlib";
import { describe, expect, it } from "vitest";
import { nodeInflating } from "../../src/disk/index.js";

const data = new TextEncoder().encode("1480 r/min, ".repeat(1_000));
const packed = deflateRawSync(data);

describe("unpacking", () => {
  it.each([data.length, data.length + 1, 1_000_000_000])("gives all bytes up to %i", async (most) => {
    expect(new Uint8Array(await nodeInflating.inflateRaw(packed, most))).toEqual(data);
  });

  it.each([data.length - 1, 1, 0])("stops at %i bytes", async (most) => {
    await expect(nodeInflating.inflateRaw(packed, most)).rejects.toMatchObject({ name: "TooLarge" });
  });

  it("gives nothing for nothing", async () => {
    expect(await nodeInflating.inflateRaw(deflateRawSync(new Uint8Array()), 0)).toHaveLength(0);
  });

  it.each([new Uint8Array(), packed.subarray(0, 20), Uint8Array.from([255, 255, 255])])(
    "fails on damaged data, not as too large",
    async (damaged) => {
      await expect(nodeInflating.inflateRaw(damaged, 100_000)).rejects.not.toMatchObject({ name: "TooLarge" });
    },
  );
});

it("takes the checksum that zip files use", () => {
  expect(nodeInflating.crc32(new TextEncoder().encode("123456789"))).toBe(0xcbf43926);
});
