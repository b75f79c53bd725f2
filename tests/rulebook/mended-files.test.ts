import { describe, expect, it } from "vitest";
import { type FileFinding, loadRulebook } from "../../src/rulebook/index.js";
import type { Broken } from "./broken.js";
import { BROKEN } from "./broken-files.js";
import { MENDED } from "./mended.js";
import { SMALL_BOOK, SMALL_GROUPS, smallFiles } from "./small-book.js";

/** The file with its mistake; a mark of the place in it is taken out. */
function brokenText({ file, from, to }: Broken): string {
  const good = SMALL_BOOK[file] ?? SMALL_GROUPS[file] ?? "";
  return good.replace(from, () => to.replace("▶", ""));
}

function load(file: string, text: string) {
  return loadRulebook(smallFiles({ ...SMALL_GROUPS, [file]: text }));
}

function findingOf(broken: Broken): FileFinding {
  const loading = load(broken.file, brokenText(broken));
  const [finding] = loading.ok ? [] : loading.findings;
  if (!finding) throw new Error(`${broken.name}: it loads`);
  return finding;
}

/** A text cut where a finding stands. */
function cutAt(text: string, { line, column }: FileFinding): readonly [before: string, from: string] {
  const lines = text.split("\n");
  const offset = lines.slice(0, line - 1).reduce((sum, one) => sum + one.length + 1, 0) + column - 1;
  return [text.slice(0, offset), text.slice(offset)];
}

const WORD = /^[\w.-]+/;
/** A value up to the comma, bracket or end of the line behind it. */
const VALUE = /^[^,\]}\n]*[^,\]}\n ]/;

/** What a finding says to do, done word by word; null where that takes more than the finding's own words. */
function doneAsSaid(text: string, finding: FileFinding): string | null {
  const [before, from] = cutAt(text, finding);
  const [, meant] = /did you mean "([^"]+)"\?$/.exec(finding.text) ?? [];
  if (meant !== undefined) {
    // Of a message the place is its beginning, and the finding quotes the word.
    const [, quoted = ""] = /^the message names "\{([^}]*)\}"/.exec(finding.text) ?? [];
    return before + (quoted === "" ? from.replace(WORD, meant) : from.replace(quoted, meant));
  }
  if (/; put it in quotes$/.test(finding.text)) return before + from.replace(VALUE, (value) => JSON.stringify(value));
  const [, written] = /has no unit; write it (?:with one, such as|as) (.+)$/.exec(finding.text) ?? [];
  if (written !== undefined) return before + from.replace(VALUE, written);
  const [, first] = /; use one of ([\w-]+)/.exec(finding.text) ?? [];
  return first === undefined ? null : before + from.replace(WORD, first);
}

const BY_ITS_WORDS = BROKEN.filter((broken) => {
  return (
    MENDED[`${broken.file}: ${broken.name}`] === undefined && doneAsSaid(brokenText(broken), findingOf(broken)) !== null
  );
});

describe("a rulebook with one mistake loads after doing what the finding says", () => {
  it.each(BY_ITS_WORDS.map((broken) => [`${broken.file}: ${broken.name}`, broken] as const))("%s", (_name, broken) => {
    const mended = doneAsSaid(brokenText(broken), findingOf(broken)) ?? "";
    expect(load(broken.file, mended)).toMatchObject({ ok: true });
  });

  it.each(Object.entries(MENDED))("%s", (name, [wrong, right]) => {
    const broken = BROKEN.find((one) => `${one.file}: ${one.name}` === name);
    if (!broken) throw new Error(`there is no mistake ${name}`);
    const text = brokenText(broken);
    expect(text.split(wrong)).toHaveLength(2);
    expect(
      load(
        broken.file,
        text.replace(wrong, () => right),
      ),
    ).toMatchObject({ ok: true });
  });

  it("is held of every mistake that is mended in its own file", () => {
    const held = new Set([...BY_ITS_WORDS, ...BROKEN.filter((one) => MENDED[`${one.file}: ${one.name}`])]);
    // These want a table, which is a file of its own.
    expect(BROKEN.filter((one) => !held.has(one)).map(({ name }) => name)).toEqual([
      "bound that no table gives",
      "derived fact that needs a table",
      "message that no table fills in",
      "condition that no table fills in",
    ]);
  });
});
