import { cpSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

function book(edits: Readonly<Record<string, readonly [from: string | RegExp, to: string]>>): string {
  const folder = join(mkdtempSync(join(tmpdir(), "since-")), "book");
  cpSync(projectPath("rules"), folder, { recursive: true });
  for (const [file, [from, to]] of Object.entries(edits)) {
    const text = readFileSync(join(folder, file), "utf8");
    const changed = text.replace(from, to);
    if (changed === text) throw new Error(`${file} holds no ${from}`);
    writeFileSync(join(folder, file), changed);
  }
  return folder;
}

const DEEPER = { "hole/hole-depth.yaml": [/title: .*/, 'title: "The hole is deep enough"'] } as const;
const RAISED = { "rulebook.yaml": [/version: .*/, 'version: "99.0.0"'] } as const;
const RECORD = "## 99.0.0, in force from 2030-01-01\n\n- `hole-depth` has another title.\n\n## ";

describe("spotface check-rules --since", () => {
  const since = async (folder: string) => runCommand("check-rules", folder, "--since", projectPath("rules"));

  it("asks for nothing where nothing changed, or only a case", async () => {
    expect(await since(book({}))).toMatchObject({ code: 0, err: "" });
    const named = book({ "hole/hole-depth.yaml": ['name: "', 'name: "once more: '] });
    expect(await since(named)).toMatchObject({ code: 0, err: "" });
  });

  it("asks for a higher version where a rule changed", async () => {
    const run = await since(book(DEEPER));
    expect(run.code).toBe(1);
    expect(run.err).toMatch(
      /rulebook\.yaml:\d+:1: changed since .*: rule hole-depth \(changed\).*\[version-not-raised\]/,
    );
    const lower = await since(book({ ...DEEPER, "rulebook.yaml": [/version: .*/, 'version: "0.0.9"'] }));
    expect(lower.err).toContain("[version-not-raised]");
  });

  it("asks for a record of every changed rule below the new version", async () => {
    expect((await since(book({ ...DEEPER, ...RAISED }))).err).toContain("[no-change-record]");
    const other = RECORD.replace("hole-depth", "thread-depth");
    const elsewhere = await since(book({ ...DEEPER, ...RAISED, "CHANGES.md": ["## ", other] }));
    expect(elsewhere.err).toMatch(
      /CHANGES\.md:\d+:1: the rule "hole-depth" was changed and is not named below 99\.0\.0/,
    );
    expect(await since(book({ ...DEEPER, ...RAISED, "CHANGES.md": ["## ", RECORD] }))).toMatchObject({
      code: 0,
      err: "",
    });
  });
});
