import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { loadRulebook } from "../../../src/rulebook/index.js";
import { bookBelow, overlayFiles, SMALL_OVERLAY } from "./small-overlay.js";

const below = bookBelow();

/** Lines that mean something in some file of an overlay, to stand where they do not belong. */
const LINES = [
  ...new Set(Object.values(SMALL_OVERLAY).flatMap((text) => text.split("\n"))),
  "replaces: { limits: [], __proto__: { x: 1 } }",
  "changes: null",
  "addsCases: null",
  "switchedOff: null",
];

/** One line taken out, put in or replaced. */
const damage = fc.record({
  file: fc.constantFrom(...Object.keys(SMALL_OVERLAY)),
  at: fc.nat(30),
  remove: fc.nat(2),
  put: fc.option(fc.constantFrom(...LINES)),
});

describe("a damaged overlay", () => {
  it("loads or is refused with places, and never throws", () => {
    fc.assert(
      fc.property(fc.array(damage, { minLength: 1, maxLength: 3 }), (damages) => {
        const texts: Record<string, string> = { ...SMALL_OVERLAY };
        for (const { file, at, remove, put } of damages) {
          const lines = (texts[file] ?? "").split("\n");
          lines.splice(at % lines.length, remove, ...(put === null ? [] : [put]));
          texts[file] = lines.join("\n");
        }
        const overlay = overlayFiles(texts);
        const loading = loadRulebook(below, { over: [overlay] });
        if (loading.ok) {
          expect(loading.rulebook.overlays).toHaveLength(1);
          expect(loading.rulebook.rules.map(({ id }) => id)).toEqual(
            expect.arrayContaining(["thread-depth", "locked"]),
          );
          expect(loading.rulebook.rules.find(({ id }) => id === "locked")?.releases).toBe("never");
          return;
        }
        expect(loading.findings.length).toBeGreaterThan(0);
        const files = new Set([...overlay.files, ...below].map(({ path }) => path));
        for (const { file, line, column, text } of loading.findings) {
          expect(files).toContain(file);
          expect(line * column).toBeGreaterThan(0);
          expect(text).toMatch(/^(?![A-Z]).*[^.]$/s);
        }
      }),
      { numRuns: 150 },
    );
  }, 60_000);
});
