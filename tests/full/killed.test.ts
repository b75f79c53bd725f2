import { spawn, spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { copyFileSync, cpSync, mkdirSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as pause } from "node:timers/promises";
import { describe, expect, it } from "vitest";
import { CLI, PROJECT, run, temporaryFolder } from "./tools.js";

const folder = temporaryFolder();
const survey = join(folder, "survey.xlsx");
copyFileSync(`${PROJECT}tests/data/surveys/quillmoor.xlsx`, survey);
const digest = (): string => createHash("sha256").update(readFileSync(survey)).digest("hex");
const SURVEY_DIGEST = digest();

const screen = (out: string, stage = "proposed"): readonly string[] => [
  CLI,
  "screen",
  survey,
  "--set",
  "core",
  "--as-of",
  "2026-11-25",
  "--stage",
  stage,
  "--out",
  out,
  "--overwrite",
];

type Files = Readonly<Record<string, string>>;
const filesIn = (out: string): Files =>
  Object.fromEntries(readdirSync(out).map((name) => [name, readFileSync(join(out, name)).toString("latin1")]));
const isTemporary = (name: string): boolean => name.endsWith(".tmp");

/** The files of a run to its end; the built-in stage gives other files than the one that the tests write over them. */
function filesOf(stage: string): Files {
  const out = join(folder, `of-${stage}`);
  const ended = run(process.execPath, screen(out, stage));
  expect(ended.status, ended.err).toBe(0);
  return filesIn(out);
}
const OLD = filesOf("installed");
const NEW = filesOf("proposed");

/** A folder with the old files in it. */
function oldFiles(name: string): string {
  const out = join(folder, name);
  rmSync(out, { recursive: true, force: true });
  cpSync(join(folder, "of-installed"), out, { recursive: true });
  return out;
}

/** Every file old or new as a whole, nothing else but temporary files, the survey as it was. */
function expectWhole(out: string, when: string): void {
  const found = filesIn(out);
  expect(
    Object.keys(found).filter((name) => !isTemporary(name)),
    when,
  ).toEqual(Object.keys(OLD));
  for (const name of Object.keys(OLD)) {
    const state = found[name] === OLD[name] ? "old" : found[name] === NEW[name] ? "new" : "damaged";
    expect(state, `${name}, ${when}`).not.toBe("damaged");
  }
  expect(digest(), when).toBe(SURVEY_DIGEST);
}

/** A run that nobody disturbs puts everything right again. */
function expectMended(out: string): void {
  const ended = run(process.execPath, screen(out));
  expect(ended.status, ended.err).toBe(0);
  expect(filesIn(out)).toEqual(NEW);
}

/** Numbers from 0 up to 1, the same in every run. */
function generator(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

describe("a run that is killed", () => {
  it("the two sets of files differ, so that old and new can be told apart", () => {
    expect(Object.keys(OLD)).toHaveLength(5);
    for (const name of Object.keys(OLD)) expect(OLD[name] === NEW[name], name).toBe(false);
  });

  it("at each step of its writing leaves every file old or new as a whole", () => {
    const watch = ["--import", `${PROJECT}tests/full/dies-at.mjs`];
    const undisturbed = run(process.execPath, [...watch, ...screen(oldFiles("steps"))]);
    const steps = Number(/steps:(\d+)/.exec(undisturbed.err)?.[1]);
    expect(steps).toBeGreaterThan(15);
    let left = 0;
    for (let step = 1; step <= steps; step++) {
      const out = oldFiles("steps");
      const killed = spawnSync(process.execPath, [...watch, ...screen(out)], {
        env: { ...process.env, DIES_AT: String(step) },
      });
      expect(killed.signal, `step ${step}`).toBe("SIGKILL");
      expectWhole(out, `killed at step ${step}`);
      left += readdirSync(out).filter(isTemporary).length;
    }
    expect(left).toBeGreaterThan(steps);
    expectMended(join(folder, "steps"));
  }, 900_000);

  it.each([1, 2, 3])(
    "at any moment leaves every file old or new as a whole (round %i)",
    async (round) => {
      const random = generator(round);
      const start = performance.now();
      run(process.execPath, screen(oldFiles("any")));
      const usual = performance.now() - start;
      let killed = 0;
      for (let i = 0; i < 10; i++) {
        const out = oldFiles("any");
        const child = spawn(process.execPath, screen(out), { stdio: "ignore" });
        const ended = new Promise<string | null>((resolve) => child.on("close", (_, signal) => resolve(signal)));
        // Every other one only once it writes, which is a small part of a run.
        if (i % 2 === 1) while (child.exitCode === null && !readdirSync(out).some(isTemporary)) await pause(1);
        await pause(random() * usual * (i % 2 === 1 ? 0.3 : 1));
        child.kill(i % 5 === 4 ? "SIGTERM" : "SIGKILL");
        if ((await ended) !== null || child.exitCode === 130) killed += 1;
        expectWhole(out, `round ${round}, kill ${i}`);
      }
      expect(killed).toBeGreaterThan(4);
      expectMended(join(folder, "any"));
    },
    600_000,
  );
});

describe("a disk that takes no more", () => {
  const refused = (ended: ReturnType<typeof run>, out: string, when: string): void => {
    expect(ended.status, when + ended.err).toBe(2);
    expect(ended.err.trim().split("\n"), when).toHaveLength(1);
    expect(ended.err).not.toMatch(/^\s+at /m);
    expectWhole(out, when);
    expect(readdirSync(out).filter(isTemporary), when).toEqual([]);
  };

  it.skipIf(process.platform === "win32")("past so many bytes of a file leaves the old files as they were", () => {
    for (const blocks of [0, 1, 3, 8]) {
      const out = oldFiles("limited");
      const ended = run("bash", ["-c", `ulimit -f ${blocks}; exec "$@"`, "bash", process.execPath, ...screen(out)]);
      refused(ended, out, `at ${blocks} KiB: `);
    }
    expectMended(join(folder, "limited"));
  });

  it("because it is full leaves the old files as they were", ({ skip }) => {
    const out = join(folder, "small-disk");
    mkdirSync(out);
    const needed = Object.values(OLD).reduce((sum, content) => sum + Math.ceil(content.length / 4096) * 4096, 0);
    const mounted = run("mount", ["-t", "tmpfs", "-o", `size=${needed + 16_384}`, "tmpfs", out]);
    if (mounted.status !== 0) skip("a small disk cannot be mounted here");
    try {
      cpSync(join(folder, "of-installed"), out, { recursive: true });
      const ended = run(process.execPath, screen(out));
      refused(ended, out, "full disk: ");
      expect(ended.err).toContain("full");
      expect(filesIn(out)).toEqual(OLD);
    } finally {
      run("umount", [out]);
    }
  });
});
