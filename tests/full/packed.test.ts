import { copyFileSync, mkdirSync, readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, it } from "vitest";
import { CLI, PROJECT, run, SCREEN_SAMPLE, temporaryFolder } from "./tools.js";

const folder = temporaryFolder();
const home = join(folder, "home");
let notInstalled: string | null = null;

/** Files of the package that a user needs, and beginnings of paths that do not belong into it. */
const NEEDED = [
  "dist/cli/main.js",
  "dist/index.d.ts",
  "rules/rulebook.yaml",
  "schemas/rule.schema.json",
  "samples/survey.xlsx",
];
const NOT_NEEDED = ["tests/", "src/", "node_modules/"];

let packed: readonly string[] = [];

beforeAll(() => {
  const pack = run("npm", ["pack", "--json", "--silent", "--pack-destination", folder]);
  expect(pack.status, pack.err).toBe(0);
  const [told] = JSON.parse(pack.out) as readonly { readonly files: readonly { readonly path: string }[] }[];
  packed = (told?.files ?? []).map(({ path }) => path);
  const tarball = join(folder, readdirSync(folder).find((name) => name.endsWith(".tgz")) ?? "");
  mkdirSync(join(home, "samples"), { recursive: true });
  writeFileSync(join(home, "package.json"), JSON.stringify({ name: "user", version: "1.0.0", private: true }));
  for (const file of ["survey.xlsx", "site.yaml"])
    copyFileSync(`${PROJECT}samples/${file}`, join(home, "samples", file));
  // Without the network first: what npm has in store is enough, and faster.
  const ways = [["--offline"], ["--prefer-offline"]];
  const runs = ways.map(
    (way) => () => run("npm", ["install", ...way, "--no-audit", "--no-fund", tarball], { cwd: home }),
  );
  const last = runs.reduce<ReturnType<typeof run> | null>((done, next) => (done?.status === 0 ? done : next()), null);
  if (last?.status !== 0) notInstalled = "npm could not install the package with its dependencies";
});

describe("the packed package", () => {
  it("holds the program, rules, schemas and samples, and nothing of the workshop", () => {
    for (const path of NEEDED) expect(packed).toContain(path);
    for (const start of NOT_NEEDED) expect(packed.filter((path) => path.startsWith(start))).toEqual([]);
  });

  it("screens the sample in a folder of its own, with the rules that came along", ({ skip }) => {
    if (notInstalled) skip(notInstalled);
    const installed = run("npx", ["--no-install", "spotface", ...SCREEN_SAMPLE, "--json"], { cwd: home });
    expect(installed.status, installed.err).toBe(0);
    const here = run(process.execPath, [CLI, ...SCREEN_SAMPLE, "--json"], { cwd: PROJECT });
    expect(installed.out === here.out, "the installed program gives what the built one gives").toBe(true);
  });

  it("checks its own rules", ({ skip }) => {
    if (notInstalled) skip(notInstalled);
    const checked = run("npx", ["--no-install", "spotface", "check-rules"], { cwd: home });
    expect(checked.status, checked.out + checked.err).toBe(0);
  });

  it("opens as a library", ({ skip }) => {
    if (notInstalled) skip(notInstalled);
    const code = `
      import { screenFiles } from "spotface";
      const result = await screenFiles(["samples/survey.xlsx"], { set: "core", siteFile: "samples/site.yaml", asOf: "2026-11-25" });
      console.log(result.ok ? [...result.screening.points()].length : result);`;
    const opened = run(process.execPath, ["--input-type=module", "-e", code], { cwd: home });
    expect(opened.out.trim(), opened.err).toBe("49");
  });
});
