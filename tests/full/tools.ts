import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { unzipSync } from "fflate";
import { afterAll } from "vitest";

/** Top folder of the project, with its `/`. */
export const PROJECT = fileURLToPath(new URL("../../", import.meta.url));

/** The built command line. */
export const CLI = `${PROJECT}dist/cli/main.js`;

/** The sample survey as every test of this folder screens it; paths are relative to the project. */
export const SCREEN_SAMPLE: readonly string[] = [
  "screen",
  "samples/survey.xlsx",
  "--set",
  "core",
  "--site-file",
  "samples/site.yaml",
  "--as-of",
  "2026-11-25",
];

/** What a program printed and how it ended; `status` is null where it could not be started. */
export interface Run {
  readonly status: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs a program to its end. */
export function run(
  command: string,
  args: readonly string[],
  { cwd = PROJECT, env = {} }: { readonly cwd?: string; readonly env?: Readonly<Record<string, string>> } = {},
): Run {
  const ended = spawnSync(command, [...args], {
    cwd,
    env: { ...process.env, ...env },
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  return { status: ended.status, out: ended.stdout ?? "", err: ended.stderr ?? "" };
}

/** A folder of its own for a test file, taken away at the end. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), "spotface-full-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/**
 * Every file of a folder as text that can be compared: a workbook as its parts in their order, because versions of
 * Node may pack the same bytes differently.
 */
export function contentsOf(folder: string): Readonly<Record<string, string>> {
  const names = readdirSync(folder).sort();
  return Object.fromEntries(
    names.flatMap((name) => {
      const bytes = readFileSync(join(folder, name));
      if (!name.endsWith(".xlsx")) return [[name, bytes.toString("utf8")]];
      const parts = Object.entries(unzipSync(bytes));
      return parts.map(([part, unpacked], i) => [`${name} ${i} ${part}`, Buffer.from(unpacked).toString("latin1")]);
    }),
  );
}
