import { describe, expect, it } from "vitest";
import { releaseProblems } from "../../src/comparing/index.js";
import { loadRulebook, type Rulebook } from "../../src/rulebook/index.js";
import { shippedFiles } from "../tools/shipped.js";

/** The shipped book under another version, with another seat diameter where that is wanted. */
async function book(version: string, isChanged: boolean): Promise<Rulebook> {
  const files = (await shippedFiles()).map(({ path, text }) => {
    if (path.endsWith("rulebook.yaml")) return { path, text: text.replace(/^version: .*$/m, `version: "${version}"`) };
    if (!isChanged || !path.endsWith("hole/hole-depth.yaml")) return { path, text };
    return { path, text: text.replace(/^title: .*$/m, 'title: "The hole is deep enough"') };
  });
  const loading = loadRulebook(files, { root: "rules" });
  if (!loading.ok) throw new Error(JSON.stringify(loading.findings.slice(0, 3)));
  return loading.rulebook;
}

async function problems(version: string, changes: string): Promise<readonly string[]> {
  const [before, after] = [await book("0.3.0", false), await book(version, true)];
  const manifest = { path: "rules/rulebook.yaml", text: `name: x\nversion: "${version}"\n` };
  const found = releaseProblems(before, after, { manifest, changes: { path: "rules/CHANGES.md", text: changes } });
  return found.map(({ code, file, line }) => `${file}:${line} ${code}`);
}

describe("a changed rulebook", () => {
  it("is said under the heading of its own version, not of one that begins alike", async () => {
    const said = "\nThe rule `hole-depth` has another title.\n";
    expect(await problems("0.3.1", `# Changes\n\n## 0.3.1${said}`)).toEqual([]);
    expect(await problems("0.3.1", `# Changes\n\n## 0.3.1, in force from May${said}`)).toEqual([]);
    expect(await problems("0.3.1", `# Changes\n\n## 0.3.10${said}`)).toEqual(["rules/CHANGES.md:1 no-change-record"]);
    expect(await problems("0.3.1", `# Changes\n\n## 0.3.1.2${said}`)).toEqual(["rules/CHANGES.md:1 no-change-record"]);
    expect(await problems("0.3.1", `# Changes\n\n## 0x3.1${said}`)).toEqual(["rules/CHANGES.md:1 no-change-record"]);
  });

  it("needs a version that is higher as a number, not as a word", async () => {
    const changes = "# Changes\n\n## 0.10.0\n`hole-depth`\n\n## 0.2.9\n`hole-depth`\n";
    expect(await problems("0.10.0", changes)).toEqual([]);
    expect(await problems("0.2.9", changes)).toEqual(["rules/rulebook.yaml:2 version-not-raised"]);
    expect(await problems("0.3.0", changes)).toEqual(["rules/rulebook.yaml:2 version-not-raised"]);
  });

  it("is named under its own heading, not under another one", async () => {
    const changes = "# Changes\n\n## 0.4.0\nNothing.\n\n## 0.3.0\nThe rule `hole-depth` is new.\n";
    expect(await problems("0.4.0", changes)).toEqual(["rules/CHANGES.md:3 not-in-change-record"]);
  });
});
