import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import ExcelJS from "exceljs";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { runCommand } from "../tools/run-command.js";

let folder = "";
const here = (name: string): string => join(folder, name);

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "spotface-blank-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("spotface blank-survey", () => {
  it("writes a workbook that the screening takes as a survey without points", async () => {
    const file = here("blank.xlsx");
    const { out, err, code } = await runCommand("blank-survey", file);
    expect([code, err]).toEqual([0, ""]);
    expect(out).toMatch(/^Written: blank survey with \d+ columns: .*blank\.xlsx\n$/);
    const screened = await runCommand("screen", file);
    expect(screened.code).toBe(0);
    expect(screened.out).toContain("Verdicts on 0 points");
  });

  it("writes it in another language and for points as built", async () => {
    const [one, other] = [here("de.xlsx"), here("de-installed.xlsx")];
    expect((await runCommand("blank-survey", one, "--language", "de")).code).toBe(0);
    expect((await runCommand("blank-survey", other, "--language", "de", "--stage", "installed")).code).toBe(0);
    expect(readFileSync(other).length).toBeGreaterThan(readFileSync(one).length);
  });

  it("asks what a set of rules needs, and no more", async () => {
    const columnsOf = async (...options: readonly string[]): Promise<number> => {
      const { out } = await runCommand("blank-survey", here("set.xlsx"), "--overwrite", ...options);
      return Number(/with (\d+) columns/.exec(out)?.[1]);
    };
    expect(await columnsOf("--set", "core")).toBe(await columnsOf());
    expect(await columnsOf("--set", "full")).toBeGreaterThan(await columnsOf("--set", "core"));
  });

  it("prints as many pages side by side as can be read", async () => {
    const pagesOf = async (set: string): Promise<number | undefined> => {
      await runCommand("blank-survey", here("pages.xlsx"), "--overwrite", "--set", set);
      const book = new ExcelJS.Workbook();
      await book.xlsx.load(new Uint8Array(readFileSync(here("pages.xlsx"))).buffer);
      return book.worksheets[0]?.pageSetup.fitToWidth;
    };
    expect(await pagesOf("core")).toBe(2);
    expect(await pagesOf("full")).toBeGreaterThan(3);
  });

  it("replaces nothing unless told to", async () => {
    const file = here("mine.xlsx");
    writeFileSync(file, "mine");
    const refused = await runCommand("blank-survey", file);
    expect([refused.code, refused.out]).toEqual([2, ""]);
    expect(refused.err).toContain("exists already");
    expect(readFileSync(file, "utf8")).toBe("mine");
    expect((await runCommand("blank-survey", file, "--overwrite")).code).toBe(0);
    expect(readFileSync(file).subarray(0, 2).toString()).toBe("PK");
  });

  it.each([
    ["a name that is no workbook", ["blank.csv"], /ends in \.xlsx/],
    ["a folder that is not there", ["nowhere/blank.xlsx"], /folder does not exist/],
    ["a language that it does not know", ["never.xlsx", "--language", "xx"], /en, de, es, fr/],
    ["a rulebook that is not there", ["never.xlsx", "--rules", "/nowhere"], /mistake/],
    ["a set that is not there", ["never.xlsx", "--set", "fool"], /has no set "fool"; it has core, full/],
    ["no name at all", [], /missing required argument/],
  ] as const)("cannot run with %s", async (_name, [file, ...more], sentence) => {
    const before = readdirSync(folder);
    const { out, err, code } = await runCommand("blank-survey", ...(file === undefined ? [] : [here(file)]), ...more);
    expect([code, out]).toEqual([2, ""]);
    expect(err).toMatch(sentence);
    expect(existsSync(here("never.xlsx"))).toBe(false);
    expect(readdirSync(folder)).toEqual(before);
  });
});
