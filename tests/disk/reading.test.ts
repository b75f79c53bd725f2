import { execFileSync } from "node:child_process";
import { mkdirSync, symlinkSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { DEFAULT_FOLDER_LIMITS, readSurveyFile, readTextFile, readTextFolder } from "../../src/disk/index.js";
import { temporaryFolders } from "./temporary-folder.js";

const newFolder = temporaryFolders();

describe("a survey file", () => {
  it("comes as its bytes, at the limit and below", async () => {
    const path = join(newFolder(), "a.xlsx");
    writeFileSync(path, "12345");
    for (const most of [5, 6]) {
      const reading = await readSurveyFile(path, most);
      expect(reading.ok && [...reading.bytes]).toEqual([49, 50, 51, 52, 53]);
    }
    expect(await readSurveyFile(path, 4)).toMatchObject({ ok: false, error: { code: "file-too-large" } });
  });

  it("may be empty", async () => {
    const path = join(newFolder(), "a.csv");
    writeFileSync(path, "");
    expect(await readSurveyFile(path, 4)).toMatchObject({ ok: true, bytes: new Uint8Array() });
  });

  it("that cannot be read is a value with the reason", async () => {
    const folder = newFolder();
    writeFileSync(join(folder, "file"), "");
    const cases = [
      [join(folder, "none.xlsx"), "not-found"],
      [join(folder, "file", "a.xlsx"), "not-found"],
      [folder, "is-folder"],
      [join(folder, "a\0b"), "bad-path"],
      [join(folder, "n".repeat(400)), "name-too-long"],
    ] as const;
    for (const [path, code] of cases)
      expect(await readSurveyFile(path, 4), path).toMatchObject({ ok: false, error: { code } });
  });

  it.skipIf(process.platform === "win32")("is never waited for at a pipe", async () => {
    const path = join(newFolder(), "pipe");
    execFileSync("sh", ["-c", 'mkfifo "$0"', path]);
    expect(await readSurveyFile(path, 4)).toMatchObject({ ok: false, error: { code: "not-a-file" } });
  });

  it.skipIf(process.platform !== "linux")("that states no size is still read and still limited", async () => {
    expect(await readSurveyFile("/proc/self/status", 1_000_000)).toMatchObject({ ok: true });
    expect(await readSurveyFile("/proc/self/status", 10)).toMatchObject({
      ok: false,
      error: { code: "file-too-large" },
    });
  });
});

describe("a text file", () => {
  it.each([
    ["plain", Buffer.from("Ø 25"), { ok: true, file: { text: "Ø 25" } }],
    ["with its mark", Buffer.from("\ufeffØ 25"), { ok: true, file: { text: "Ø 25" } }],
    ["in UTF-16", Buffer.from("\ufeffa", "utf16le"), { ok: false, error: { code: "utf-16" } }],
    ["in Latin-1", Buffer.from("Ø", "latin1"), { ok: false, error: { code: "not-utf-8" } }],
  ])("%s", async (_name, bytes, expected) => {
    const path = join(newFolder(), "a.yaml");
    writeFileSync(path, bytes);
    expect(await readTextFile(path)).toMatchObject(expected);
  });
});

describe("a folder of text files", () => {
  it("comes in the order of paths by code unit, the same on every machine", async () => {
    const folder = newFolder();
    mkdirSync(join(folder, "b"));
    for (const name of ["ä.yaml", "a.yaml", "B.YAML", "b/x.yaml", "b/y.json", "a-1.yaml", "note.txt", ".hidden.yaml"]) {
      writeFileSync(join(folder, name), name);
    }
    const { files, problems } = await readTextFolder(`${folder}/`, [".yaml", ".json"]);
    expect(problems).toEqual([]);
    expect(files.map(({ path }) => path.slice(folder.length))).toEqual([
      "/B.YAML",
      "/a-1.yaml",
      "/a.yaml",
      "/b/x.yaml",
      "/b/y.json",
      "/ä.yaml",
    ]);
  });

  it("keeps paths as the user gave them", async () => {
    const folder = newFolder();
    writeFileSync(join(folder, "a.yaml"), "1");
    const before = process.cwd();
    process.chdir(folder);
    try {
      expect((await readTextFolder(".", [".yaml"])).files).toEqual([{ path: "./a.yaml", text: "1" }]);
    } finally {
      process.chdir(before);
    }
  });

  it("reports what it cannot read and reads the rest", async () => {
    const folder = newFolder();
    writeFileSync(join(folder, "a.yaml"), Buffer.from([255]));
    writeFileSync(join(folder, "b.yaml"), "1");
    symlinkSync(join(folder, "none"), join(folder, "c.yaml"));
    const { files, problems } = await readTextFolder(folder, [".yaml"]);
    expect(files).toHaveLength(1);
    expect(problems.map(({ code }) => code).sort()).toEqual(["not-found", "not-utf-8"]);
  });

  it("follows links inside, never out and never in circles", async () => {
    const folder = newFolder();
    const outside = newFolder();
    writeFileSync(join(outside, "secret.yaml"), "x");
    mkdirSync(join(folder, "in"));
    writeFileSync(join(folder, "in", "a.yaml"), "1");
    symlinkSync(folder, join(folder, "in", "circle"));
    symlinkSync(join(folder, "in", "a.yaml"), join(folder, "link.yaml"));
    symlinkSync(outside, join(folder, "out"));
    symlinkSync(join(outside, "secret.yaml"), join(folder, "out.yaml"));
    const { files, problems } = await readTextFolder(folder, [".yaml"]);
    expect(files.map(({ path }) => path.slice(folder.length))).toEqual(["/in/a.yaml", "/link.yaml"]);
    expect(problems.map(({ code }) => code)).toEqual(["link-out", "link-out"]);
  });

  it.each([
    [{ files: 3 }, []],
    [{ files: 2 }, ["too-many-files"]],
    [{ fileBytes: 2 }, []],
    [{ fileBytes: 1 }, ["file-too-large", "file-too-large", "file-too-large"]],
    [{ totalBytes: 6 }, []],
    [{ totalBytes: 5 }, ["too-large"]],
    [{ depth: 1 }, []],
    [{ depth: 0 }, ["too-deep"]],
  ])("is held to %j", async (limits, codes) => {
    const folder = newFolder();
    mkdirSync(join(folder, "deep"));
    for (const name of ["a.yaml", "b.yaml", "deep/c.yaml"]) writeFileSync(join(folder, name), "12");
    const { problems } = await readTextFolder(folder, [".yaml"], { ...DEFAULT_FOLDER_LIMITS, ...limits });
    expect(problems.map(({ code }) => code)).toEqual(codes);
  });

  it("that is none is a problem", async () => {
    const folder = newFolder();
    writeFileSync(join(folder, "file"), "");
    expect((await readTextFolder(join(folder, "none"), [".yaml"])).problems[0]?.code).toBe("not-found");
    expect((await readTextFolder(join(folder, "file"), [".yaml"])).problems[0]?.code).toBe("not-a-folder");
  });
});
