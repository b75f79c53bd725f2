import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { OutputBatch, writeTogether } from "../../src/disk/index.js";
import { runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";
import type { Break, FailingDisk } from "./failing-disk.js";
import { temporaryFolders } from "./temporary-folder.js";

const disk = vi.hoisted(
  (): FailingDisk => ({ steps: 0, breaksAt: Number.POSITIVE_INFINITY, how: "stops", opened: [] }),
);
vi.mock("node:fs/promises", async (original) => {
  const { failing } = await import("./failing-disk.js");
  return failing(await original(), disk);
});

const newFolder = temporaryFolders();
const NAMES = ["a.csv", "b.json", "c.xlsx"];
const OLD = "what was there before";
const NEW = "what is written, ".repeat(50);

function breakAt(step: number, how: Break): void {
  Object.assign(disk, { steps: 0, breaksAt: step, how });
}

afterEach(async () => {
  breakAt(Number.POSITIVE_INFINITY, "stops");
  // Those that the run closed are closed already.
  for (const file of disk.opened.splice(0)) await file.close().catch(() => {});
});

const isTemporary = (name: string): boolean => name.startsWith(".spotface-") && name.endsWith(".tmp");

/** Runs until it ends, or until the disk has stopped and nothing can end any more. */
async function untilStopped<T>(run: Promise<T>): Promise<T | "stopped"> {
  let ended: T | undefined;
  const watched = run.then((result) => {
    ended = result;
    return result;
  });
  while (disk.steps < disk.breaksAt && ended === undefined) await Promise.race([watched, pause()]);
  return disk.how === "stops" ? (ended ?? "stopped") : watched;
}

const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 2));

/** Writes the three files over old ones and breaks at the step; gives what became of each. */
async function broken(step: number, how: Break) {
  const folder = newFolder();
  for (const name of NAMES) writeFileSync(join(folder, name), OLD);
  breakAt(step, how);
  const outputs = NAMES.map((name) => ({ path: join(folder, name), data: NEW }));
  const result = await untilStopped(writeTogether(outputs, { inputs: [], overwrite: true }));
  await pause();
  return { folder, result, contents: NAMES.map((name) => readFileSync(join(folder, name), "utf8")) };
}

const steps = async (): Promise<number> => {
  await broken(Number.POSITIVE_INFINITY, "ENOSPC");
  return disk.steps;
};

describe("whatever step of the writing breaks", () => {
  it.each(["ENOSPC", "EACCES"] as const)(
    "with %s: every file is old or new as a whole, and nothing is left",
    async (how) => {
      const last = await steps();
      expect(last).toBeGreaterThan(12);
      let told = 0;
      for (let step = 1; step <= last; step++) {
        const { folder, result, contents } = await broken(step, how);
        for (const content of contents) expect([OLD, NEW], `step ${step}`).toContain(content);
        expect(readdirSync(folder), `step ${step}`).toEqual(NAMES);
        if (result === "stopped") throw new Error("the disk was to fail, not to stop");
        if (result.ok) continue;
        told += 1;
        expect(result.error.code).toBe(how === "ENOSPC" ? "disk-full" : "no-permission");
        const inPlace = NAMES.filter((_, i) => contents[i] === NEW).map((name) => join(folder, name));
        expect(result.inPlace).toEqual(inPlace);
      }
      expect(told).toBe(last);
    },
  );

  it("as if killed there: every file is old or new as a whole", async () => {
    const last = await steps();
    for (let step = 1; step <= last; step++) {
      const { folder, contents } = await broken(step, "stops");
      for (const content of contents) expect([OLD, NEW], `step ${step}`).toContain(content);
      expect(readdirSync(folder).filter((name) => !isTemporary(name))).toEqual(NAMES);
    }
  });
});

describe("the whole command", () => {
  const survey = projectPath("tests/data/surveys/tallgrass.csv");
  const screen = (folder: string) =>
    runCommand("screen", survey, "--as-of", "2026-11-25", "--out", folder, "--overwrite");
  const contentsOf = (folder: string) =>
    Object.fromEntries(readdirSync(folder).map((name) => [name, readFileSync(join(folder, name), "latin1")]));

  it.each(["ENOSPC", "EACCES"] as const)(
    "says so in one sentence and leaves old files as they were, with %s",
    async (how) => {
      const folder = newFolder();
      breakAt(Number.POSITIVE_INFINITY, how);
      expect(await screen(folder)).toMatchObject({ code: 0 });
      const last = disk.steps;
      const complete = contentsOf(folder);
      const before = readFileSync(survey);
      for (const step of [1, 5, Math.ceil(last / 2), last - 3, last]) {
        const old = Object.fromEntries(Object.keys(complete).map((name) => [name, `old ${name}`]));
        for (const [name, text] of Object.entries(old)) writeFileSync(join(folder, name), text);
        breakAt(step, how);
        const run = await screen(folder);
        expect(run.code, run.err).toBe(2);
        expect(run.err.trim().split("\n")).toHaveLength(1);
        expect(run.err).toContain(folder);
        for (const [name, content] of Object.entries(contentsOf(folder))) {
          expect([old[name], complete[name]], `${name} at step ${step}`).toContain(content);
        }
        expect(Object.keys(contentsOf(folder))).toEqual(Object.keys(complete));
      }
      expect(readFileSync(survey).equals(before)).toBe(true);
    },
  );
});

describe("what a killed run left behind", () => {
  /** A temporary file as it is called for a process with that id. */
  async function leftBehind(folder: string, owner: number | undefined): Promise<string> {
    const started = await OutputBatch.start([join(folder, "x")], { inputs: [], overwrite: true });
    const name = readdirSync(folder).find(isTemporary)?.replace(/-\d+-/, `-${owner}-`) ?? "";
    if (started.ok) await started.batch.abandon();
    writeFileSync(join(folder, name), "half");
    return name;
  }
  const write = (folder: string) =>
    writeTogether([{ path: join(folder, "a"), data: NEW }], { inputs: [], overwrite: true });
  const finished = spawnSync(process.execPath, ["-e", ""]).pid;

  it("is removed by the next that writes there", async () => {
    const folder = newFolder();
    await leftBehind(folder, finished);
    expect(await write(folder)).toEqual({ ok: true });
    expect(readdirSync(folder)).toEqual(["a"]);
  });

  it("stays while its run may go on, unless it is older than any run", async () => {
    const folder = newFolder();
    const ours = await leftBehind(folder, process.pid);
    const elsewhere = ours.replace(/^(\.spotface-)[0-9a-f]{8}/, "$100000000");
    writeFileSync(join(folder, elsewhere), "half");
    await write(folder);
    expect(readdirSync(folder)).toEqual([elsewhere, ours, "a"].sort());
    const twoDaysAgo = Date.now() / 1000 - 2 * 86_400;
    for (const name of [ours, elsewhere]) utimesSync(join(folder, name), twoDaysAgo, twoDaysAgo);
    await write(folder);
    expect(readdirSync(folder)).toEqual(["a"]);
  });

  it("is no excuse to remove anything else", async () => {
    const folder = newFolder();
    const others = [".notes.tmp", ".spotface-notes.tmp", `.spotface-00000000-${finished}-x.tmp`, "spotface.tmp"];
    for (const name of others) {
      writeFileSync(join(folder, name), "kept");
      utimesSync(join(folder, name), 1, 1);
    }
    await write(folder);
    expect(readdirSync(folder).sort()).toEqual([...others, "a"].sort());
  });
});
