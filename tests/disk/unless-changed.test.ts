import { spawnSync } from "node:child_process";
import { existsSync, readdirSync, readFileSync, rmSync, utimesSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { sha256OfBytes } from "../../src/base/index.js";
import { claim } from "../../src/disk/claim.js";
import { type AsRead, OutputBatch, type WritingResult } from "../../src/disk/index.js";
import { temporaryFolders } from "./temporary-folder.js";

const newFolder = temporaryFolders();

function asRead(path: string, text: string | null): AsRead {
  return { path, digest: text === null ? null : sha256OfBytes(new TextEncoder().encode(text)) };
}

/** A run that has read the file and is about to put its own in place. */
async function runOn(path: string, read: string | null, text: string, more: readonly AsRead[] = []) {
  const rules = { inputs: [], overwrite: read !== null, asRead: [asRead(path, read), ...more] };
  const started = await OutputBatch.start([path], rules);
  if (!started.ok) throw new Error(JSON.stringify(started.problems));
  await started.batch.write(path, text);
  return started.batch;
}

const said = (result: WritingResult): string => (result.ok ? "done" : result.error.text);
const again = (what: string): string =>
  `another run has ${what} since this one looked at it; nothing is written, run again`;

describe("of two runs that have read the same", () => {
  it("the second one finds what the first one has made of it, and leaves it", async () => {
    const state = join(newFolder(), "state.json");
    writeFileSync(state, "old");
    const [one, other] = [await runOn(state, "old", "of one"), await runOn(state, "old", "of the other")];
    expect(said(await one.finish())).toBe("done");
    expect(said(await other.finish())).toBe(again("changed it"));
    expect(readFileSync(state, "utf8")).toBe("of one");
    expect(readdirSync(join(state, ".."))).toEqual(["state.json"]);
  });

  it.each([
    ["made it", null, "of another"],
    ["removed it", "old", null],
  ])("the second one stops where the first one has %s", async (what, read, now) => {
    const state = join(newFolder(), "state.json");
    if (read !== null) writeFileSync(state, read);
    const run = await runOn(state, read, "own");
    if (now === null) rmSync(state);
    else writeFileSync(state, now);
    expect(said(await run.finish())).toBe(again(what));
    expect(existsSync(state) ? readFileSync(state, "utf8") : null).toBe(now);
  });

  it("exactly one does its work, however close they are, and neither hears that something is broken", async () => {
    const state = join(newFolder(), "state.json");
    let now = "0";
    writeFileSync(state, now);
    for (let round = 1; round <= 20; round++) {
      const runs = await Promise.all([1, 2, 3].map((run) => runOn(state, now, `${round} ${run}`)));
      const results = await Promise.all(runs.map((run) => run.finish().then(said)));
      expect(results.sort()).toEqual([again("changed it"), again("changed it"), "done"]);
      expect(readFileSync(state, "utf8")).not.toBe(now);
      now = readFileSync(state, "utf8");
    }
    expect(readdirSync(join(state, ".."))).toEqual(["state.json"]);
  });

  it("an input that is another one by now stops the run, too, and is itself not claimed", async () => {
    const folder = newFolder();
    const [out, input] = [join(folder, "out.csv"), join(folder, "state.json")];
    writeFileSync(input, "later");
    const run = await runOn(out, null, "rows", [asRead(input, "old")]);
    expect(await run.finish()).toMatchObject({ ok: false, error: { path: input, text: again("changed it") } });
    expect(readdirSync(folder)).toEqual(["state.json"]);
  });
});

describe("a claim", () => {
  /** The claim of another process: this one's under another number, or another machine. */
  async function claimOf(state: string, process: number, machine: string | null): Promise<string> {
    const folder = join(state, "..");
    const before = readdirSync(folder);
    const own = await claim(state);
    if (!own.ok) throw new Error(own.error.text);
    const name = readdirSync(folder).find((one) => !before.includes(one)) ?? "";
    await own.release();
    expect(readdirSync(folder)).toEqual(before);
    const [, here = "", rest = ""] = /^\.spotface-([0-9a-f]{8})-\d+-(.+)$/.exec(name) ?? [];
    return join(folder, `.spotface-${machine ?? here}-${process}-${rest}`);
  }
  /** The number of a process that has ended. */
  const dead = spawnSync(process.execPath, ["-e", ""]).pid;

  it.each([
    ["this", process.ppid, null],
    ["another", dead, "00000000"],
  ])(
    "of a run that goes on, on %s machine, makes others wait, and then say who it is",
    async (where, owner, machine) => {
      const state = join(newFolder(), "state.json");
      const other = await claimOf(state, owner, machine);
      writeFileSync(other, "");
      expect(await claim(state)).toMatchObject({
        ok: false,
        error: {
          code: "busy",
          text: `another run (process ${owner} on ${where} machine) is replacing it at this moment; run again when that one is done`,
        },
      });
      expect(existsSync(other)).toBe(true);
      setTimeout(() => rmSync(other), 200);
      const waited = await claim(state);
      expect(waited.ok).toBe(true);
      const elsewhere = await claim(join(state, "..", "other.json"));
      expect(elsewhere.ok).toBe(true);
    },
  );

  it.each([
    ["of this machine whose process is gone", dead, null, 0],
    ["of another machine that is older than any can be", 1, "00000000", 121],
    ["of a process whose number somebody else has by now", process.ppid, null, 121],
  ])("%s does not count", async (_, owner, machine, seconds) => {
    const state = join(newFolder(), "state.json");
    const other = await claimOf(state, owner, machine);
    writeFileSync(other, "");
    utimesSync(other, new Date(), new Date(Date.now() - seconds * 1000));
    expect((await claim(state)).ok).toBe(true);
  });

  it("of a killed run is taken away by the next one that writes there", async () => {
    const state = join(newFolder(), "state.json");
    writeFileSync(state, "old");
    writeFileSync(await claimOf(state, dead, null), "");
    expect(said(await (await runOn(state, "old", "new")).finish())).toBe("done");
    expect(readdirSync(join(state, ".."))).toEqual(["state.json"]);
  });
});
