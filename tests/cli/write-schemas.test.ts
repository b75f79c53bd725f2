import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join, resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { temporaryFolders } from "../disk/temporary-folder.js";
import { smallFiles } from "../rulebook/small-book.js";
import { runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const freshFolder = temporaryFolders();

/** A copy of the shipped rulebook, away from the package. */
function copiedBook(): string {
  const book = join(freshFolder(), "standards/book");
  cpSync(projectPath("rules"), book, { recursive: true });
  return book;
}

/** Files of a folder whose first line names a schema that is not there. */
function lost(folder: string): readonly string[] {
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((path) => path.endsWith(".yaml"));
  expect(files.length).toBeGreaterThan(0);
  return files.filter((path) => {
    const [, schema = ""] = /\$schema=(\S+)/.exec(readFileSync(join(folder, path), "utf8")) ?? [];
    return !existsSync(resolve(dirname(join(folder, path)), schema));
  });
}

/** A small rulebook whose rules name their schema as those of a copied one do. */
function smallBook(): string {
  const book = join(freshFolder(), "standards/book");
  for (const { path, text } of smallFiles({})) {
    const line = `# yaml-language-server: $schema=${path.includes("/") ? "../../" : "../"}schemas/rule.schema.json\n`;
    mkdirSync(dirname(join(book, path)), { recursive: true });
    writeFileSync(join(book, path), `${line}${text}`);
  }
  return book;
}

const NEW = ["new-rule", "own-depth", "--topic", "bolt", "--judges", "thread_depth", "--fails", "below 9 mm"];

describe("write-schemas", () => {
  it("lets every file of a copied rulebook find its schema", async () => {
    const book = copiedBook();
    expect(lost(book).length).toBeGreaterThan(100);
    const run = await runCommand("write-schemas", book);
    expect(run).toMatchObject({ code: 0, err: "" });
    expect(run.out).toContain(`Written: schema: ${join(dirname(book), "schemas/rule.schema.json")}\n`);
    expect(lost(book)).toEqual([]);
    const written = readFileSync(join(dirname(book), "schemas/table.schema.json"), "utf8");
    expect(written).toBe(readFileSync(projectPath("schemas/table.schema.json"), "utf8"));
    const again = await runCommand("write-schemas", book);
    expect(again.out).toMatch(/^\d+ files find their schemas, 7 schemas in all\n$/);
  });

  it("replaces a schema that differs only where it is told to", async () => {
    const book = copiedBook();
    await runCommand("write-schemas", book);
    const path = join(dirname(book), "schemas/rule.schema.json");
    writeFileSync(path, "{}\n");
    const refused = await runCommand("write-schemas", book);
    expect(refused).toMatchObject({ code: 2, out: "", err: expect.stringContaining("give --overwrite") });
    expect(readFileSync(path, "utf8")).toBe("{}\n");
    expect(await runCommand("write-schemas", book, "--overwrite")).toMatchObject({ code: 0 });
    expect(readFileSync(path, "utf8")).toBe(readFileSync(projectPath("schemas/rule.schema.json"), "utf8"));
  });

  it("says in one sentence that a file stands in the place of the folder", async () => {
    const book = copiedBook();
    writeFileSync(join(dirname(book), "schemas"), "mine");
    const run = await runCommand("write-schemas", book);
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toMatch(/^spotface: \S+schemas: it is a file, or part of its path is; name a folder\n$/);
    expect(readFileSync(join(dirname(book), "schemas"), "utf8")).toBe("mine");
  });

  it("writes nothing that no file names, and nothing under a name of its own", async () => {
    const folder = join(freshFolder(), "inner");
    mkdirSync(folder);
    const file = join(folder, "site.yaml");
    writeFileSync(file, "# yaml-language-server: $schema=../other.json\nsite: X\n");
    const run = await runCommand("write-schemas", file);
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toContain(`${file}: "../other.json" is no schema of this program`);
    expect(readdirSync(dirname(folder))).toEqual(["inner"]);
    writeFileSync(file, "# yaml-language-server: $schema=../site.schema.json\nsite: X\n");
    expect(await runCommand("write-schemas", file)).toMatchObject({ code: 0 });
    expect(readdirSync(dirname(folder)).sort()).toEqual(["inner", "site.schema.json"]);
  });
});

describe("the schema that a new rule names", () => {
  it("is the one beside a copied rulebook, where the others find theirs", async () => {
    const book = smallBook();
    await runCommand("write-schemas", book);
    const run = await runCommand(...NEW, "--rules", book);
    expect(run.err).not.toContain("schema");
    expect(lost(book)).toEqual([]);
  });

  it("is found in a folder further up, where the others find none", async () => {
    const book = smallBook();
    cpSync(projectPath("schemas"), join(dirname(book), "../schemas"), { recursive: true });
    expect(await runCommand(...NEW, "--rules", book)).toMatchObject({ code: 0 });
    const [line] = readFileSync(join(book, "bolt/own-depth.yaml"), "utf8").split("\n");
    expect(line).toBe("# yaml-language-server: $schema=../../../schemas/rule.schema.json");
    expect(lost(book)).not.toContain("bolt/own-depth.yaml");
  });

  it("is said to be nowhere, with the command that puts it there", async () => {
    const book = smallBook();
    const run = await runCommand(...NEW, "--rules", book);
    expect(run.err).toContain(`npx spotface write-schemas ${book}`);
    expect(await runCommand("write-schemas", book)).toMatchObject({ code: 0 });
    expect(lost(book)).toEqual([]);
  });
});
