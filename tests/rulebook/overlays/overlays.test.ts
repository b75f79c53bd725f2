import { describe, expect, it } from "vitest";
import type { TextFile } from "../../../src/base/index.js";
import {
  type FileFinding,
  loadRulebook,
  type OverlayFiles,
  type Rule,
  type Rulebook,
  runCase,
  wordOfOverlays,
} from "../../../src/rulebook/index.js";
import { SMALL_BOOK } from "../small-book.js";
import { bookBelow, overlayFiles, overlayOf, SMALL_OVERLAY } from "./small-overlay.js";

function laid(over: readonly OverlayFiles[], below: readonly TextFile[] = bookBelow()): Rulebook {
  const loading = loadRulebook(below, { over });
  if (!loading.ok)
    throw new Error(loading.findings.map(({ file, line, text }) => `${file}:${line} ${text}`).join("\n"));
  return loading.rulebook;
}

function findingsOf(over: readonly OverlayFiles[], below: readonly TextFile[] = bookBelow()): readonly FileFinding[] {
  const loading = loadRulebook(below, { over });
  return loading.ok ? [] : loading.findings;
}

const WORD = `reason: "so it is here"\nby: "A. Quill, vibration engineer"\non: 2026-05-07\n`;

/** A second overlay over the first. */
function above(files: Readonly<Record<string, string>>): OverlayFiles {
  const manifest = `name: "unit 4"\nversion: "1.0.0"\nover: { name: "works book", version: "2.1.0" }\n`;
  return overlayOf({ "overlay.yaml": manifest, ...files }, "unit");
}

/** An overlay right over the small book with this one change. */
function change(text: string): OverlayFiles {
  const manifest = `name: "site"\nversion: "1.0.0"\nover: { name: "small book", version: "1.0.0" }\n`;
  return overlayOf({ "overlay.yaml": manifest, "changes/one.yaml": `${text}\n${WORD}` });
}

function ruleOf(book: Rulebook, id: string): Rule {
  const rule = book.rules.find((one) => one.id === id);
  if (!rule) throw new Error(`no rule ${id}`);
  return rule;
}

/** A rule without the places where it is written. */
function withoutPlaces(rule: Rule): unknown {
  return JSON.parse(
    JSON.stringify(rule, (key, value) => (key === "at" ? undefined : value instanceof Map ? [...value] : value)),
  );
}

