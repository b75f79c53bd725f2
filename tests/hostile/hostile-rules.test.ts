import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { temporaryFolders } from "../disk/temporary-folder.js";
import { SMALL_BOOK } from "../rulebook/small-book.js";
import { type CommandRun, runCommand, steersTerminal } from "../tools/run-command.js";
import { leastWork } from "../tools/work.js";
import { HOSTILE } from "./expected.js";
import { goodRule, movedRules, valuesOf } from "./moved-rules.js";

const freshFolder = temporaryFolders();
const PATH = "seat/hot-surface.json";

/** The small book without its rules. */
const BARE: Files = {
  ...SMALL_BOOK,
  "hole/thread-depth.yaml": null,
  "speed/slow.yaml": null,
  "conditions/outdoors.yaml": null,
};

type Files = Readonly<Record<string, string | Uint8Array | null>>;

/** What the hostile part of a file becomes in a rule of ours, and the codes of findings that must be among those given. */
interface Moved {
  readonly files: (raw: string) => Files;
  readonly codes: readonly string[];
}

/** One file for each rule, named as the first is; ids are hostile in some of them. */
const eachRule = (raw: string): Files =>
  Object.fromEntries(movedRules(raw).map((text, i) => [i === 0 ? PATH : `seat/rule-${i}.json`, text]));
const firstRule = (raw: string): Files => ({ [PATH]: movedRules(raw)[0] ?? "" });

const MOVED: Readonly<Record<string, Moved>> = {
  "rules-proto-key.json": {
    files: (raw) => ({
      [PATH]: goodRule({}, `"__proto__": ${valuesOf(raw, "__proto__")[0]}`),
      "seat/other.json": goodRule({ id: '"other"' }, `"constructor": ${valuesOf(raw, "constructor")[0]}`),
    }),
    codes: ["refused-key", "refused-key"],
  },
  "rules-slow-regex.json": { files: eachRule, codes: ["unknown-operator", "unknown-operator", "unknown-operator"] },
  "rules-deep-20000.json": { files: firstRule, codes: ["too-deep"] },
  "rules-huge-list.json": { files: firstRule, codes: ["file-too-long"] },
  "rules-duplicate-id.json": { files: eachRule, codes: ["duplicate-id", "duplicate-id", "duplicate-id"] },
  "rules-duplicate-json-key.json": { files: firstRule, codes: ["duplicate-key"] },
  "rules-path-filter.json": { files: eachRule, codes: ["refused-key", "refused-key"] },
  "rules-code-strings.json": {
    files: eachRule,
    codes: ["wrong-kind", "unknown-operator", "unknown-operator", "unknown-operator"],
  },
  "rules-empty-conditions.json": {
    files: eachRule,
    codes: ["list-too-short", "list-too-short", "missing-key", "missing-key"],
  },
  "rules-wrong-units.json": { files: eachRule, codes: ["wrong-dimension", "unknown-unit", "no-unit"] },
  "rules-not-json.json": { files: (raw) => ({ [PATH]: goodRule({}, raw.slice(1)) }), codes: ["not-yaml"] },
  "rules-utf16.json": {
    files: () => ({ [PATH]: Buffer.from(`\ufeff${goodRule()}`, "utf16le") }),
    codes: ["utf-16"],
  },
  "rules-bom.json": { files: () => ({ [PATH]: `\ufeff${goodRule()}` }), codes: [] },
  "rules-truncated.json": { files: () => ({ [PATH]: goodRule().slice(0, 400) }), codes: ["not-yaml"] },
  "rules-empty.json": { files: (raw) => ({ [PATH]: raw }), codes: ["empty-file"] },
  "rules-none.json": {
    files: () => ({}),
    codes: ["no-rules"],
  },
  "rules-include-traversal.json": {
    files: (raw) => ({
      [PATH]: goodRule({}, `"include": ${valuesOf(raw, "include")[0]}, "$ref": ${valuesOf(raw, "\\$ref")[0]}`),
    }),
    codes: ["refused-key", "refused-key"],
  },
  "rules-markup.json": { files: eachRule, codes: ["bad-form", "unseen-character", "bad-form"] },
  "rules-long-text.json": { files: firstRule, codes: ["file-too-long"] },
  "rules-cycle.json": {
    files: eachRule,
    codes: ["unknown-key", "unknown-key", "unknown-key", "unknown-key"],
  },
  "rules-yaml-alias-bomb.yaml": {
    files: (raw) => ({ "seat/hot-surface.yaml": `${raw.trimEnd()}\n` }),
    codes: ["anchor"],
  },
};

