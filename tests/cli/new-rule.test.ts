import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { describe, expect, it } from "vitest";
import { temporaryFolders } from "../disk/temporary-folder.js";
import { GOOD_CASES, wallRule } from "../proving/small-rule.js";
import { smallFiles } from "../rulebook/small-book.js";
import { runCommand } from "../tools/run-command.js";

const freshFolder = temporaryFolders();

function smallBook(): string {
  const book = freshFolder();
  const own = {
    "hole/thread-depth.yaml": null,
    "speed/slow.yaml": null,
    "conditions/outdoors.yaml": null,
    "seat/thin-wall.yaml": `# yaml-language-server: $schema=../../../schemas/rule.schema.json\n${wallRule(GOOD_CASES)}`,
  };
  for (const { path, text } of smallFiles(own)) {
    mkdirSync(dirname(join(book, path)), { recursive: true });
    writeFileSync(join(book, path), text);
  }
  return book;
}

const ASKED = ["new-rule", "own-depth", "--topic", "bolt", "--judges", "thread_depth", "--fails", "below 9 mm"];

describe("new-rule", () => {
  it("writes a rule that check-rules --complete finds nothing to say of, and says what comes next", async () => {
    const book = smallBook();
    const run = await runCommand(...ASKED, "--applies", "mounting_method equal tapped-hole", "--rules", book);
    const path = join(book, "bolt/own-depth.yaml");
    expect(run).toMatchObject({ code: 0, out: `Written: rule with 6 cases: ${path}\n` });
    expect(run.err).toContain(`to be filled in: line 14, line 18 of ${path}`);
    expect(run.err).toContain(`check-rules ${book} --complete`);
    const text = readFileSync(path, "utf8");
    expect(text).toMatch(/^# yaml-language-server: \$schema=\.\.\/\.\.\/\.\.\/schemas\/rule\.schema\.json\n/);
    expect(text).toContain("from: 2026-06-01\n");
    expect(text).toContain("sets: [full]\n");
    expect(await runCommand("check-rules", book, "--complete")).toMatchObject({ code: 0, err: "" });
  });

  it("never writes over a rule, nor over another file of its name", async () => {
    const book = smallBook();
    const path = join(book, "bolt/own-depth.yaml");
    expect(await runCommand(...ASKED, "--rules", book)).toMatchObject({ code: 0 });
    const first = readFileSync(path, "utf8");
    const again = await runCommand(...ASKED, "--rules", book);
    expect(again).toMatchObject({ code: 2, out: "", err: expect.stringContaining(`stands in ${path} already`) });
    const elsewhere = await runCommand(...ASKED.with(3, "hole"), "--rules", book);
    expect(elsewhere).toMatchObject({ code: 2, err: expect.stringContaining("already") });
    expect(existsSync(join(book, "hole"))).toBe(false);
    expect(readFileSync(path, "utf8")).toBe(first);
  });

  it("writes only where it is told to", async () => {
    const book = smallBook();
    const refusals = [
      [[...ASKED], "copy it, and name the copy"],
      [[...ASKED, "--rules", join(book, "nowhere")], "there is no such folder"],
      [[...ASKED, "--rules", join(book, "rulebook.yaml")], "there is no such folder"],
      [[...ASKED.with(3, "models"), "--rules", book], "holds no rules"],
      [[...ASKED.with(3, "../up"), "--rules", book], "--topic: expected lower-case letters"],
      [[...ASKED.with(1, "Own_Depth"), "--rules", book], 'the id "Own_Depth": expected lower-case letters'],
      [[...ASKED, "--rules", book, "--from", "2026-02-30"], "--from: expected a day that exists"],
      [[...ASKED.with(7, "below 9 V"), "--rules", book], "--fails: "],
    ] as const;
    for (const [args, says] of refusals) {
      const run = await runCommand(...args);
      expect(run, says).toMatchObject({ code: 2, out: "", err: expect.stringContaining(says) });
    }
    expect(existsSync(join(book, "bolt"))).toBe(false);
  });

  it("is not written into a rulebook with mistakes", async () => {
    const book = smallBook();
    writeFileSync(join(book, "seat/thin-wall.yaml"), wallRule(GOOD_CASES, { judges: "wall_thicknes" }));
    const run = await runCommand(...ASKED, "--rules", book);
    expect(run).toMatchObject({ code: 2, err: expect.stringContaining('did you mean "wall_thickness"?') });
    expect(run.err).toContain("the rulebook has mistakes");
  });
});
