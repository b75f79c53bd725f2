import { readdirSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { beforeAll, describe, expect, it } from "vitest";
import { exportFiles } from "../../src/cli/export-files.js";
import type { Filling } from "../../src/handover/index.js";
import type { HandoverFile } from "../../src/outputs/index.js";
import { checkMetadata } from "../outputs/handover/csvw/check-metadata.js";
import { checkTable } from "../outputs/handover/csvw/check-table.js";
import { projectPath } from "../tools/shipped.js";

const NAMES = ["orders", "plain", "short-texts"];
const made = new Map<string, { readonly filling: Filling; readonly files: ReadonlyMap<string, HandoverFile> }>();

beforeAll(async () => {
  for (const name of NAMES) {
    const full = { set: "full", siteName: "Vellamoor starch works", asOf: "2026-11-25" };
    const options = name === "orders" ? full : { siteFile: projectPath("samples/site.yaml"), asOf: "2026-11-25" };
    const survey = projectPath(name === "orders" ? "samples/survey-full.xlsx" : "samples/survey.xlsx");
    const run = await exportFiles([survey], projectPath(`samples/mappings/${name}.yaml`), options);
    if (!run.ok) throw new Error(JSON.stringify(run));
    const files = new Map<string, HandoverFile>();
    for await (const file of run.files()) files.set(file.name, file);
    made.set(name, { filling: run.filling, files });
  }
}, 60_000);

function rowsOf(
  mapping: string,
  name: string,
  encoding: string,
  delimiter: string,
): readonly Readonly<Record<string, string>>[] {
  const bytes = made.get(mapping)?.files.get(name)?.bytes;
  return parse(new TextDecoder(encoding).decode(bytes, { stream: true }), { columns: true, delimiter });
}

describe("the sample mappings", () => {
  it("are these, and each fills with a sample survey, its sample rows as expected", () => {
    expect(readdirSync(projectPath("samples/mappings")).sort()).toEqual(NAMES.map((name) => `${name}.yaml`));
    for (const [name, { filling }] of made) {
      expect(filling.problems, name).toEqual([]);
      expect(filling.mapping.checks, name).toBeGreaterThan(0);
    }
  });

  it("write text tables that are as their metadata says", () => {
    let tables = 0;
    for (const { files } of made.values()) {
      for (const [name, { bytes }] of files) {
        if (!name.endsWith(".csv")) continue;
        const metadata = new TextDecoder().decode(files.get(`${name}-metadata.json`)?.bytes);
        expect(checkMetadata(metadata), name).toEqual([]);
        expect(checkTable(bytes, metadata), name).toEqual([]);
        tables += 1;
      }
    }
    expect(tables).toBe(6);
  });

  it("plain: nothing of where the survey lies on this machine, so that another folder changes no row", () => {
    for (const row of rowsOf("plain", "02-points.csv", "utf-8", ",")) {
      expect(row["Survey row"]).toMatch(/^survey\.xlsx > [^/]+, row \d+$/);
    }
  });

  it("plain: every point but the one that stands twice, each with a machine that is loaded before", () => {
    const machines = rowsOf("plain", "01-machines.csv", "utf-8", ",");
    const points = rowsOf("plain", "02-points.csv", "utf-8", ",");
    expect([machines.length, points.length]).toEqual([12, 47]);
    const known = new Set(machines.map((row) => row.Machine));
    expect(points.filter((row) => !known.has(row.Machine))).toEqual([]);
    expect(machines.reduce((sum, row) => sum + Number(row["Points surveyed"]), 0)).toBe(47);
  });

  it("short texts: 40 characters at most, umlauts in Windows-1252, decimal commas, words of the lists", () => {
    const rows = [1, 2, 3].flatMap((part) => rowsOf("short-texts", `01-points-${part}.csv`, "windows-1252", ";"));
    expect(rows).toHaveLength(47);
    expect(rows.filter((row) => [...(row["SHORT TEXT"] ?? "")].length > 40)).toEqual([]);
    expect(rows.some((row) => row["SHORT TEXT"]?.startsWith("Rührwerk Stärkemilch, VM3-0"))).toBe(true);
    expect(new Set(rows.map((row) => row.STATUS))).toEqual(new Set(["20", "30", "40"]));
    expect(new Set(rows.map((row) => row["LIMITS OF"]))).toEqual(new Set(["25.11.2026"]));
    for (const row of rows) expect(row["SUPPLY V"]).toMatch(/^(\d+,\d|CLEAR)$/);
    expect(new Set(rows.map((row) => row.KEY)).size).toBe(47);
  });

  it("orders: the released points, each in one order of its machine and outage, with the cautions", () => {
    const orders = made.get("orders")?.filling.targets[1]?.mapped;
    const points = orders?.rows.flatMap((row) => row.points) ?? [];
    expect([orders?.rows.length, points.length, new Set(points).size]).toEqual([14, 53, 53]);
    const cautions = orders?.columns.findIndex(({ heading }) => heading === "Cautions") ?? -1;
    for (const row of orders?.rows ?? []) expect(row.values[cautions]).toContain("not a permission");
  });
});