describe("a rulebook with an overlay", () => {
  it("has what the overlay changes and adds, and the rest as it was", () => {
    const book = laid([overlayFiles()]);
    const alone = laid([]);
    expect(book.rules.map(({ id }) => id)).toEqual(["thread-depth", "locked", "flat", "load"]);
    expect([...book.models.keys()]).toEqual(["baseline", "works-unit"]);
    expect(book.models.get("baseline")?.alsoWritten).toEqual(["BASE-1", "OLD-1"]);
    const { limits, cases, undecided, title, appliesWhen, casesGive } = ruleOf(book, "thread-depth");
    expect(limits).toMatchObject([{ from: "2026-01-01", fail: [{ is: "below", bound: { value: 8 } }] }]);
    expect([cases.length, undecided]).toEqual([3, "warn"]);
    expect({ title, appliesWhen, casesGive }).toEqual({
      title: ruleOf(alone, "thread-depth").title,
      appliesWhen: ruleOf(alone, "thread-depth").appliesWhen,
      casesGive: ruleOf(alone, "thread-depth").casesGive,
    });
    expect(ruleOf(book, "load").cases.map(({ name }) => name)).toEqual(["little", "too much", "many", "open", "half"]);
    expect(withoutPlaces(ruleOf(book, "locked"))).toEqual(withoutPlaces(ruleOf(alone, "locked")));
  });

  it("is the book that somebody gets who edits a copy by hand", () => {
    const edited = (SMALL_BOOK["hole/thread-depth.yaml"] ?? "")
      .replace(/limits:[^]*remedy:/, () => {
        const limits = "limits:\n  - { from: 2026-01-01, until: null, fail: { below: 8 mm }, cites: [own] }";
        const source = 'citations: { own: { basis: company-practice, says: "our bolts are shorter" } }';
        return `${limits}\n${source}\nmessages: { fail: "the thread is {thread_depth} deep" }\nremedy:`;
      })
      .replace(/undecided: fail\ncases:[^]*casesGive/, () => {
        const [deep, short, open] = [
          '{ name: "deep", given: { thread_depth: 8 mm }, expect: pass }',
          '{ name: "short", given: { thread_depth: 7.9 mm }, expect: fail }',
          '{ name: "open", given: {}, expect: undecided }',
        ];
        return `undecided: warn\ncases:\n  - ${deep}\n  - ${short}\n  - ${open}\ncasesGive`;
      });
    const copy = laid([], bookBelow({ "hole/thread-depth.yaml": edited }));
    const book = laid([overlayFiles()]);
    expect(withoutPlaces(ruleOf(book, "thread-depth"))).toEqual(withoutPlaces(ruleOf(copy, "thread-depth")));
  });

  it("runs all its cases as they expect", () => {
    const book = laid([overlayFiles()]);
    const runs = book.rules.flatMap((rule) => rule.cases.flatMap((one) => runCase(rule, one, book)));
    expect(runs.length).toBeGreaterThan(15);
    expect(runs.filter(({ difference }) => difference !== null)).toEqual([]);
  });

  it("says of each thing in which file it stands", () => {
    const book = laid([overlayFiles()]);
    const rule = ruleOf(book, "thread-depth");
    expect(rule.at.file).toBe("hole/thread-depth.yaml");
    expect(rule.limits[0]?.at).toEqual({ file: "site/changes/thread.yaml", line: 4, column: 7 });
    expect(rule.cases[0]?.at).toEqual({ file: "site/changes/thread.yaml", line: 13, column: 7 });
    const cases = ruleOf(book, "load").cases;
    expect(cases.map(({ at }) => at.file)).toEqual([...Array(4).fill("supply/load.yaml"), "site/changes/load.yaml"]);
    expect(ruleOf(book, "flat").at.file).toBe("site/rules/seat/flat.yaml");
  });

  it("tells what was changed, by whom and why, what is looser, and what is switched off", () => {
    const book = laid([overlayFiles()]);
    expect(book.overlays).toMatchObject(
      [{ name: "works book", version: "2.1.0", digest: /^[0-9a-f]{64}$/ }].map(({ digest: _, ...rest }) => rest),
    );
    expect(wordOfOverlays(book.overlays, { kind: "rule", id: "thread-depth" })).toEqual({
      addedBy: null,
      changedBy: [
        {
          kind: "rule",
          id: "thread-depth",
          overlay: "works book",
          keys: ["limits", "citations", "messages", "undecided", "cases"],
          loosens: ["what is open counts as warn instead of fail"],
          reason: "our bolts are shorter",
          by: "A. Quill, vibration engineer",
          on: "2026-05-04",
          at: { file: "site/changes/thread.yaml", line: 1, column: 1 },
        },
      ],
    });
    expect(wordOfOverlays(book.overlays, { kind: "rule", id: "flat" })).toEqual({
      addedBy: "works book",
      changedBy: [],
    });
    expect(wordOfOverlays(book.overlays, { kind: "model", id: "flat" })).toEqual({ addedBy: null, changedBy: [] });
    expect(book.switchedOff).toMatchObject([
      { rule: "slow", title: "the shaft is not slow", overlay: "works book", reason: "every shaft here turns fast" },
    ]);
  });

  it("has a digest of its own, over everything that the overlays say", () => {
    const manifest = `name: "empty"\nversion: "1.0.0"\nover: { name: "small book", version: "1.0.0" }\n`;
    const alone = laid([]).digest;
    const empty = laid([overlayOf({ "overlay.yaml": manifest })]);
    const full = laid([overlayFiles()]).digest;
    const { root, files } = overlayFiles();
    const otherReason = files.map(({ path, text }) => ({
      path,
      text: text.replace("seen on site", "seen in the hall"),
    }));
    const digests = [alone, empty.digest, full, laid([{ root, files: otherReason }]).digest];
    expect(new Set(digests).size).toBe(4);
    expect(laid([{ root, files: [...files].reverse() }]).digest).toBe(full);
    expect(laid([overlayFiles({}, "elsewhere")]).digest).toBe(full);
    expect(withoutPlaces(ruleOf(empty, "load"))).toEqual(withoutPlaces(ruleOf(laid([]), "load")));
  });

  it("takes away a key that a file need not have", () => {
    const book = laid([change("changes: { rule: load }\nreplaces: { appliesWhen: null }")]);
    expect(ruleOf(book, "load").appliesWhen).toBeNull();
  });

  it("lets a condition lie idle that only a changed or switched-off rule has used", () => {
    const outdoors = { "supply/load.yaml": SUPPLY_BY_CONDITION, "conditions/nights.yaml": NIGHTS };
    const off = change("changes: { rule: load }\nswitchedOff: true");
    expect(laid([off], bookBelow(outdoors)).switchedOff).toHaveLength(1);
  });
});

