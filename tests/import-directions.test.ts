import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, dirname, join, relative, resolve } from "node:path";
import { describe, expect, it } from "vitest";
import { projectPath } from "./tools/shipped.js";

/** Who may import whom: the way of the data, from the survey to the people. */
const MAY_IMPORT: Readonly<Record<string, readonly string[]>> = {
  base: [],
  disk: ["base"],
  facts: ["base"],
  workbook: ["base"],
  records: ["base", "facts", "workbook"],
  quantities: ["base", "facts"],
  rulebook: ["base", "facts", "quantities"],
  proving: ["base", "facts", "rulebook"],
  screening: ["base", "facts", "records", "quantities", "rulebook"],
  comparing: ["base", "facts", "rulebook", "screening"],
  moving: ["base", "facts", "records", "rulebook", "screening"],
  built: ["base", "facts", "records", "rulebook", "screening"],
  workpacks: ["base", "facts", "quantities", "rulebook", "screening"],
  handover: ["base", "facts", "rulebook", "screening", "workpacks"],
  outputs: [
    "base",
    "facts",
    "workbook",
    "records",
    "rulebook",
    "proving",
    "screening",
    "comparing",
    "moving",
    "built",
    "handover",
    "workpacks",
  ],
  cli: [
    "base",
    "disk",
    "facts",
    "workbook",
    "records",
    "quantities",
    "rulebook",
    "proving",
    "screening",
    "comparing",
    "moving",
    "built",
    "handover",
    "workpacks",
    "outputs",
  ],
};
/** Folders within a station whose files may only import from their own and those before it. */
const ROOMS: Readonly<Record<string, readonly string[]>> = {
  records: ["words", "cells", "headings", "rows"],
  rulebook: ["book", "schemas", "text", "reading", "judging", "loading", "site-files"],
};
/** The folders that may use what only Node has. */
const MAY_USE_NODE = ["disk", "cli"];
const src = projectPath("src");
const isSource = (file: string): boolean => /\.tsx?$/.test(file);

interface ImportLine {
  readonly file: string;
  readonly station: string;
  readonly from: string;
}

const imports = readdirSync(src, { recursive: true, encoding: "utf8" })
  .filter(isSource)
  .flatMap((file): ImportLine[] => {
    const text = readFileSync(join(src, file), "utf8");
    const found = text.matchAll(
      /^(?:import|export)\b[^;]*?\bfrom\s+"([^"]+)"|\bimport\(\s*"([^"]+)"\s*\)|^import\s+"([^"]+)"/gm,
    );
    const station = file.includes("/") ? (file.split("/")[0] ?? "") : "index";
    return [...found].map((match) => ({ file, station, from: match[1] ?? match[2] ?? match[3] ?? "" }));
  });

describe("import directions", () => {
  it("finds the imports, and a place for every folder", () => {
    expect(imports.length).toBeGreaterThan(100);
    const folders = readdirSync(src, { withFileTypes: true }).filter((entry) => entry.isDirectory());
    expect(folders.map((entry) => entry.name).sort()).toEqual(Object.keys(MAY_IMPORT).sort());
  });

  it("go one way, and across a border only through its index.ts", () => {
    const wrong = imports.filter(({ file, station, from }) => {
      if (!from.startsWith(".") || station === "index") return false;
      const target = relative(src, resolve(dirname(join(src, file)), from));
      const other = target.split("/")[0] ?? "";
      if (other === station) return false;
      return !MAY_IMPORT[station]?.includes(other) || target !== join(other, "index.js");
    });
    expect(wrong).toEqual([]);
  });

  it.each(Object.entries(ROOMS))("go one way among the rooms of %s, too", (station, rooms) => {
    const roomOf = (path: string): number =>
      path.startsWith(`${station}/`) ? rooms.indexOf(path.split("/")[1] ?? "") : -1;
    const within = imports
      .filter(({ file, from }) => roomOf(file) >= 0 && from.startsWith("."))
      .map(({ file, from }) => ({ file, target: relative(src, resolve(dirname(join(src, file)), from)) }));
    expect(within.length).toBeGreaterThan(50);
    expect(within.filter(({ file, target }) => roomOf(target) > roomOf(file))).toEqual([]);
  });

  it("run in no circle, also within a folder", () => {
    const next = new Map<string, string[]>();
    for (const { file, from } of imports.filter((line) => line.from.startsWith("."))) {
      const target = relative(src, resolve(dirname(join(src, file)), from)).replace(
        /\.js$/,
        existsSync(resolve(dirname(join(src, file)), from.replace(/\.js$/, ".tsx"))) ? ".tsx" : ".ts",
      );
      next.set(file, [...(next.get(file) ?? []), target]);
    }
    const done = new Set<string>();
    const circle = (file: string, path: readonly string[]): readonly string[] | null => {
      if (path.includes(file)) return [...path.slice(path.indexOf(file)), file];
      if (done.has(file)) return null;
      for (const target of next.get(file) ?? []) {
        const found = circle(target, [...path, file]);
        if (found) return found;
      }
      done.add(file);
      return null;
    };
    expect([...next.keys()].map((file) => circle(file, [])).filter((found) => found !== null)).toEqual([]);
  });

  it("leave what only Node has to the folders that touch the machine", () => {
    const wrong = imports.filter(({ station, from }) => from.startsWith("node:") && !MAY_USE_NODE.includes(station));
    expect(wrong).toEqual([]);
  });

  it("name json-rules-engine in one file alone", () => {
    const files = imports.filter(({ from }) => from === "json-rules-engine").map(({ file }) => file);
    expect([...new Set(files)]).toEqual(["screening/reference.ts"]);
  });

  it("name exceljs where workbooks are written alone", () => {
    const files = imports.filter(({ from }) => from === "exceljs").map(({ station }) => station);
    expect([...new Set(files)]).toEqual(["outputs"]);
  });

  it("keep every file under 300 lines, named in kebab case", () => {
    for (const file of readdirSync(src, { recursive: true, encoding: "utf8" }).filter(isSource)) {
      expect(readFileSync(join(src, file), "utf8").split("\n").length, file).toBeLessThanOrEqual(301);
      expect(basename(file), file).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*\.tsx?$/);
    }
  });
});
