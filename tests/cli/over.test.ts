import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { RESULT_SCHEMA, screenFiles } from "../../src/index.js";
import { editedCopy, ownFolder, SITE_BOOK, siteBookWith } from "../tools/edited-copy.js";
import { runCommand } from "../tools/run-command.js";
import { projectPath } from "../tools/shipped.js";

const SURVEY = projectPath("samples/survey.xlsx");
const SURVEYS = [SURVEY, projectPath("samples/survey-full.xlsx")];
const AS_OF = ["--as-of", "2026-11-26"] as const;
const OVER = ["--over", SITE_BOOK] as const;
const VERSION = /version: "(\S+)"/.exec(readFileSync(projectPath("rules/rulebook.yaml"), "utf8"))?.[1] ?? "";

const validates = new Ajv2020({ allErrors: true, strict: true, allowUnionTypes: true }).compile(RESULT_SCHEMA);

/** A document as read from text. */
type Read = ReturnType<typeof JSON.parse>;

const results = new Map<string, Promise<Read>>();

/** The result of screening the samples with the full set; each way once. */
function resultOf(...args: readonly string[]): Promise<Read> {
  const key = args.join(" ");
  const known = results.get(key);
  if (known) return known;
  const fresh = screened(args);
  results.set(key, fresh);
  return fresh;
}

async function screened(args: readonly string[]): Promise<Read> {
  const run = await runCommand("screen", ...SURVEYS, "--set", "full", ...AS_OF, "--site", "X", "--json", ...args);
  if (run.code !== 0) throw new Error(run.err);
  return JSON.parse(run.out);
}

/** What a result says of its points and rules, without digests and without the lines of rule files. */
function said({ points, summary, rules, groups }: Read): unknown {
  const plain = { points, summary, groups, rules: rules.map(({ addedBy: _, changedBy: __, ...rule }: Read) => rule) };
  return JSON.parse(JSON.stringify(plain, (key, value) => (key === "origin" && value !== null ? "there" : value)));
}

function emptyOverlay(): string {
  const folder = ownFolder();
  const manifest = `name: "empty book"\nversion: "1.0.0"\nover: { name: "spotface rulebook", version: "${VERSION}" }\n`;
  writeFileSync(join(folder, "overlay.yaml"), manifest);
  return folder;
}

