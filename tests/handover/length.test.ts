import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { lengthOf, shorten } from "../../src/handover/length.js";
import { COUNTED_IN } from "../../src/handover/mapping.js";

const TO_40 = { most: 40, counted: "characters", mark: "…" } as const;

describe("the length of a text", () => {
  it("is counted as the other side counts", () => {
    // a, u with diaeresis, euro sign, a letter beyond the first 65,536
    const text = "aü€𝒳";
    expect(COUNTED_IN.map((counted) => lengthOf(text, counted))).toEqual([4, 5, 1 + 2 + 3 + 4]);
  });

  it("agrees with the encoder of the platform", () => {
    fc.assert(
      fc.property(fc.string({ unit: "grapheme" }), (text) => {
        expect(lengthOf(text, "utf-8-bytes")).toBe(new TextEncoder().encode(text).length);
        expect(lengthOf(text, "utf-16-units")).toBe(text.length);
        expect(lengthOf(text, "characters")).toBe([...text].length);
      }),
    );
  });
});

describe("a text that is shortened", () => {
  it("is cut between words where that costs little", () => {
    expect(shorten("the hole is 14.9 mm deep to its full diameter", TO_40)).toBe(
      "the hole is 14.9 mm deep to its full…",
    );
    expect(shorten("Schwingungsüberwachungseinrichtungsbefestigung", TO_40)).toBe(
      "Schwingungsüberwachungseinrichtungsbefe…",
    );
    expect(shorten("Mill: Schwingungsüberwachungseinrichtungsbefestigung", TO_40)).toBe(
      "Mill: Schwingungsüberwachungseinrichtun…",
    );
  });

  it("never loses an accent or half a character at the cut", () => {
    const umlaut = `${"x".repeat(38)}u\u0308y`;
    expect(shorten(umlaut, TO_40)).toBe(`${"x".repeat(38)}…`);
    const pair = `${"x".repeat(39)}𝒳`;
    expect(shorten(pair, { ...TO_40, counted: "utf-16-units" })).toBe(`${"x".repeat(39)}…`);
    // Five code points that are one picture: all of it, or nothing.
    const family = "👩‍👩‍👧";
    expect(shorten(`abc${family}def`, { most: 7, counted: "characters", mark: "…" })).toBe("abc…");
  });

  it("fits, is a beginning of the text, and ends between graphemes, whatever the text", () => {
    const graphemes = new Intl.Segmenter("und", { granularity: "grapheme" });
    const limits = fc.record({
      most: fc.integer({ min: 1, max: 60 }),
      counted: fc.constantFrom(...COUNTED_IN),
      mark: fc.constantFrom("", "…", "..."),
    });
    // Characters on whose boundaries all versions of Unicode in use agree.
    const unit = fc.constantFrom("a", "b", " ", "ü", "u\u0308", "ß", "€", "𝒳", "😀", "👩‍👧", "-", ",", "\n");
    fc.assert(
      fc.property(fc.string({ unit, maxLength: 80 }), limits, (text, limit) => {
        const short = shorten(text, limit);
        expect(lengthOf(short, limit.counted)).toBeLessThanOrEqual(limit.most);
        const mark = lengthOf(limit.mark, limit.counted) < limit.most ? limit.mark : "";
        expect(short.endsWith(mark)).toBe(true);
        const kept = short.slice(0, short.length - mark.length);
        expect(text.startsWith(kept)).toBe(true);
        const bounds = [...graphemes.segment(text)].map(({ index }) => index);
        expect([0, text.length, ...bounds]).toContain(kept.length);
      }),
      { numRuns: 500 },
    );
  });
});
