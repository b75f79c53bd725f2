import { describe, expect, it } from "vitest";
import { loadRulebook } from "../../src/rulebook/index.js";
import type { Broken } from "./broken.js";
import { BROKEN } from "./broken-files.js";
import { SMALL_BOOK, SMALL_GROUPS, smallFiles } from "./small-book.js";

const MARK = "▶";

/** Breaks one thing; the mark in the new text says where the finding must stand, and is taken out. */
function breakBook({ file, from, to, at }: Broken): { text: string; line: number; column: number } {
  const good = SMALL_BOOK[file] ?? SMALL_GROUPS[file] ?? "";
  if (good.split(from).length !== 2) throw new Error(`"${from}" must stand once in ${file}`);
  const marked = good.replace(from, () => to).replace(at ?? MARK, (found) => (at === undefined ? found : MARK + found));
  if (marked.split(MARK).length !== 2) throw new Error(`the place must be marked once in ${file}`);
  const before = marked.slice(0, marked.indexOf(MARK)).split("\n");
  return { text: marked.replace(MARK, ""), line: before.length, column: (before.at(-1) ?? "").length + 1 };
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
