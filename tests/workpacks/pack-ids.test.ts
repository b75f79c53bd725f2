import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { PackIds } from "../../src/workpacks/pack-ids.js";

const SAFE = /^[a-z0-9]+(-[a-z0-9]+)*$/;

describe("the id of a pack", () => {
  it("is the day and the tag, where that can be spelled safely", () => {
    const ids = new PackIds();
    expect(ids.of("2026-12-14", ["P-4101"])).toBe("2026-12-14-p-4101");
    expect(ids.of(null, ["P-4101"])).toBe("no-day-p-4101");
  });

  it("gets a digest where it cannot, or where another machine is spelled like it", () => {
    const ids = new PackIds();
    expect(ids.of("2026-12-14", ["Mühle 3/α"])).toMatch(/^2026-12-14-mu-hle-3-[0-9a-f]{8}$/);
    expect(ids.of("2026-12-14", ["../../etc"])).toMatch(/^2026-12-14-etc-[0-9a-f]{8}$/);
    expect(ids.of("2026-12-14", ["P-1"])).toBe("2026-12-14-p-1");
    expect(ids.of("2026-12-14", ["p 1"])).toMatch(/^2026-12-14-p-1-[0-9a-f]{8}$/);
  });

  it("is safe in file names, short, and different for different machines, whatever they are called", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.string({ unit: "binary", minLength: 1, maxLength: 60 }), { maxLength: 8 }),
        (names) => {
          const ids = new PackIds();
          const made = names.map((name) => ids.of("2026-12-14", [name]));
          expect(new Set(made).size).toBe(names.length);
          for (const id of made) {
            expect(id).toMatch(SAFE);
            expect(id.length).toBeLessThanOrEqual(64);
          }
        },
      ),
    );
  });
});