const NIGHTS = `id: nights\ntitle: "a battery"\nwhen: { fact: supply_name, operator: equal, value: "battery" }\n`;
const SUPPLY_BY_CONDITION = `id: load
title: "the supply carries its points"
group: supply
sets: [full]
stages: [proposed]
appliesWhen: { not: { condition: nights } }
judges: group.supply_current
limits:
  - { from: 2026-01-01, until: null, fail: { above: 2 A }, cites: [sum] }
citations: { sum: { basis: derivation, says: "currents add up" } }
messages: { fail: "too much" }
remedy: { text: "a larger supply", change: [] }
cases:
  - { name: "little", given: { group.supply_current: 1 A }, expect: pass }
  - { name: "too much", given: { group.supply_current: 3 A }, expect: fail }
  - { name: "open", given: {}, expect: undecided }
casesGive: { supply_name: "PSU 1", asOf: 2026-06-01 }
`;

describe("overlays over overlays", () => {
  it("change what lies below, each with its own word", () => {
    const text = `changes: { rule: flat }\nreplaces: { title: "the flat of unit 4 is wide enough" }\n${WORD}`;
    const more = `changes: { rule: thread-depth }\nreplaces: { remedy: { text: "ask the shop", change: [] } }\n${WORD}`;
    const book = laid([overlayFiles(), above({ "changes/a.yaml": text, "changes/b.yaml": more })]);
    expect(ruleOf(book, "flat").title).toBe("the flat of unit 4 is wide enough");
    expect(wordOfOverlays(book.overlays, { kind: "rule", id: "flat" })).toMatchObject({
      addedBy: "works book",
      changedBy: [{ overlay: "unit 4", keys: ["title"] }],
    });
    const { changedBy } = wordOfOverlays(book.overlays, { kind: "rule", id: "thread-depth" });
    expect(changedBy.map(({ overlay }) => overlay)).toEqual(["works book", "unit 4"]);
    expect(ruleOf(book, "thread-depth").limits[0]?.at.file).toBe("site/changes/thread.yaml");
  });

  it("cannot change what one below has switched off", () => {
    const text = `changes: { rule: slow }\nreplaces: { title: "x" }\n${WORD}`;
    expect(findingsOf([overlayFiles(), above({ "changes/a.yaml": text })])).toMatchObject([
      {
        file: "unit/changes/a.yaml",
        line: 1,
        code: "unknown-thing",
        text: expect.stringContaining("has switched the rule"),
      },
    ]);
  });

  it("are refused in the wrong order, and given twice", () => {
    expect(findingsOf([above({}), overlayFiles()])).toMatchObject([
      { file: "unit/overlay.yaml", code: "not-over-this" },
    ]);
    expect(findingsOf([overlayFiles(), overlayFiles()])).toMatchObject([
      { file: "site/overlay.yaml", code: "name-taken" },
    ]);
  });
});

