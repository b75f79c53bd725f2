import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { pointEntry } from "../../src/outputs/report/list/entry.js";
import { dataOf } from "../outputs/report/made-report.js";
import { NO_CHROMIUM, openPage, startChromium } from "./report-browser.js";
import { CLI, run, temporaryFolder } from "./tools.js";

const folder = temporaryFolder();
const REPORT = join(folder, "full.html");
const PDF = join(folder, "full.pdf");
/** What an office would still hand round of 200 points with the full set. */
const MOST_PAGES = 99;

let browser: Browser | null = null;

beforeAll(async () => {
  if (NO_CHROMIUM) return;
  const screen = ["screen", "samples/survey-full.xlsx", "--set", "full", "--as-of", "2026-11-25"];
  const done = run(process.execPath, [CLI, ...screen, "--report", REPORT]);
  expect(done.status, done.err).toBe(0);
  browser = await startChromium();
});

afterAll(() => browser?.close());

/** Texts as they can be compared with paper: lines and columns break anywhere, a foot stands on every page. */
function bare(text: string): string {
  return text
    .replaceAll(/page \d+ of \d+\s+A verdict is a screening, not a permission\./g, "")
    .replaceAll(/[\s\f]+/g, "");
}

describe.skipIf(NO_CHROMIUM)("the report on paper", () => {
  it("has a page count in the tens for 200 points, and says of each point verdict, reasons, cells, what to do and source", async () => {
    if (browser === null) throw new Error("no browser");
    const { page } = await openPage(browser, REPORT);
    await page.pdf({ path: PDF, format: "A4", preferCSSPageSize: true });
    const pages = Number(/^Pages:\s+(\d+)$/m.exec(run("pdfinfo", [PDF]).out)?.[1]);
    expect(pages).toBeGreaterThan(20);
    expect(pages).toBeLessThanOrEqual(MOST_PAGES);
    const paper = bare(run("pdftotext", ["-raw", PDF, "-"]).out);
    const data = dataOf(readFileSync(REPORT, "utf8"));
    const lost = data.points.flatMap((point) => {
      const entry = pointEntry(data, point);
      const told = [`${entry.outcome}:${entry.label}`];
      for (const { message, remedy, rule, group, sourceInShort, facts } of entry.findings) {
        told.push(`${rule}:${message}`, remedy, group === "" ? sourceInShort : group);
        if (group === "") told.push(...facts.map(({ text, cells }) => text + cells));
      }
      return told.filter((text) => !paper.includes(bare(text)));
    });
    expect(lost).toEqual([]);
  });
});
