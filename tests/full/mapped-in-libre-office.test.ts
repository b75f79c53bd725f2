import { readFileSync } from "node:fs";
import { join } from "node:path";
import { parse } from "csv-parse/sync";
import { beforeAll, describe, expect, it } from "vitest";
import { CLI, run, temporaryFolder } from "./tools.js";

const folder = temporaryFolder();
const hasOffice = run("soffice", ["--version"]).status === 0;
const survey = [
  "samples/survey-full.xlsx",
  "--set",
  "full",
  "--site",
  "Vellamoor starch works",
  "--as-of",
  "2026-11-25",
];

beforeAll(() => {
  const made = run("node", [CLI, "export", ...survey, "--mapping", "samples/mappings/orders.yaml", "--out", folder]);
  expect(made.status, made.err).toBe(0);
  if (!hasOffice) return;
  const profile = `-env:UserInstallation=file://${folder}/profile`;
  for (const to of ["csv", "pdf"]) {
    const ended = run("soffice", [
      profile,
      "--headless",
      "--convert-to",
      to,
      "--outdir",
      folder,
      join(folder, "02-orders.xlsx"),
    ]);
    expect(ended.status, ended.err).toBe(0);
  }
});

describe("a mapped workbook in LibreOffice", () => {
  it("opens, prints, and shows every cell as it was written", ({ skip }) => {
    if (!hasOffice) skip("LibreOffice (soffice) is not installed");
    const [headings = [], ...rows] = parse(readFileSync(join(folder, "02-orders.csv"), "utf8")) as string[][];
    expect(headings).toEqual([
      "Order",
      "Machine",
      "Outage",
      "Status",
      "Kind",
      "Short text",
      "Points",
      "Work",
      "Screened by",
      "Cautions",
    ]);
    expect(rows).toHaveLength(14);
    for (const row of rows) {
      expect(row[0]).toMatch(/^[0-9a-f-]{36}$/);
      expect(Number(row[6])).toBe(row[7]?.split("\n").length);
    }
    expect(readFileSync(join(folder, "02-orders.pdf")).subarray(0, 5).toString()).toBe("%PDF-");
  });
});
