import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { CLI, run, temporaryFolder } from "./tools.js";

const CHROMIUM = "/usr/bin/chromium";
const AXE = readFileSync(new URL("../../node_modules/axe-core/axe.min.js", import.meta.url), "utf8");
const PAPERS = ["A4", "Letter"] as const;

const folder = temporaryFolder();
const hasChromium = run(CHROMIUM, ["--version"]).status === 0;
const hasPdfText = run("pdftotext", ["-v"]).status === 0;
let browser: Browser | null = null;

beforeAll(async () => {
  const sample = [
    "samples/survey-full.xlsx",
    "--set",
    "full",
    "--as-of",
    "2026-11-26",
    "--site",
    "Vellamoor starch works",
  ];
  const ended = run(process.execPath, [CLI, "work-packs", ...sample, "--out", folder]);
  expect(ended.status, ended.err).toBe(0);
  if (hasChromium) browser = await chromium.launch({ executablePath: CHROMIUM, args: ["--no-sandbox"] });
});
afterAll(() => browser?.close());

async function opened(name: string): Promise<Page> {
  if (!browser) throw new Error("no browser");
  const page = await browser.newPage({ viewport: { width: 1000, height: 1200 } });
  const complaints: string[] = [];
  page.on("console", (message) => complaints.push(message.text()));
  page.on("request", (request) => {
    if (!request.url().startsWith("file:")) complaints.push(request.url());
  });
  await page.goto(`file://${join(folder, name)}`);
  // What the policy of the page refuses, and what is fetched from anywhere, would stand here.
  expect(complaints).toEqual([]);
  return page;
}

/** The pages of a pack with a bonded and a welded pad, of many points, and the lists. */
const PAGES = [
  "work-packs.html",
  "held-back.html",
  "work-pack.2026-12-14-p-6301.html",
  "work-pack.2026-12-14-ml-5206.html",
];

/**
 * Prints a page with a mark at the end of each cell of each row, and gives the rows whose marks stand on different
 * pages.
 */
async function cutRows(page: Page, file: string, paper: (typeof PAPERS)[number]): Promise<readonly string[]> {
  const cells = await page.evaluate(() =>
    Array.from(document.querySelectorAll("tbody tr")).map((row, i) => {
      const own = Array.from(row.children);
      own.forEach((cell, j) => {
        const mark = document.createElement("span");
        mark.textContent = `#${i}.${j}#`;
        Object.assign(mark.style, { whiteSpace: "nowrap", fontSize: "6px" });
        cell.append(" ", mark);
      });
      return own.length;
    }),
  );
  const pages = await printed(page, file, paper);
  return cells.flatMap((count, i) => {
    const marks = Array.from({ length: count }, (_, j) => `#${i}.${j}#`);
    const on = marks.map((mark) => pages.findIndex((text) => text.includes(mark)));
    return new Set(on).size === 1 && !on.includes(-1) ? [] : [`row ${i} on pages ${on.map((n) => n + 1).join(", ")}`];
  });
}

async function printed(page: Page, file: string, paper: (typeof PAPERS)[number]): Promise<readonly string[]> {
  await page.emulateMedia({ media: "print" });
  await page.pdf({ path: file, format: paper });
  return run("pdftotext", ["-layout", file, "-"]).out.split("\f").slice(0, -1);
}

function squeezed(text: string): string {
  return text.replace(/\s+/g, "");
}

describe.skipIf(!hasChromium)("work packs in Chromium", () => {
  it.each(PAGES)("%s is accessible by the rules of WCAG 2.2 AA, light and dark", async (name) => {
    const page = await opened(name);
    for (const colorScheme of ["light", "dark"] as const) {
      await page.emulateMedia({ colorScheme });
      // Not by a script of the page, which its policy forbids, but by the hand of the browser.
      const violations = await page.evaluate(async (axe) => {
        const load = new Function(`${axe}; return window.axe;`);
        const { violations: found } = await load().run(document, {
          runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
        });
        return found.map(({ id, nodes }: { id: string; nodes: { html: string }[] }) => [id, nodes[0]?.html]);
      }, AXE);
      expect(violations).toEqual([]);
    }
    await page.close();
  });

  it("leads from the overview to every pack", async () => {
    const page = await opened("work-packs.html");
    const links = await page.locator("a[href$='.html']").evaluateAll((all) => all.map((a) => a.getAttribute("href")));
    const packs = readdirSync(folder).filter((name) => name.startsWith("work-pack."));
    expect(packs.length).toBeGreaterThan(10);
    expect(links.filter((link) => link?.startsWith("work-pack.")).sort()).toEqual(packs.sort());
    await page.getByRole("link", { name: "2026-12-14-p-6301" }).click();
    expect(await page.getByRole("heading", { level: 1 }).textContent()).toContain("P-6301");
    await page.close();
  });

  it("has boxes to write in for all that is to be written down", async () => {
    const page = await opened("work-pack.2026-12-14-p-6301.html");
    const boxes = page.locator(".point").first().locator("td.box");
    expect(await boxes.count()).toBeGreaterThan(10);
    for (const box of await boxes.all()) {
      const size = await box.boundingBox();
      expect(size?.height).toBeGreaterThan(18);
      expect(size?.width).toBeGreaterThan(60);
    }
    await page.close();
  });

  describe.skipIf(!hasPdfText)("printed", () => {
    it.each(PAGES.flatMap((name) => PAPERS.map((paper) => [name, paper] as const)))(
      "%s on %s cuts no row and nothing at the side",
      async (name, paper) => {
        const page = await opened(name);
        const file = join(folder, `${name}.${paper}.pdf`);
        const pages = await printed(page, file, paper);
        expect(pages.length).toBeGreaterThan(1);
        expect(pages.every((text, i) => text.includes(`page ${i + 1} of ${pages.length}`))).toBe(true);
        const [needed = 0, there = 0] = await page.evaluate(() => {
          const { scrollWidth, clientWidth } = document.documentElement;
          return [scrollWidth, clientWidth];
        });
        expect(needed).toBeLessThanOrEqual(there);
        expect(await cutRows(page, file, paper)).toEqual([]);
        await page.close();
      },
    );

    it("would be seen to cut rows if pages did not keep them together", async () => {
      const page = await opened("work-pack.2026-12-14-ml-5206.html");
      await page.evaluate(() => {
        for (const row of Array.from(document.querySelectorAll("tr")))
          Object.assign(row.style, { breakInside: "auto", orphans: "1", widows: "1" });
      });
      expect(await cutRows(page, join(folder, "cut.pdf"), "A4")).not.toEqual([]);
      await page.close();
    });

    it("begins every point on a page of its own", async () => {
      const page = await opened("work-pack.2026-12-14-p-6301.html");
      const file = join(folder, "points.pdf");
      const pages = await printed(page, file, "A4");
      const headings = await page.locator(".point h2").allTextContents();
      for (const heading of headings) {
        const first = pages.filter((text) => squeezed(text).startsWith(squeezed(heading)));
        expect(first, heading).toHaveLength(1);
      }
      await page.close();
    });
  });
});
