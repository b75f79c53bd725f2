import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import { strToU8 } from "fflate";
import { describe, expect, it } from "vitest";
import { temporaryFolders } from "../disk/temporary-folder.js";
import { type CommandRun, isOneSentence, resultOf, runCommand, steersTerminal } from "../tools/run-command.js";
import { type SmallParts, type SmallSheet, smallWorkbook } from "../workbook/small-workbook.js";

const temporaryFolder = temporaryFolders();

/** Screens the bytes as a file of the given name. */
async function screened(
  name: string,
  bytes: Uint8Array | string,
  form: readonly string[] = ["--json"],
): Promise<CommandRun> {
  const path = join(temporaryFolder(), name);
  await writeFile(path, bytes);
  return runCommand("screen", path, ...form);
}

const escaped = (text: string): string => text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");

/** Rows of texts as the XML of a sheet. */
function rows(...lines: readonly (readonly string[])[]): string {
  return lines
    .map(
      (cells, r) =>
        `<row r="${r + 1}">${cells
          .map(
            (text, c) =>
              `<c r="${String.fromCharCode(65 + c)}${r + 1}" t="inlineStr"><is><t>${escaped(text)}</t></is></c>`,
          )
          .join("")}</row>`,
    )
    .join("");
}

const GOOD = rows(["Asset tag", "Machine", "Speed (rpm)"], ["P-1", "pump", "1485"], ["P-2", "fan", "990"]);
const workbook = (sheet: SmallSheet, parts?: SmallParts): Uint8Array => smallWorkbook([sheet], parts);

describe("a file that attacks its reader is refused in one sentence", () => {
  const entity = `<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]>
    <worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>&b;</t></is></c></row></sheetData></worksheet>`;
  const good = workbook({ data: GOOD });

  it.each<[string, string, Uint8Array | string, RegExp]>([
    [
      "entities",
      "a.xlsx",
      workbook({ data: GOOD }, { parts: { "xl/worksheets/sheet1.xml": entity } }),
      /document type/,
    ],
    ["half a workbook", "a.xlsx", good.slice(0, good.length / 2), /incomplete/],
    [
      "an old binary workbook",
      "a.xlsx",
      new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...new Array(4088).fill(0)]),
      /old binary/,
    ],
    ["a web page", "a.xlsx", "<html><body><table><tr><td>Speed</td></tr></table></body></html>", /web page/],
    ["nothing", "a.xlsx", "", /empty/],
    ["no heading", "a.xlsx", workbook({ data: rows(["hello"], ["world"]) }), /no heading row/],
    ["a sheet that breaks off", "a.xlsx", workbook({ data: '<row r="1"><c r="A1"' }), /damaged/],
    ["deep nesting", "a.xlsx", workbook({ data: "<row>".repeat(5_000) }), /levels deep/],
    ["a column past the limit", "a.csv", `Point${",".repeat(5_000)}\n`, /columns/],
    ["a quote that never closes", "a.csv", `Point,Machine\n"P-1,pump\n${"x,y\n".repeat(50)}`, /never closed/],
    ["broken UTF-8", "a.csv", new Uint8Array([...strToU8("Point,Machine\nP-1,K"), 0xc3, 0x28]), /line 2/],
    ["NUL characters", "a.csv", "Point,Machine\nP-1,pu\0mp\n", /NUL/],
    ["a mark and blank lines", "a.csv", "\uFEFF\n\n", /blank lines/],
  ])("%s", async (_what, name, bytes, says) => {
    const run = await screened(name, bytes);
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toSatisfy(isOneSentence);
    expect(run.err).toMatch(says);
    expect(run.seconds).toBeLessThan(3);
  });
});

describe("odd content is read as content", () => {
  it.each<[string, SmallSheet, number]>([
    ["a good survey", { data: GOOD }, 2],
    ["a false dimension", { data: GOOD, before: '<dimension ref="A1:XFD1048576"/>' }, 2],
    [
      "a merge over the whole sheet",
      { data: GOOD, after: '<mergeCells count="1"><mergeCell ref="A1:XFD1048576"/></mergeCells>' },
      2,
    ],
    ["a lone heading", { data: rows(["Asset tag"]) }, 0],
    ["headings and no rows", { data: rows(["Asset tag", "Machine"]) }, 0],
  ])("%s", async (_what, sheet, points) => {
    const run = await screened("a.xlsx", workbook(sheet));
    expect(run.code).toBe(0);
    expect(resultOf(run).points).toHaveLength(points);
  });

  it("names of the language's own objects are headings and values like others", async () => {
    const names = ["__proto__", "constructor", "prototype", "toString"];
    const before = Object.getOwnPropertyNames(Object.prototype).join();
    const run = await screened("a.csv", `Asset tag,Machine,${names.join()}\n__proto__,constructor,${names.join()}\n`);
    expect(resultOf(run).points).toHaveLength(1);
    expect(resultOf(run).surveys[0]?.problems.filter((p) => p.code === "unknown-heading")).toHaveLength(4);
    expect(Object.getOwnPropertyNames(Object.prototype).join()).toBe(before);
    expect("polluted" in {}).toBe(false);
  });

  it("number bait is refused cell by cell in no time", async () => {
    const bait = [
      "1".repeat(30_000),
      `1${" 000".repeat(8_000)}`,
      `${"1,".repeat(15_000)}x`,
      `1${" ".repeat(30_000)}x`,
      `${"(".repeat(20_000)}1`,
      `${"~".repeat(20_000)}1`,
      `${"1-".repeat(15_000)}1`,
      "１".repeat(30_000),
    ];
    const run = await screened(
      "a.csv",
      `Point;Machine;Speed\n${bait.map((cell, i) => `P${i};pump;${cell}`).join("\n")}\n`,
    );
    expect(run.seconds).toBeLessThan(2);
    const result = resultOf(run);
    expect(result.points).toHaveLength(bait.length);
    for (const { findings } of result.points) {
      expect(findings.flatMap(({ missing }) => missing)).toContainEqual(
        expect.objectContaining({ fact: "nominal_speed", reason: "unreadable" }),
      );
    }
  });

  it("codes that would run as formulas are no codes; reference designations are", async () => {
    const run = await screened("a.csv", "Asset tag;Machine\n=1+1;a\n=A1-M2;b\n@SUM(1);c\n+E2;d\n=cmd|' /C'!A0;e\n");
    const refused = resultOf(run)
      .surveys[0]?.problems.filter((p) => p.code === "not-plain-text")
      .map((p) => p.cell);
    expect(refused).toEqual(["A4", "A6"]);
  });

  it("what steers a terminal reaches none", async () => {
    const text = "Asset tag;Machine\nP_\u001b[31m1;\u0007\u009b2J\u202epump\n";
    const json = await screened("a.csv", text);
    expect(json.code).toBe(0);
    expect(steersTerminal(json.out.replace(/[\u007f-\u009f]/g, "") + json.err)).toBe(false);
    const shown = await screened("a.csv", text, []);
    expect(steersTerminal(shown.out + shown.err)).toBe(false);
  });
});
