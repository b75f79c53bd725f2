import { execFileSync } from "node:child_process";
import { rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { SITE_BOOK, siteBookWith } from "../tools/edited-copy.js";
import { runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const RAISED = ['version: "1.0.0"', 'version: "1.1.0"'] as const;
const OTHER_REASON = ["the halls are cold in winter", "the halls are cold"] as const;
const record = (text: string) => ["## 1.0.0", `## 1.1.0\n\n${text}\n\n## 1.0.0`] as const;

async function since(edits: Parameters<typeof siteBookWith>[0]): Promise<{ code: number | null; err: string }> {
  const { code, err } = await runCommand("check-rules", "--over", siteBookWith(edits), "--since", SITE_BOOK);
  return { code, err };
}

describe("spotface check-rules --over --since with an older overlay", () => {
  it("asks for nothing where nothing changed, or only a case", async () => {
    expect(await since({})).toEqual({ code: 0, err: "" });
    expect(await since({ "changes/adhesive-cure.yaml": ['name: "just short"', 'name: "a little short"'] })).toEqual({
      code: 0,
      err: "",
    });
  });

  it("asks for a higher version where something changed, for whatever reason", async () => {
    const changed = await since({ "changes/adhesive-cure.yaml": OTHER_REASON });
    expect(changed.code).toBe(1);
    expect(changed.err).toMatch(
      /overlay\.yaml:4:1: changed since 1\.0\.0: rule adhesive-cure \(changed\); raise the version .*\[version-not-raised\]/,
    );
    const less = await since({ "changes/drip-loop.yaml": null });
    expect(less.err).toContain("rule drip-loop (removed)");
    const model = await since({ "models/example-works-unit.yaml": ["8 N·m", "9 N·m"] });
    expect(model.err).toContain("model example-works-unit (changed)");
  });

  it("asks for a record of everything that changed in the overlay's own CHANGES.md", async () => {
    const edits = { "overlay.yaml": RAISED, "changes/adhesive-cure.yaml": OTHER_REASON };
    expect((await since(edits)).err).toMatch(
      /CHANGES\.md:1:1: CHANGES\.md has no heading "## 1\.1\.0".*\[no-change-record\]/,
    );
    const missing = await since({ ...edits, "CHANGES.md": record("- `drip-loop` is as it was.") });
    expect(missing.err).toMatch(
      /CHANGES\.md:\d+:1: the rule "adhesive-cure" was changed and is not named below 1\.1\.0/,
    );
    expect(await since({ ...edits, "CHANGES.md": record("- `adhesive-cure` has another reason.") })).toEqual({
      code: 0,
      err: "",
    });
    const raised = await since({ "overlay.yaml": RAISED });
    expect(raised).toEqual({ code: 0, err: "" });
  });

  it("asks for a higher version where it is made for another book", async () => {
    const older = siteBookWith({
      "overlay.yaml": ['over: { name: "spotface rulebook"', 'over: { name: "an older rulebook"'],
    });
    const run = await runCommand("check-rules", "--over", SITE_BOOK, "--since", older);
    expect(run.code).toBe(1);
    expect(run.err).toContain("changed since 1.0.0: made for spotface rulebook ");
  });

  it("wants the overlay as it is now beside the older one, and compares rulebooks without what lies over them", async () => {
    const run = await runCommand("check-rules", "--since", SITE_BOOK);
    expect(run.code).toBe(1);
    expect(run.err).toContain(
      'this is the overlay "Vellamoor site book" as it was; give it as it is now with --over [overlay-not-given]',
    );
    const books = await runCommand("check-rules", "--over", SITE_BOOK, "--since", projectPath("rules"));
    expect(books).toMatchObject({ code: 0, err: "" });
  });

  it("reads the older one, and the one that is laid over the book, from a commit", async () => {
    const folder = siteBookWith({});
    const git = (...args: readonly string[]): void => {
      const who = ["-c", "user.name=A", "-c", "user.email=a@example.org"];
      execFileSync("git", ["-C", folder, ...who, ...args], { stdio: "ignore" });
    };
    git("init");
    git("add", ".");
    git("commit", "-m", "as it was");
    writeFileSync(join(folder, "changes/drip-loop.yaml"), "");
    const broken = await runCommand("check-rules", "--over", folder, "--since", `${folder}@HEAD`);
    expect(broken).toMatchObject({ code: 2, err: expect.stringContaining("[empty-file]") });
    expect(await runCommand("check-rules", "--over", `${folder}@HEAD`)).toMatchObject({ code: 0, err: "" });
    rmSync(join(folder, "changes/drip-loop.yaml"));
    const run = await runCommand("check-rules", "--over", folder, "--since", `${folder}@HEAD`);
    expect(run.err).toContain("rule drip-loop (removed)");
  });

  it("refuses an older overlay that has no right form", async () => {
    const older = siteBookWith({ "changes/drip-loop.yaml": ["switchedOff", "switchedOf"] });
    const run = await runCommand("check-rules", "--over", SITE_BOOK, "--since", older);
    expect(run.code).toBe(1);
    expect(run.err).toContain("does not load with this version: ");
  });
});