describe("screening with an overlay", () => {
  it("gives what a copy edited by hand gives, point by point", async () => {
    const over = await resultOf(...OVER);
    const copy = await resultOf("--rules", editedCopy());
    expect(over.points.length).toBeGreaterThan(200);
    expect(said(over)).toEqual(said(copy));
    expect(over.rulebook.digest).not.toBe(copy.rulebook.digest);
  }, 60_000);

  it("says in the head what lay over the rulebook, what was changed, added and switched off", async () => {
    const result = await resultOf(...OVER);
    validates(result);
    expect(validates.errors).toBeNull();
    const word = { by: "A. Quill, vibration engineer", on: "2026-09-14", reason: expect.stringContaining("cold") };
    const keys = ["limits", "citations", "messages", "remedy", "cases", "casesGive"];
    expect(result.rulebook).toEqual({
      name: "spotface rulebook",
      version: VERSION,
      digest: expect.stringMatching(/^[0-9a-f]{64}$/),
      overlays: [
        {
          name: "Vellamoor site book",
          version: "1.0.0",
          digest: expect.stringMatching(/^[0-9a-f]{64}$/),
          signedBy: null,
          added: [
            { kind: "model", id: "example-works-unit" },
            { kind: "rule", id: "cable-in-store" },
          ],
          changed: [{ kind: "rule", id: "adhesive-cure", keys, loosens: [], ...word }],
        },
      ],
      switchedOff: [
        {
          rule: "drip-loop",
          title: "Where it gets wet the cable has a drip loop",
          overlay: "Vellamoor site book",
          reason: expect.stringContaining("points down"),
          by: "B. Sedge, head of electrical maintenance",
          on: "2026-09-21",
        },
      ],
      signedBy: null,
    });
    const rules = new Map<string, Read>(result.rules.map((rule: Read) => [rule.id, rule]));
    expect(rules.get("adhesive-cure")).toMatchObject({
      addedBy: null,
      changedBy: [{ overlay: "Vellamoor site book", keys, loosens: [], ...word }],
    });
    expect(rules.get("cable-in-store")).toMatchObject({ addedBy: "Vellamoor site book", changedBy: [] });
    expect(rules.get("min-speed")).toMatchObject({ addedBy: null, changedBy: [] });
    expect(rules.has("drip-loop")).toBe(false);
  }, 30_000);

  it("differs with an empty overlay in nothing but digests and the overlay itself", async () => {
    const [alone, empty] = [await resultOf(), await resultOf("--over", emptyOverlay())];
    expect(alone.rulebook).toMatchObject({ overlays: [], switchedOff: [] });
    expect(empty.rulebook).toMatchObject({
      overlays: [{ name: "empty book", added: [], changed: [] }],
      switchedOff: [],
    });
    expect(empty.rulebook.digest).not.toBe(alone.rulebook.digest);
    expect(empty.digest).not.toBe(alone.digest);
    const plain = ({ digest: _, rulebook: __, ...rest }: Read): unknown => rest;
    expect(plain(empty)).toEqual(plain(alone));
  }, 60_000);

  it("tells it on the terminal, in the tables and by why", async () => {
    const folder = ownFolder();
    const run = await runCommand("screen", SURVEY, ...AS_OF, "--set", "full", ...OVER, "--out", folder);
    const text = run.out.replace(/\s+/g, " ");
    expect(text).toContain(`rulebook spotface rulebook ${VERSION} with Vellamoor site book 1.0.0, set full`);
    expect(text).toContain("rule adhesive-cure: limit, messages, remedy by Vellamoor site book: the halls are cold");
    expect(text).toContain("rule drip-loop: switched off, every connector of the works points down");
    for (const table of ["survey.points.csv", "survey.findings.csv"]) {
      const [head = "", row = ""] = readFileSync(join(folder, table), "utf8").split("\r\n");
      expect(head).toContain(",rulebook digest,overlays,");
      expect(row).toContain(",Vellamoor site book 1.0.0,");
    }
    const why = await runCommand("why", SURVEY, ...AS_OF, ...OVER, "--point", "VM3-02", "--rule", "adhesive-cure");
    const told = why.out.replace(/\s+/g, " ");
    expect(told).toContain("limit, messages, remedy by Vellamoor site book: the halls are cold in winter");
    expect(told).toContain(`limit in force from 2026-10-01, to be reviewed by 2028-01-01 (${SITE_BOOK}/changes`);
    expect(told).toContain(
      "Switched off Where it gets wet the cable has a drip loop (drip-loop), by Vellamoor site book",
    );
    const plain = await runCommand("why", SURVEY, ...AS_OF, "--point", "VM3-02", "--rule", "adhesive-cure");
    expect(plain.out).not.toMatch(/Switched off|site book/);
  }, 30_000);

  it("is there by a call, too", async () => {
    const run = await screenFiles([SURVEY], { over: [SITE_BOOK], asOf: "2026-11-26" });
    if (!run.ok) throw new Error(JSON.stringify(run));
    expect(run.screening.head.rulebook.overlays.map(({ name }) => name)).toEqual(["Vellamoor site book"]);
    expect(await screenFiles([SURVEY], { over: [ownFolder()] })).toMatchObject({
      ok: false,
      findings: [{ code: "no-manifest" }],
    });
  });

  it("says that somebody wants less than before", async () => {
    const change = `changes: { rule: welded-pad }\nreplaces: { undecided: warn }\nreason: "the permit office asks"\nby: "A. Quill"\non: 2026-11-01\n`;
    const over = siteBookWith({ "changes/more.yaml": [null, change] });
    const run = await runCommand("screen", SURVEY, ...AS_OF, "--over", over);
    const text = run.out.replace(/\s+/g, " ");
    expect(text).toContain(
      "rule welded-pad: weight of what is open by Vellamoor site book: the permit office asks (A. Quill, 2026-11-01); what is open counts as warn instead of fail",
    );
  });
});

