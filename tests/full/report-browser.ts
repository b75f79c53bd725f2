import { existsSync } from "node:fs";
import { pathToFileURL } from "node:url";
import axe from "axe-core";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";

const CHROMIUM = "/usr/bin/chromium";

/** Why pages cannot be opened on this machine; null where they can. */
export const NO_CHROMIUM = existsSync(CHROMIUM) ? null : `no ${CHROMIUM}; apt-get install chromium`;

export function startChromium(): Promise<Browser> {
  return chromium.launch({ executablePath: CHROMIUM, args: ["--no-sandbox", "--disable-gpu"] });
}

/** A page with a file in it, the network cut off; what it says against itself is kept. */
export interface OpenedPage {
  readonly page: Page;
  /** Errors of the script, refusals of the policy, anything asked for from outside. */
  readonly complaints: readonly string[];
}

export async function openPage(
  browser: Browser,
  file: string,
  options: BrowserContextOptions = {},
): Promise<OpenedPage> {
  const context = await browser.newContext({ offline: true, viewport: { width: 1280, height: 900 }, ...options });
  const page = await context.newPage();
  page.setDefaultTimeout(15_000);
  const complaints: string[] = [];
  page.on("pageerror", ({ message }) => complaints.push(message));
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") complaints.push(message.text());
  });
  page.on("request", (request) => {
    if (!request.url().startsWith("file:")) complaints.push(`asked for ${request.url()}`);
  });
  await page.addInitScript(watchFrames);
  await page.goto(pathToFileURL(file).href);
  return { page, complaints };
}

/** Frames between which the page stood still, in ms; a page that was never blocked has about 17 each. */
function watchFrames(): void {
  const frames: number[] = [];
  let last = performance.now();
  const seen = (now: number): void => {
    frames.push(now - last);
    last = now;
    requestAnimationFrame(seen);
  };
  requestAnimationFrame(seen);
  const tasks: number[] = [];
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) tasks.push(duration);
  }).observe({ type: "longtask", buffered: true });
  Object.assign(globalThis, { frames, tasks });
}

/** The longest that the page stood still since it was last asked, in ms. */
export function longestFrame(page: Page): Promise<number> {
  return page.evaluate(() => Math.max(0, ...(globalThis as unknown as { frames: number[] }).frames.splice(0)));
}

/** The longest that the page was at work without a pause since it was opened, in ms; before its first frame none is due. */
export function longestTask(page: Page): Promise<number> {
  return page.evaluate(() => Math.max(0, ...(globalThis as unknown as { tasks: number[] }).tasks));
}

/** What axe-core finds, one line each; it is put into the page by the debugging protocol, past the page's policy. */
export async function accessibilityFaults(page: Page): Promise<readonly string[]> {
  await page.evaluate(axe.source);
  return page.evaluate(async () => {
    interface Found {
      readonly violations: readonly {
        readonly id: string;
        readonly help: string;
        readonly nodes: readonly { readonly target: readonly string[]; readonly failureSummary?: string }[];
      }[];
    }
    const inPage = globalThis as unknown as { axe: { run(): Promise<Found> } };
    const { violations } = await inPage.axe.run();
    return violations.flatMap(({ id, help, nodes }) =>
      nodes.slice(0, 3).map(({ target, failureSummary }) => `${id} (${help}): ${target.join(" ")} ${failureSummary}`),
    );
  });
}
