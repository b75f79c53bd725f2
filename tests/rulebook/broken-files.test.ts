import { describe, expect, it } from "vitest";
import { loadRulebook } from "../../src/rulebook/index.js";
import { type Broken, type BrokenText, breakText } from "./broken.js";
import { BROKEN } from "./broken-files.js";
import { SMALL_BOOK, SMALL_GROUPS, smallFiles } from "./small-book.js";

/** Breaks one thing in a file of the small book. */
function breakBook(broken: Broken): BrokenText {
  return breakText(SMALL_BOOK[broken.file] ?? SMALL_GROUPS[broken.file] ?? "", broken);
}

describe("a rulebook with one mistake", () => {
  it("loads while nothing is broken", () => {
    expect(loadRulebook(smallFiles(SMALL_GROUPS))).toMatchObject({ ok: true });
  });

  it.each(BROKEN.map((broken) => [broken.name, broken] as const))("%s", (_name, broken) => {
    const { text, line, column } = breakBook(broken);
    const loading = loadRulebook(smallFiles({ ...SMALL_GROUPS, [broken.file]: text }));
    if (loading.ok) throw new Error("it loaded");
    const { file, code, says = "" } = broken;
    expect(loading.findings).toEqual([{ file, line, column, code, text: expect.stringContaining(says) }]);
  });

  it("says every finding in one line that begins with a small letter and has no full stop", () => {
    for (const broken of BROKEN) {
      const loading = loadRulebook(smallFiles({ ...SMALL_GROUPS, [broken.file]: breakBook(broken).text }));
      for (const { text } of loading.ok ? [] : loading.findings) {
        expect(text).toMatch(/^(?![A-Z]).*[^.]$/);
        expect(text).not.toContain("undefined");
      }
    }
  });
});