function writeBook(files: Files): string {
  const book = freshFolder();
  for (const [path, content] of Object.entries({ ...BARE, ...files })) {
    if (content === null) continue;
    mkdirSync(dirname(join(book, path)), { recursive: true });
    writeFileSync(join(book, path), content);
  }
  return book;
}

async function checked(book: string): Promise<CommandRun> {
  const prototype = Object.getOwnPropertyNames(Object.prototype).join();
  const { result: run, seconds } = await leastWork(1, () => runCommand("check-rules", book));
  expect(seconds).toBeLessThan(1);
  expect(Object.getOwnPropertyNames(Object.prototype).join()).toBe(prototype);
  expect(({} as Record<string, unknown>).polluted).toBeUndefined();
  expect(steersTerminal(run.err)).toBe(false);
  return run;
}

/** Every finding with its place, which must lie in the file. */
function codesIn(run: CommandRun, files: Files): readonly string[] {
  const found = [...run.err.matchAll(/^(\S+?):(\d+):(\d+): (.*) \[([a-z0-9-]+)\]$/gm)];
  return found.map(([, path = "", line, column, text = "", code = ""]) => {
    const [, content] = Object.entries(files).find(([name]) => path.endsWith(`/${name}`)) ?? [];
    const lines = typeof content === "string" ? content.replace("\ufeff", "").split("\n") : [""];
    expect(Number(line)).toBeLessThanOrEqual(lines.length);
    expect(Number(column)).toBeLessThanOrEqual((lines[Number(line) - 1] ?? "").length + 1);
    expect(text.length).toBeLessThan(400);
    return code;
  });
}

const names = existsSync(`${HOSTILE}/index.json`)
  ? (JSON.parse(readFileSync(`${HOSTILE}/index.json`, "utf8")) as readonly { readonly file: string }[])
      .map(({ file }) => file)
      .filter((file) => file.startsWith("rules-"))
  : [];

describe.skipIf(names.length === 0)("hostile rule files", () => {
  it("are all moved into the form of our rules", () => {
    expect(names.toSorted()).toEqual(Object.keys(MOVED).sort());
  });

  it("are moved into a rule that is good but for them", async () => {
    expect(await checked(writeBook({ [PATH]: goodRule() }))).toMatchObject({ code: 0, err: "" });
  });

  it.each(names)("%s, its hostile part in a rule of ours", async (name) => {
    const { files, codes } = MOVED[name] ?? { files: () => ({}), codes: ["not in the table"] };
    const moved = files(readFileSync(`${HOSTILE}/${name}`, "utf8"));
    const run = await checked(writeBook(moved));
    const found = codesIn(run, moved);
    expect(run.code, run.err).toBe(codes.length === 0 ? 0 : 2);
    for (const code of codes) expect(count(found, code), run.err).toBeGreaterThanOrEqual(count(codes, code));
    if (codes.length === 0) expect(found).toEqual([]);
  });

  it.each(names)("%s as it is, for a rule", async (name) => {
    const raw = readFileSync(`${HOSTILE}/${name}`);
    const path = name.endsWith(".yaml") ? "seat/hot-surface.yaml" : PATH;
    const run = await checked(writeBook({ [path]: raw }));
    expect(run.code).toBe(2);
    expect(codesIn(run, { [path]: name === "rules-utf16.json" ? raw : raw.toString("utf8") })).not.toEqual([]);
  });
});

function count(codes: readonly string[], code: string): number {
  return codes.filter((one) => one === code).length;
}
