import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { CLI, contentsOf, PROJECT, run, SCREEN_SAMPLE, temporaryFolder } from "./tools.js";

const ZONES = ["UTC", "Pacific/Auckland", "America/Lima"];
const LOCALES = [
  { lang: "C", taken: "en-US" },
  { lang: "de_DE.UTF-8", taken: "de-DE" },
  { lang: "tr_TR.UTF-8", taken: "tr-TR" },
] as const;
const VERSIONS = [22, 24];

const folder = temporaryFolder();

/** Everything a run prints and writes, by name. */
function outputsOf(
  node: string,
  name: string,
  env: Readonly<Record<string, string>>,
): Readonly<Record<string, string>> {
  const out = join(folder, name.replace(/[^\w-]+/g, "-"));
  mkdirSync(out, { recursive: true });
  const ended = run(node, [CLI, ...SCREEN_SAMPLE, "--json", "--out", out], { cwd: PROJECT, env });
  expect(ended.status, ended.err).toBe(0);
  return { ...contentsOf(out), "standard output": ended.out };
}

const here = outputsOf(process.execPath, "here", { TZ: "UTC", LC_ALL: "C", LANG: "C" });

/** Compares part by part, so that a difference names its file without printing megabytes. */
function expectSame(found: Readonly<Record<string, string>>): void {
  expect(Object.keys(found)).toEqual(Object.keys(here));
  const different = Object.keys(here).filter((name) => found[name] !== here[name]);
  expect(different).toEqual([]);
}

describe.each(ZONES)("in the time zone %s", (zone) => {
  it.for(LOCALES)("gives the same bytes under LANG=$lang", ({ lang, taken }, { skip }) => {
    const env = { TZ: zone, LANG: lang, LC_ALL: lang };
    const asked = "const o = Intl.DateTimeFormat().resolvedOptions(); console.log(o.timeZone, o.locale)";
    const said = run(process.execPath, ["-e", asked], { env }).out.trim();
    if (said !== `${zone} ${taken}`) skip(`Node works with ${said} here`);
    expectSame(outputsOf(process.execPath, `${zone}-${lang}`, env));
  });
});

describe("with other versions of Node", () => {
  it.for(VERSIONS)("gives the same bytes under Node %i", (version, { skip }) => {
    const found = run("npx", ["-y", "-p", `node@${version}`, "node", "-p", "process.execPath"]);
    if (found.status !== 0) skip(`npx could not fetch node@${version}`);
    const node = found.out.trim().split("\n").at(-1) ?? "";
    expect(run(node, ["--version"]).out).toMatch(new RegExp(`^v${version}\\.`));
    expectSame(outputsOf(node, `node-${version}`, {}));
  });
});