describe("an overlay that cannot be used", () => {
  it.each([
    ["for another version", { "overlay.yaml": [`version: "${VERSION}"`, 'version: "0.0.1"'] }, "other-version"],
    [
      "with a rule of the core switched off",
      { "changes/drip-loop.yaml": ["drip-loop", "min-speed"] },
      "core-switched-off",
    ],
    [
      "with a rule that protects people switched off",
      { "changes/drip-loop.yaml": ["drip-loop", "hot-work"] },
      "never-switched-off",
    ],
    [
      "with a gate of methods switched off",
      { "changes/drip-loop.yaml": ["drip-loop", "welded-pad"] },
      "gate-switched-off",
    ],
    ["that changes what is not there", { "changes/drip-loop.yaml": ["drip-loop", "drip-lop"] }, "unknown-thing"],
  ] as const)("ends the run: %s", async (_name, edits, code) => {
    const run = await runCommand("screen", SURVEY, ...AS_OF, "--over", siteBookWith(edits));
    expect(run).toMatchObject({ code: 2, out: "" });
    expect(run.err).toContain(`[${code}]`);
  });

  it("ends the run where the folder is not there, and never writes into it", async () => {
    const gone = await runCommand("screen", SURVEY, "--over", join(ownFolder(), "gone"));
    expect(gone).toMatchObject({ code: 2, out: "" });
    const over = siteBookWith({});
    const file = join(over, "overlay.yaml");
    const before = readFileSync(file, "utf8");
    const run = await runCommand("screen", SURVEY, ...AS_OF, "--over", over, "--csv", file, "--overwrite");
    expect(run.code).toBe(2);
    expect(readFileSync(file, "utf8")).toBe(before);
  });
});

describe("accepted deviations beside an overlay", () => {
  it("cannot be from a rule that is switched off", async () => {
    const file = join(ownFolder(), "deviations.yaml");
    const days = "from: 2026-10-01\n    until: 2027-10-01";
    const who = `outcome: warn\n    reason: "x"\n    acceptedBy: "A. Quill"\n    ${days}`;
    writeFileSync(file, `deviations:\n  - point: "VM3-02"\n    rule: drip-loop\n    ${who}\n`);
    const run = await runCommand("screen", SURVEY, ...AS_OF, ...OVER, "--deviations", file);
    expect(run.code).toBe(2);
    expect(run.err).toContain(`:3:11: "drip-loop" is switched off by "Vellamoor site book", so that nothing deviates`);
  });
});

