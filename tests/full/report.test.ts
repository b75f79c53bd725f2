import { readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import {
  accessibilityFaults,
  longestFrame,
  longestTask,
  NO_CHROMIUM,
  openPage,
  startChromium,
} from "./report-browser.js";
import { CLI, PROJECT, run, SCREEN_SAMPLE, temporaryFolder } from "./tools.js";

const folder = temporaryFolder();
const SAMPLE = join(folder, "survey.report.html");
const FULL = join(folder, "full.html");
const MANY = join(folder, "many.html");
const POINTS = 10_000;

/** Half again as much, for machines that are busy, as what people are to wait for: 3 s, 0.3 s and 0.2 s; in ms. */
const FIRST_ROWS = 4500;
const FILTERED = 450;
const BLOCKED = 300;
const LARGEST_BYTES = 30e6;

let browser: Browser | null = null;

function screened(...args: readonly string[]): void {
  const done = run(process.execPath, [CLI, ...args]);
  expect(done.status, done.err).toBe(0);
}

beforeAll(async () => {
  if (NO_CHROMIUM) return;
  const deviations = ["--deviations", "samples/deviations.yaml"];
  screened(...SCREEN_SAMPLE, ...deviations, "--out", folder);
  screened("screen", "samples/survey-full.xlsx", "--set", "full", "--as-of", "2026-11-25", "--report", FULL);
  const survey = join(folder, "many.xlsx");
  const made = run(process.execPath, [
    `${PROJECT}tests/bench/generate.mjs`,
    survey,
    String(POINTS),
    "7",
    "thirty columns",
  ]);
  expect(made.status, made.err).toBe(0);
  screened("screen", survey, "--set", "full", "--as-of", "2026-11-25", "--report", MANY);
  browser = await startChromium();
});

afterAll(() => browser?.close());

function chromium(): Browser {
  if (browser === null) throw new Error("no browser");
  return browser;
}

const status = (page: Page) => page.locator("#status");
const lines = (page: Page) => page.locator("#list summary");
const focused = (page: Page) => page.evaluate(() => document.activeElement?.textContent ?? "");

describe("the report in Chromium", () => {
  beforeEach(({ skip }) => {
    if (NO_CHROMIUM) skip(NO_CHROMIUM);
  });

  it("is filtered, put into order and opened as a person would, and keeps its state in the address", async () => {
    const { page, complaints } = await openPage(chromium(), SAMPLE);
    await expectText(page, "49 of 49 points shown, on 12 of 12 machines");
    await page.getByLabel("■ fail").uncheck();
    await page.getByLabel("● pass").uncheck();
    await expectText(page, "16 of 49 points shown");
    await page.getByLabel("only with something").check();
    await expectText(page, "12 of 49 points shown");
    await page.getByRole("button", { name: "Show everything" }).click();
    await page.getByLabel("Rule that speaks against it").selectOption("seat-diameter");
    await page.getByLabel("Order of machines").selectOption("margin");
    await expectText(page, "5 of 49 points shown");
    await expect.poll(() => page.url()).toContain("#rule=seat-diameter&order=margin");
    await lines(page).first().click();
    const opened = page.locator("#list details[open]");
    await opened.locator("h4").first().waitFor();
    const text = (await opened.textContent()) ?? "";
    for (const said of ["seat-diameter", "mm", "Limit", "Source", "What to do", "beyond the limit"]) {
      expect(text).toContain(said);
    }
    await page.reload();
    await expectText(page, "5 of 49 points shown");
    expect(await page.getByLabel("Order of machines").inputValue()).toBe("margin");
    await page.getByLabel("Part of a name").fill("no such thing");
    await expectText(page, "0 of 49 points shown");
    expect(complaints).toEqual([]);
  });

  it("is used by keyboard alone, and never loses the focus", async () => {
    const { page } = await openPage(chromium(), SAMPLE);
    await lines(page).first().waitFor();
    await page.keyboard.press("Tab");
    expect(await focused(page)).toContain("To the contents");
    await page.keyboard.press("Enter");
    await tabTo(page, () => document.activeElement?.getAttribute("type") === "checkbox");
    await page.keyboard.press("Space");
    await expectText(page, "28 of 49 points shown");
    expect(await page.evaluate(() => document.activeElement?.getAttribute("type"))).toBe("checkbox");
    await tabTo(page, () => document.activeElement?.tagName === "SUMMARY");
    const first = await focused(page);
    await page.keyboard.press("ArrowDown");
    expect(await focused(page)).not.toBe(first);
    await page.keyboard.press("ArrowUp");
    expect(await focused(page)).toBe(first);
    await page.keyboard.press("Enter");
    await page.locator("#list details[open] .opened").waitFor();
    expect(await page.evaluate(() => document.activeElement?.tagName)).toBe("SUMMARY");
    await page.keyboard.press("End");
    expect(await focused(page)).toBe(await lines(page).last().textContent());
  });

  it.each(["light", "dark"] as const)(
    "has no fault that can be found by a machine on a %s page",
    async (colorScheme) => {
      for (const file of [SAMPLE, FULL]) {
        const { page } = await openPage(chromium(), file, { colorScheme });
        await lines(page).nth(1).click();
        for (const details of await page.locator("main > section > details > summary").all()) await details.click();
        expect(await accessibilityFaults(page)).toEqual([]);
      }
    },
  );

  it("fits on a narrow page", async () => {
    const { page } = await openPage(chromium(), FULL, { viewport: { width: 390, height: 800 } });
    await lines(page).first().click();
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  });

  it("prints all that is chosen, opened, and is as before afterwards", async () => {
    const { page } = await openPage(chromium(), `${SAMPLE}`);
    await page.getByLabel("Rule that speaks against it").selectOption("hole-depth");
    await expectText(page, "5 of 49 points shown");
    await page.evaluate(() => dispatchEvent(new Event("beforeprint")));
    expect(await page.locator("#list details[open]").count()).toBe(5);
    expect(await page.locator("details.printed:not([open])").count()).toBe(0);
    await page.evaluate(() => dispatchEvent(new Event("afterprint")));
    expect(await page.locator("#list details[open]").count()).toBe(0);
    const pdf = await page.pdf({ path: join(folder, "report.pdf"), format: "A4" });
    expect(pdf.subarray(0, 5).toString("latin1")).toBe("%PDF-");
    const text = run("pdftotext", ["-layout", join(folder, "report.pdf"), "-"]);
    if (text.status === 0) {
      expect(text.out).toContain("5 of 49 points shown");
      expect(text.out.match(/What to do/g)?.length).toBeGreaterThanOrEqual(5);
    }
  });

  it("lists the points of a small survey without its script, and says so of a large one", async () => {
    const small = await openPage(chromium(), SAMPLE, { javaScriptEnabled: false });
    expect(await small.page.locator("#list li").count()).toBe(49);
    const large = await openPage(chromium(), MANY, { javaScriptEnabled: false });
    expect(await large.page.locator("#list").textContent()).toContain("10000 points is made by the script");
  });

  it("of 10,000 points shows its first rows, filters and goes on without keeping anybody waiting", async () => {
    expect(statSync(MANY).size).toBeLessThan(LARGEST_BYTES);
    const started = performance.now();
    const { page, complaints } = await openPage(chromium(), MANY);
    await lines(page).first().waitFor();
    const figures: Record<string, number> = { "first rows": performance.now() - started };
    expect(figures["first rows"]).toBeLessThan(FIRST_ROWS);
    await expect.poll(() => lines(page).count()).toBe(200);
    figures["blocked at the start"] = await longestTask(page);
    await longestFrame(page);
    const filters: readonly [string, () => Promise<unknown>][] = [
      ["verdict", () => page.getByLabel("■ fail").uncheck()],
      ["everything", () => page.getByRole("button", { name: "Show everything" }).click()],
      ["text", () => page.getByLabel("Part of a name").fill("painted")],
      ["undecided", () => page.getByLabel("only with something").check()],
      ["everything again", () => page.getByRole("button", { name: "Show everything" }).click()],
      ["rule", () => page.getByLabel("Rule that speaks against it").selectOption("hole-depth")],
    ];
    for (const [name, act] of filters) {
      const before = await status(page).textContent();
      await watchStatus(page);
      await act();
      figures[name] = await page.evaluate(() => (globalThis as unknown as { told: Promise<number> }).told);
      expect(await status(page).textContent()).not.toBe(before);
      expect(figures[name], name).toBeLessThan(FILTERED);
      await page.waitForTimeout(300);
      figures[`blocked by ${name}`] = await longestFrame(page);
    }
    await page
      .locator("#list")
      .getByRole("button", { name: /List more/ })
      .click();
    await expect.poll(() => lines(page).count()).toBe(400);
    expect(await focused(page)).toBe(await lines(page).nth(200).textContent());
    figures["blocked by more"] = await longestFrame(page);
    for (const [name, ms] of Object.entries(figures))
      if (name.startsWith("blocked")) expect(ms, name).toBeLessThan(BLOCKED);
    expect(complaints).toEqual([]);
    const shown = Object.entries(figures).map(([name, ms]) => `${name} ${Math.round(ms)} ms`);
    console.log(`${(statSync(MANY).size / 1e6).toFixed(1)} MB; ${shown.join(", ")}`);
  });

  it("keeps out a script that somebody put into it", async () => {
    const page = readFileSync(SAMPLE, "utf8").replace("<main>", "<main><script>document.title='planted'</script>");
    const context = await chromium().newContext();
    const opened = await context.newPage();
    await opened.setContent(page);
    await opened.locator("#list summary").first().waitFor();
    expect(await opened.title()).not.toBe("planted");
  });
});

async function expectText(page: Page, text: string): Promise<void> {
  await expect.poll(() => status(page).textContent()).toContain(text);
}

async function tabTo(page: Page, isThere: () => boolean): Promise<void> {
  for (let presses = 0; presses < 200; presses++) {
    await page.keyboard.press("Tab");
    if (await page.evaluate(isThere)) return;
  }
  throw new Error("the Tab key does not lead there");
}

/** Lets the page tell how long it takes from an input until what came of it is painted. */
async function watchStatus(page: Page): Promise<void> {
  await page.evaluate(() => {
    let started = 0;
    const begin = (): void => {
      started ||= performance.now();
    };
    for (const kind of ["click", "input", "change"]) addEventListener(kind, begin, { capture: true, once: true });
    const told = new Promise<number>((resolve) => {
      const observer = new MutationObserver(() => {
        observer.disconnect();
        requestAnimationFrame(() => setTimeout(() => resolve(performance.now() - started)));
      });
      const target = document.getElementById("status");
      if (target) observer.observe(target, { childList: true, characterData: true, subtree: true });
    });
    Object.assign(globalThis, { told });
  });
}
