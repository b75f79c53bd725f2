import { createHash } from "node:crypto";
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { type FileHandle, open } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, it, vi } from "vitest";
import { runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const NAMES = ["findings.csv", "points.csv", "report.html", "result.json", "screened.xlsx"];
let folder = "";
let out = "";
let survey = "";
/** What all file handles share, so that writing can be made to fail. */
let handles: FileHandle;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), "spotface-failing-"));
  out = join(folder, "out");
  survey = join(folder, "quillmoor.xlsx");
  cpSync(projectPath("tests/data/surveys/quillmoor.xlsx"), survey);
  mkdirSync(out);
  const file = await open(survey);
  handles = Object.getPrototypeOf(file) as FileHandle;
  await file.close();
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
afterEach(() => vi.restoreAllMocks());

/** Lets so many bytes through, as a disk that is full after them does, and refuses all others. */
function failAfter(bytes: number, code: string): void {
  const write = handles.write as (...args: unknown[]) => Promise<{ bytesWritten: number }>;
  let left = bytes;
  const failing = async function (this: FileHandle, data: Uint8Array, from: number, length: number) {
    if (left === 0) throw Object.assign(new Error(code), { code });
    const allowed = Math.min(left, length);
    left -= allowed;
    return write.call(this, data, from, allowed);
  };
  vi.spyOn(handles, "write").mockImplementation(failing as unknown as FileHandle["write"]);
}

function digestOf(path: string): string {
  return createHash("sha256").update(readFileSync(path)).digest("hex");
}

function oldFiles(): void {
  for (const name of readdirSync(out)) rmSync(join(out, name));
  for (const name of NAMES) writeFileSync(join(out, `quillmoor.${name}`), `old ${name}`);
}

const screened = () => runCommand("screen", survey, "--out", out, "--overwrite", "--as-of", "2026-11-25");

describe("a disk that lets only so many bytes through", () => {
  it.each([
    ["ENOSPC", "the disk is full", 0],
    ["ENOSPC", "the disk is full", 1],
    ["ENOSPC", "the disk is full", 5_000],
    ["ENOSPC", "the disk is full", 15_000],
    ["ENOSPC", "the disk is full", 30_000],
    ["ENOSPC", "the disk is full", 60_000],
    ["ENOSPC", "the disk is full", 100_000],
    ["EACCES", "access is not permitted", 0],
    ["EACCES", "access is not permitted", 20_000],
    ["EIO", "the disk reports an error", 70_000],
  ])("(%s: %s, after %i bytes) leaves every old file", async (code, words, bytes) => {
    oldFiles();
    const before = digestOf(survey);
    failAfter(bytes, code);
    const run = await screened();
    expect([run.code, run.out]).toEqual([2, ""]);
    expect(run.err).toContain(words);
    for (const name of NAMES) expect(readFileSync(join(out, `quillmoor.${name}`), "utf8")).toBe(`old ${name}`);
    expect(readdirSync(out)).toHaveLength(NAMES.length);
    expect(digestOf(survey)).toBe(before);
  });
});

it("writes all of them where the disk takes all bytes", async () => {
  oldFiles();
  failAfter(Number.MAX_SAFE_INTEGER, "ENOSPC");
  expect((await screened()).code).toBe(0);
  expect(readdirSync(out)).toHaveLength(NAMES.length);
  for (const name of NAMES) expect(readFileSync(join(out, `quillmoor.${name}`)).length).toBeGreaterThan(10_000);
});

it("says so and leaves every old file where the disk fails to make the bytes safe", async () => {
  oldFiles();
  vi.spyOn(handles, "sync").mockRejectedValue(Object.assign(new Error("EIO"), { code: "EIO" }));
  expect((await screened()).code).toBe(2);
  for (const name of NAMES) expect(readFileSync(join(out, `quillmoor.${name}`), "utf8")).toBe(`old ${name}`);
});