describe("the other commands with an overlay", () => {
  it("check it as a whole", async () => {
    const run = await runCommand("check-rules", "--complete", ...OVER, ...AS_OF);
    expect(run).toMatchObject({ code: 0, err: "" });
    expect(run.out).toContain(`spotface rulebook ${VERSION} with Vellamoor site book 1.0.0: `);
    expect(run.out).toContain("switched off: drip-loop\n");
    const json = JSON.parse((await runCommand("check-rules", ...OVER, ...AS_OF, "--json")).out);
    expect(json.rulebook).toMatchObject({ overlays: [{ name: "Vellamoor site book" }], switchedOff: ["drip-loop"] });
  }, 120_000);

  it("say of an inherited case that does not hold any more what to do", async () => {
    const text = readFileSync(join(SITE_BOOK, "changes/adhesive-cure.yaml"), "utf8");
    const cases = text.slice(text.indexOf("  cases:"), text.indexOf("reason:"));
    const run = await runCommand("check-rules", "--over", siteBookWith({ "changes/adhesive-cure.yaml": [cases, ""] }));
    expect(run.code).toBe(1);
    expect(run.err).toMatch(
      /^rules\/bond\/adhesive-cure\.yaml:\d+:\d+: case "at the limit" .*; the case is inherited and holds without the overlay: replace the cases, changes: \{ rule: adhesive-cure \}/m,
    );
  }, 30_000);

  it("compare the book without it and with it", async () => {
    const args = [SURVEY, ...AS_OF, "--set", "full", "--after-over", SITE_BOOK];
    const run = await runCommand("what-changes", ...args, "--json");
    const { things, turned, before, after } = JSON.parse(run.out);
    expect([before.overlays, after.overlays]).toEqual([[], [{ name: "Vellamoor site book", version: "1.0.0" }]]);
    expect(things.map(({ kind, id, how, saidBy }: Read) => [kind, id, how, saidBy.map((one: Read) => one.by)])).toEqual(
      [
        ["rule", "adhesive-cure", "changed", ["A. Quill, vibration engineer"]],
        ["rule", "cable-in-store", "added", []],
        ["rule", "drip-loop", "removed", ["B. Sedge, head of electrical maintenance"]],
        ["model", "example-works-unit", "added", []],
      ],
    );
    expect(turned.byRule.map(({ rule }: Read) => rule)).toEqual(["adhesive-cure"]);
    const text = (await runCommand("what-changes", ...args)).out.replace(/\s+/g, " ");
    expect(text).toContain(`after: spotface rulebook ${VERSION} with Vellamoor site book 1.0.0 (digest`);
    expect(text).toContain("rule drip-loop: removed by Vellamoor site book: every connector");
  }, 30_000);

  it("compare two books with the same overlay over both, and one with itself never", async () => {
    const both = [SURVEY, ...AS_OF, "--over", SITE_BOOK];
    const run = await runCommand("what-changes", ...both, "--after-over", emptyOverlay(), "--json");
    expect(JSON.parse(run.out)).toMatchObject({ things: [], turned: { turned: [] } });
    expect((await runCommand("what-changes", ...both)).err).toContain("one rulebook");
  }, 30_000);

  it("compare with a stored result that tells of its overlay", async () => {
    const stored = join(ownFolder(), "old.json");
    await runCommand("screen", SURVEY, ...AS_OF, "--site", "X", ...OVER, "--result", stored);
    const args = [SURVEY, "--before", stored];
    const run = await runCommand("what-changes", ...args);
    expect(run.out.replace(/\s+/g, " ")).toContain(
      "by spotface rulebook 0.3.0 with Vellamoor site book 1.0.0".replace("0.3.0", VERSION),
    );
    const same = JSON.parse((await runCommand("what-changes", ...args, "--after-over", SITE_BOOK, "--json")).out);
    expect(same).toMatchObject({ differences: { rulebook: false }, turned: { turned: [] } });
    const refused = await runCommand("what-changes", ...args, "--before-over", SITE_BOOK);
    expect(refused).toMatchObject({ code: 2, err: expect.stringContaining("--before-over: ") });
  }, 30_000);

  it("move a limit of it, read columns, ask for its facts, and compare what was built", async () => {
    const moved = await runCommand(
      "move-limit",
      SURVEY,
      ...AS_OF,
      ...OVER,
      "--rule",
      "adhesive-cure",
      "--from",
      "15",
      "--to",
      "30",
      "--step",
      "15",
    );
    expect(moved.out).toContain("with Vellamoor site book 1.0.0");
    expect(moved.out).toMatch(/30 +< in force/);
    expect((await runCommand("columns", SURVEY, ...OVER)).code).toBe(0);
    const built = await runCommand(
      "check-built",
      SURVEY,
      "--built",
      projectPath("samples/built.csv"),
      ...AS_OF,
      ...OVER,
    );
    expect(built.out.replace(/\s+/g, " ")).toContain("with Vellamoor site book 1.0.0");
    const blank = join(ownFolder(), "blank.xlsx");
    expect((await runCommand("blank-survey", blank, "--set", "full", ...OVER)).code).toBe(0);
    const broken = siteBookWith({ "overlay.yaml": [`version: "${VERSION}"`, 'version: "0.0.1"'] });
    expect((await runCommand("blank-survey", join(ownFolder(), "b.xlsx"), "--over", broken)).code).toBe(2);
    expect((await runCommand("columns", SURVEY, "--over", broken)).err).toContain("[other-version]");
  }, 60_000);
});
