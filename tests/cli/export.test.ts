import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { exportFiles } from "../../src/cli/export-files.js";
import { pointsMapping } from "../handover/made-mapping.js";
import { runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const SAMPLE = projectPath("samples/survey-full.xlsx");
const RUN = ["--set", "full", "--site", "Vellamoor starch works", "--as-of", "2026-11-25"] as const;
const ORDERS = projectPath("samples/mappings/orders.yaml");

let folder = "";
const here = (name: string): string => join(folder, name);
const mapping = (name: string, text: string): string => {
  writeFileSync(here(name), text);
  return here(name);
};

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "spotface-export-"));
  writeFileSync(here("rows.csv"), "Point ID;Machine\nP-1;Mill\nP-2;Fan\nP-3;Mill\n");
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe("export", () => {
  it("writes all files of a mapping, says what it wrote, and how many points it left out", async () => {
    const run = await runCommand("export", SAMPLE, ...RUN, "--mapping", ORDERS, "--out", here("orders"));
    expect(run).toMatchObject({ code: 0, err: "" });
    expect(readdirSync(here("orders")).sort()).toEqual([
      "01-machines.csv",
      "01-machines.csv-metadata.json",
      "02-orders.xlsx",
      "export-receipt.json",
    ]);
    expect(run.out).toMatch(/2\s+orders\s+02-orders\.xlsx\s+14\s+53\s+147/);
    expect(run.out).toContain("shortened from 41 UTF-16");
    expect(run.out).toContain("Cautions: A verdict is a screening, not a permission.");
  });

  it("gives the same files by a call of the library", async () => {
    const made = await exportFiles([SAMPLE], ORDERS, {
      set: "full",
      siteName: "Vellamoor starch works",
      asOf: "2026-11-25",
    });
    if (!made.ok) throw new Error(JSON.stringify(made));
    for await (const { name, bytes } of made.files()) {
      expect(readFileSync(here(`orders/${name}`)).equals(bytes), name).toBe(true);
    }
    expect(await exportFiles([SAMPLE], here("no.yaml"))).toMatchObject({
      ok: false,
      findings: [{ file: here("no.yaml") }],
    });
  });

  it("writes nothing in a dry run, and shows the first rows", async () => {
    const file = mapping(
      "dry.yaml",
      pointsMapping([
        { heading: "Point", field: "point" },
        { heading: "Tag", field: "assetTag" },
      ]),
    );
    const run = await runCommand("export", here("rows.csv"), "--mapping", file, "--dry-run");
    expect(run).toMatchObject({ code: 0, err: "" });
    expect(run.out).toContain("points: all rows");
    expect(run.out).toMatch(/1\. Point: P-\d\n {5}Tag: \(nothing\)/);
    expect(run.out).toContain("Dry run: nothing is written.");
    expect(run.out).not.toContain("Written:");
  });

  it("writes nothing where anything is refused, and names target, column, point, what was found and what to do", async () => {
    const file = mapping("refused.yaml", pointsMapping([{ heading: "Tag", fact: "asset_tag", required: true }]));
    const run = await runCommand("export", here("rows.csv"), "--mapping", file, "--out", here("refused"));
    expect(run).toMatchObject({ code: 2, out: "" });
    const lines = run.err.trimEnd().split("\n");
    expect(lines).toHaveLength(4);
    expect(lines[0]).toBe(
      `spotface: points: "Tag": P-1 (${here("rows.csv")}, line 2): it is empty, and the mapping requires it; find it out, or filter such points`,
    );
    expect(lines[3]).toBe('spotface: 3 problems in what "made" would write; nothing is written');
    expect(existsSync(here("refused"))).toBe(false);
  });

  it("names mistakes of the mapping by line and column, and reads no survey then", async () => {
    const file = mapping(
      "wrong.yaml",
      'mapping: a\nversion: "1"\ntitle: "a"\ntargets:\n  - { target: a, columns: [{ heading: "A", feld: id }] }\n',
    );
    const run = await runCommand("export", here("no-such.csv"), "--mapping", file, "--out", here("wrong"));
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toContain(`${file}:5:44: "feld" is no key of the column; did you mean "field"? [unknown-key]`);
    expect(run.err).toContain("the mapping has 1 mistake; correct it and run again");
  });

  it("replaces no file unless told to, and none that it reads", async () => {
    const file = mapping(
      "points.yaml",
      pointsMapping([{ heading: "Id", field: "id", key: true }], { file: "rows.csv" }),
    );
    const args = ["export", here("rows.csv"), "--mapping", file] as const;
    const onto = await runCommand(...args, "--out", folder, "--overwrite");
    expect(onto.code).toBe(2);
    expect(onto.err).toContain("never written over");
    expect((await runCommand(...args, "--out", here("points"))).code).toBe(0);
    const again = await runCommand(...args, "--out", here("points"));
    expect(again.code).toBe(2);
    expect(again.err).toContain("exists already");
    expect((await runCommand(...args, "--out", here("points"), "--overwrite")).code).toBe(0);
  });

  it("does not leave a part of an earlier export beside a shorter one", async () => {
    const parts = (rowLimit: number): string =>
      mapping(`parts-${rowLimit}.yaml`, pointsMapping([{ heading: "Id", field: "id" }], { rowLimit }));
    const run = (rowLimit: number) =>
      runCommand("export", here("rows.csv"), "--mapping", parts(rowLimit), "--out", here("parts"), "--overwrite");
    expect((await run(1)).code).toBe(0);
    const shorter = await run(2);
    expect(shorter).toMatchObject({ code: 2, out: "" });
    expect(shorter.err).toContain("01-points-3.csv: a part of an earlier export");
  });

  it("wants a folder or a dry run, and a mapping", async () => {
    const nowhere = await runCommand("export", here("rows.csv"), "--mapping", ORDERS);
    expect(nowhere).toMatchObject({ code: 2 });
    expect(nowhere.err).toContain("--out: name the folder to write into");
    expect((await runCommand("export", here("rows.csv"), "--out", here("none"))).err).toContain("--mapping");
  });
});
