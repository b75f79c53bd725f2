import { describe, expect, it } from "vitest";
import { type FileFinding, loadRulebook } from "../../src/rulebook/index.js";
import { SMALL_BOOK, SMALL_GROUPS, smallFiles } from "./small-book.js";

function findingsOf(files: Parameters<typeof loadRulebook>[0], root?: string): readonly FileFinding[] {
  const loading = loadRulebook(files, root === undefined ? {} : { root });
  return loading.ok ? [] : loading.findings;
}

const small = (changed: Readonly<Record<string, string | null>>) => smallFiles({ ...SMALL_GROUPS, ...changed });

describe("one mistake is one finding", () => {
  it("where a group has it that rules rest on", () => {
    const groups = SMALL_GROUPS["groups/supply.yaml"] ?? "";
    for (const key of ["suply_name", "supply_voltage"]) {
      const found = findingsOf(small({ "groups/supply.yaml": groups.replace("[supply_name]", `[${key}]`) }));
      expect(found.map(({ file }) => file)).toEqual(["groups/supply.yaml"]);
    }
    const way = findingsOf(small({ "groups/supply.yaml": groups.replace("{ sum:", "{ total:") }));
    expect(way.map(({ file }) => file)).toEqual(["groups/supply.yaml"]);
  });

  it("where a rule names a condition or a group that is not there, and a remedy rests on it", () => {
    const rule = SMALL_BOOK["hole/thread-depth.yaml"] ?? "";
    const text = rule.replace(
      "{ fact: mounting_method, operator: equal, value: tapped-hole }",
      "{ condition: drilled }",
    );
    const changed = text.replace("change: [thread_depth]", "change: [mounting_method]");
    const found = findingsOf(small({ "hole/thread-depth.yaml": changed }));
    expect(found.map(({ code }) => code)).toEqual(["unknown-condition"]);
    const lost = findingsOf(smallFiles({ "supply/load.yaml": SMALL_GROUPS["supply/load.yaml"] ?? "" }));
    expect(lost.map(({ code }) => code)).toEqual(["unknown-group"]);
  });

  it("where the folder above the rulebook is named", () => {
    const files = small({}).map(({ path, text }) => ({ path: `mine/book/${path}`, text }));
    expect(findingsOf(files, "mine")).toEqual([
      expect.objectContaining({ file: "mine", code: "no-manifest", text: expect.stringMatching(/name mine\/book$/) }),
    ]);
    expect(findingsOf(files, "mine/book")).toEqual([]);
  });
});

describe("a file under a name that is not read", () => {
  it("is not left out in silence where it looks like one of the rulebook", () => {
    const rule = SMALL_BOOK["hole/thread-depth.yaml"] ?? "";
    const found = findingsOf(small({ "hole/thread-depth.yaml": null, "hole/thread-depth.yaml.txt": rule }));
    expect(found).toContainEqual(expect.objectContaining({ file: "hole/thread-depth.yaml.txt", code: "not-read" }));
    expect(findingsOf(small({ "hole/notes.txt": "to be asked", "hole/thread-depth.yaml~": rule }))).toEqual([]);
  });
});