describe("an overlay that does not fit", () => {
  it.each([
    ["no manifest", { "overlay.yaml": null }, "site/overlay.yaml", "no-manifest"],
    ["two manifests", { "overlay.yml": SMALL_OVERLAY["overlay.yaml"] ?? "" }, "site/overlay.yml", "second-manifest"],
    ["a manifest of a rulebook", { "rulebook.yaml": "name: x" }, "site/rulebook.yaml", "manifest-of-rulebook"],
    ["words", { "words/own.yaml": "fields: {}" }, "site/words/own.yaml", "words-in-overlay"],
    ["a rule beside the topics", { "rules/x.yaml": "id: x" }, "site/rules/x.yaml", "no-topic"],
    ["a rule as in a rulebook", { "seat/x.yaml": "id: x" }, "site/seat/x.yaml", "unknown-folder"],
    ["a folder in changes", { "changes/a/x.yaml": "id: x" }, "site/changes/a/x.yaml", "nested-folder"],
    ["a file at the top", { "x.yaml": "id: x" }, "site/x.yaml", "no-topic"],
    ["an empty change", { "changes/x.yaml": "" }, "site/changes/x.yaml", "empty-file"],
  ] as const)("for %s", (_name, files, file, code) => {
    const findings = findingsOf([overlayFiles(files)]);
    expect(findings.map((finding) => [finding.file, finding.code])).toContainEqual([file, code]);
    expect(findings.filter((finding) => finding.file === file)).toHaveLength(1);
  });

  it("passes over texts beside its data", () => {
    expect(findingsOf([overlayFiles({ "CHANGES.md": "# Changes", "rules/seat/readme.txt": "x" })])).toEqual([]);
  });

  it("is not looked at while the rulebook alone has a mistake", () => {
    const findings = findingsOf([change("changes: { rule: gone }")], bookBelow({ "speed/slow.yaml": "id: slow\n" }));
    expect(findings.map(({ file }) => file)).toEqual(["speed/slow.yaml"]);
  });

  it("says at the change what no longer holds of what it inherits", () => {
    const limits =
      "[{ from: 2026-01-01, until: null, fail: { above: { fact: group.supply_rating } }, warn: { above: 1 A }, cites: [sum] }]";
    const source = 'citations: { sum: { basis: derivation, says: "currents add up" } }';
    const findings = findingsOf([
      change(`changes: { rule: load }\nreplaces: { limits: ${limits}, ${source}, messages: { fail: "x" } }`),
    ]);
    expect(findings).toMatchObject([{ code: "missing-message", file: "site/changes/one.yaml", line: 2 }]);
    const inherited = findingsOf([
      change(`changes: { rule: load }\nreplaces: { citations: { sums: { basis: derivation, says: "x" } } }`),
    ]);
    expect(inherited).toMatchObject([
      {
        file: "site/changes/one.yaml",
        line: 1,
        code: "unknown-citation",
        text: expect.stringContaining("(inherited from supply/load.yaml:13:13)"),
      },
    ]);
  });

  it("says of a file below, which it does not change, that the overlay brings it about", () => {
    const key = "changes: { group: supply }\nreplaces: { members: { group.supply_current: { sum: sensor_current } } }";
    const findings = findingsOf([change(key)]);
    expect(new Set(findings.map(({ file }) => file))).toEqual(new Set(["supply/load.yaml"]));
    for (const { text } of findings) expect(text).toContain("an overlay brings this about");
  });

  it("switches off no rule that a method must have been asked", () => {
    const methods = `methods: { lasting: [tapped-hole], gates: [load], basis: from-memory, says: "made up" }\n`;
    const below = bookBelow({ "rulebook.yaml": (SMALL_BOOK["rulebook.yaml"] ?? "") + methods });
    const findings = findingsOf([change("changes: { rule: load }\nswitchedOff: true")], below);
    expect(findings).toMatchObject([{ code: "gate-switched-off", line: 2 }]);
    const core = findingsOf([change("changes: { rule: thread-depth }\nswitchedOff: true")]);
    expect(core).toMatchObject([{ code: "core-switched-off", line: 2 }]);
  });
});
