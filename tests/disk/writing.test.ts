import {
  chmodSync,
  existsSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { checkWritable, OutputBatch, writeTogether } from "../../src/disk/index.js";
import { temporaryFolders } from "./temporary-folder.js";

const newFolder = temporaryFolders();
const isRoot = process.getuid?.() === 0;
const free = { inputs: [], overwrite: false };

/** A batch that must start. */
async function started(targets: readonly string[], rules = free): Promise<OutputBatch> {
  const start = await OutputBatch.start(targets, rules);
  if (!start.ok) throw new Error(start.problems.map(({ text }) => text).join());
  return start.batch;
}

describe("a target is refused before anything is written", () => {
  const codes = async (targets: readonly string[], inputs: readonly string[] = [], overwrite = false) =>
    (await checkWritable(targets, inputs, overwrite)).map(({ code }) => code);

  it("if it exists and may not be replaced", async () => {
    const path = join(newFolder(), "a.json");
    writeFileSync(path, "old");
    expect(await codes([path])).toEqual(["exists"]);
    expect(await codes([path], [], true)).toEqual([]);
  });

  it("if it is something the run reads, under whatever name", async () => {
    const folder = newFolder();
    const survey = join(folder, "survey.xlsx");
    writeFileSync(survey, "survey");
    mkdirSync(join(folder, "sub"));
    linkSync(survey, join(folder, "hard.xlsx"));
    symlinkSync(folder, join(folder, "sub", "round"));
    for (const name of ["survey.xlsx", "sub/../survey.xlsx", "sub/round/survey.xlsx", "hard.xlsx"]) {
      expect(await codes([join(folder, name)], [survey], true), name).toEqual(["is-input"]);
    }
    symlinkSync(survey, join(folder, "link.xlsx"));
    expect(await codes([survey], [join(folder, "link.xlsx")], true)).toEqual(["is-input"]);
  });

  it("if it is a link, a folder, named twice or has no folder", async () => {
    const folder = newFolder();
    symlinkSync(join(folder, "elsewhere"), join(folder, "link"));
    expect(await codes([join(folder, "link")], [], true)).toEqual(["is-link"]);
    expect(await codes([folder], [], true)).toEqual(["is-folder"]);
    expect(await codes([join(folder, "a"), join(folder, "A")])).toEqual(["named-twice"]);
    expect(await codes([join(folder, "none", "a")])).toEqual(["not-found"]);
    expect(await codes([join(folder, "a\0")])).toEqual(["bad-path"]);
  });

  it.skipIf(isRoot)("if the folder or the file is read-only", async () => {
    const folder = newFolder();
    writeFileSync(join(folder, "a"), "");
    chmodSync(join(folder, "a"), 0o444);
    expect(await codes([join(folder, "a")], [], true)).toEqual(["read-only"]);
    chmodSync(folder, 0o555);
    expect(await codes([join(folder, "b")])).toEqual(["no-permission"]);
    chmodSync(folder, 0o755);
  });

  it("and none of the others is written then", async () => {
    const folder = newFolder();
    writeFileSync(join(folder, "b"), "old");
    const result = await writeTogether(
      [
        { path: join(folder, "a"), data: "new" },
        { path: join(folder, "b"), data: "new" },
      ],
      free,
    );
    expect(result).toMatchObject({ ok: false, error: { code: "exists" }, inPlace: [] });
    expect(readdirSync(folder)).toEqual(["b"]);
  });
});

describe("outputs are written together", () => {
  it("texts and bytes, in pieces, with nothing left beside them", async () => {
    const folder = newFolder();
    const [a, b] = [join(folder, "a.json"), join(folder, "b.bin")];
    const batch = await started([a, b]);
    await batch.write(a, "Ø ");
    await batch.write(b, Uint8Array.from([0, 255]));
    await batch.write(a, "25");
    expect(readdirSync(folder).filter((name) => !name.startsWith("."))).toEqual([]);
    expect(await batch.finish()).toEqual({ ok: true });
    expect(readFileSync(a, "utf8")).toBe("Ø 25");
    expect([...readFileSync(b)]).toEqual([0, 255]);
    expect(readdirSync(folder)).toEqual(["a.json", "b.bin"]);
  });

  it("replacing old ones, whose rights they keep", async () => {
    const path = join(newFolder(), "a");
    writeFileSync(path, "old");
    chmodSync(path, 0o640);
    expect(await writeTogether([{ path, data: "new" }], { inputs: [], overwrite: true })).toEqual({ ok: true });
    expect(readFileSync(path, "utf8")).toBe("new");
    expect(statSync(path).mode & 0o777).toBe(0o640);
  });

  it("or not at all when given up", async () => {
    const folder = newFolder();
    const path = join(folder, "a");
    writeFileSync(path, "old");
    const batch = await started([path, join(folder, "b")], { inputs: [], overwrite: true });
    await batch.write(path, "half");
    await batch.abandon();
    expect(readdirSync(folder)).toEqual(["a"]);
    expect(readFileSync(path, "utf8")).toBe("old");
  });

  it("never over a file that appeared meanwhile", async () => {
    const folder = newFolder();
    const [a, b] = [join(folder, "a"), join(folder, "b")];
    const batch = await started([a, b]);
    await batch.write(a, "ours");
    writeFileSync(b, "theirs");
    expect(await batch.finish()).toMatchObject({ ok: false, error: { code: "exists", path: b }, inPlace: [a] });
    expect(readFileSync(b, "utf8")).toBe("theirs");
    expect(readdirSync(folder)).toEqual(["a", "b"]);
  });

  it("never through a link that appeared meanwhile", async () => {
    const folder = newFolder();
    const path = join(folder, "a");
    const batch = await started([path], { inputs: [], overwrite: true });
    symlinkSync(join(folder, "elsewhere"), path);
    expect(await batch.finish()).toMatchObject({ ok: false, error: { code: "is-link" } });
    expect(readdirSync(folder)).toEqual(["a"]);
  });

  it("and say why when the folder went away", async () => {
    const folder = join(newFolder(), "sub");
    mkdirSync(folder);
    const batch = await started([join(folder, "a")]);
    rmSync(folder, { recursive: true });
    expect(await batch.finish()).toMatchObject({ ok: false, error: { code: "not-found" }, inPlace: [] });
  });

  it.skipIf(process.platform !== "linux")("and say so when the disk is full", async () => {
    const batch = await started([join(newFolder(), "a")]);
    expect(await batch.finish()).toEqual({ ok: true });
    const { problemOf } = await import("../../src/disk/disk-problem.js");
    const { open } = await import("node:fs/promises");
    const full = await open("/dev/full", "w");
    const error = await full.write("x").catch((e: unknown) => e);
    await full.close();
    expect(problemOf("a", error)).toMatchObject({ code: "disk-full" });
  });

  it("with our own mistakes thrown, not told as a fault of the disk", async () => {
    const batch = await started([join(newFolder(), "a")]);
    await expect(batch.write("b", "")).rejects.toThrow(RangeError);
    await batch.abandon();
  });
});

it("a run with hundreds of outputs keeps but a few files open, and writes each as a whole", async ({ skip }) => {
  const openFiles = (): number => readdirSync("/proc/self/fd").length;
  const before = existsSync("/proc/self/fd") ? openFiles() : skip("this system does not say what is open");
  const folder = newFolder();
  const targets = Array.from({ length: 300 }, (_, part) => join(folder, `${part}.csv`));
  const batch = await started(targets);
  for (const target of targets) for (const text of ["one", "two"]) expect(await batch.write(target, text)).toBe(true);
  expect(openFiles() - before).toBeLessThan(100);
  expect(await batch.finish()).toEqual({ ok: true });
  expect(new Set(targets.map((target) => readFileSync(target, "utf8")))).toEqual(new Set(["onetwo"]));
  expect(readdirSync(folder)).toHaveLength(300);
});
