import { describe, expect, it } from "vitest";
import { rulebookHtml, rulebookMarkdown } from "../../../src/outputs/index.js";
import { loadRulebook, type Rulebook } from "../../../src/rulebook/index.js";
import { SMALL_BOOK, SMALL_GROUPS, smallFiles } from "../../rulebook/small-book.js";
import { idsOf, rulePartsOf, textOf, timesIn } from "./page-text.js";

const NASTY = `</title></style></script><script>alert(1)</script><img src=x onerror=alert(1)>"'|\`*_[a](javascript:alert(1))`;
const written = JSON.stringify(NASTY);

function loaded(changed: Readonly<Record<string, string>>): Rulebook {
  const loading = loadRulebook(smallFiles(changed));
  if (!loading.ok) throw new Error(JSON.stringify(loading.findings));
  return loading.rulebook;
}

const nasty = loaded({
  ...SMALL_GROUPS,
  "rulebook.yaml": (SMALL_BOOK["rulebook.yaml"] ?? "").replace('"small book"', written),
  "models/baseline.yaml": (SMALL_BOOK["models/baseline.yaml"] ?? "")
    .replace('"a model"', written)
    .replace('"BASE-1"', JSON.stringify(`other ${NASTY}`))
    .replace('"made up for a test"', written),
  "tables/gaps.yaml": (SMALL_BOOK["tables/gaps.yaml"] ?? "").replace('"what is left free"', written),
  "groups/supply.yaml": (SMALL_GROUPS["groups/supply.yaml"] ?? "").replace(
    '"points that name the same supply"',
    written,
  ),
  "measuring/gauge.yaml": (SMALL_BOOK["measuring/gauge.yaml"] ?? "").replace('"gauge"', written),
  "hole/thread-depth.yaml": (SMALL_BOOK["hole/thread-depth.yaml"] ?? "")
    .replace('"the thread is deep enough"', written)
    .replace('"so long is the bolt"', written)
    .replace('source: "a standard"', `source: ${written}`)
    .replace('clause: "5.1"', `clause: ${written}`)
    .replace('"the thread is {thread_depth} deep"', written)
    .replace('"tap deeper"', written)
    .replace('name: "deep"', `name: ${written}`),
  "supply/load.yaml": (SMALL_GROUPS["supply/load.yaml"] ?? "").replace('value: "battery"', `value: ${written}`),
});
const input = {
  rulebook: nasty,
  set: null,
  asOf: "2026-06-01",
  changes: [`# Changes\n\n## 1.0.0 ${NASTY}\n\n- \`thread-depth\` ${NASTY}\u202e\u0007\n- \`<img src=x>\`\n`],
  cases: "folded" as const,
  program: { name: "spotface", version: "1" },
};

describe("a rulebook with texts that would be more than texts", () => {
  it("is a page on which all of them are texts", () => {
    const html = rulebookHtml(input);
    expect(html).not.toMatch(/<script|<img|<\/style>.*<\/style>|\u202e/s);
    expect(html.match(/<title>(?!Bands)/g)).toHaveLength(1);
    expect(timesIn(html, "<style>")).toBe(1);
    expect([...html.matchAll(/<[a-z][^>]*\son[a-z]+=/g)]).toEqual([]);
    expect(html).not.toMatch(/href="(?!#)/);
    const text = textOf(rulePartsOf(html).get("thread-depth") ?? "");
    // Title, source, clause, citation, finding, remedy, case; the change record's heading and entry.
    expect(timesIn(text, NASTY)).toBe(9);
    // Rule files with signs that cannot be seen do not load; the change record is read as it is.
    expect(text).toContain(`${NASTY}\ufffd␇`);
    expect(new Set(idsOf(html)).size).toBe(idsOf(html).length);
  });

  it("holds the running head of printed pages within its style", () => {
    const head = /@top-left\{content:"([^"]*)"/.exec(rulebookHtml(input))?.[1] ?? "";
    const text = head.replace(/\\([0-9a-f]{6})/g, (_, code: string) => String.fromCodePoint(Number.parseInt(code, 16)));
    expect(head).toMatch(/^[A-Za-z0-9\\]+$/);
    expect(text).toBe(`${NASTY} 1.0.0, in force on 2026-06-01`);
  });

  it("is Markdown in which all of them are texts, and no table breaks", () => {
    const markdown = rulebookMarkdown(input);
    const bare = markdown
      .replace(/\\[!-/:-@[-`{-~]/g, "")
      .replace(/(`+)(?!`).*?(?<!`)\1(?!`)/g, "")
      .replace(/<a id="[A-Za-z0-9_%.-]*"><\/a>|<details><summary>[^<]*<\/summary>|<\/details>/g, "");
    expect(bare).not.toMatch(/[<>`\u202e]|javascript:(?!alert\(1\))/);
    for (const [, target] of bare.matchAll(/\]\(([^)]*)\)/g)) expect(target).toMatch(/^#[a-z0-9_-]+$/);
    for (const table of markdown.split(/\n\n/).filter((part) => part.startsWith("|"))) {
      const widths = table
        .trimEnd()
        .split("\n")
        .map((row) => row.replace(/\\./g, "").split("|").length);
      expect(new Set(widths).size, table).toBe(1);
    }
  });
});

describe("what a small book has beside the shipped one", () => {
  const html = rulebookHtml({ ...input, rulebook: loaded(SMALL_GROUPS), changes: [] });
  const part = rulePartsOf(html).get("thread-depth") ?? "";

  it("limits of the past and of the future, each with its days and, until it is past, its picture", () => {
    const text = textOf(part);
    expect(text).toContain("Limit 1From 2026-01-01, ends on 2027-01-01 (first day without it), in force");
    expect(text).toContain("Limit 2From 2027-01-01 on, not yet in force (sources [1], [2]):");
    expect(timesIn(part, "<svg")).toBe(2);
    const later = rulebookHtml({ ...input, rulebook: loaded(SMALL_GROUPS), asOf: "2027-02-01" });
    const then = rulePartsOf(later).get("thread-depth") ?? "";
    expect(textOf(then)).toContain("no longer in force, review was due by 2026-12-01");
    expect(timesIn(then, "<svg")).toBe(1);
    // The model states another value by then.
    expect([part, then].map((one) => textOf(one).includes("baseline: 13 mm"))).toEqual([true, true]);
    expect(textOf(part)).toContain("baseline: 9 mm");
    expect(textOf(then)).not.toContain("baseline: 9 mm");
  });

  it("conditions with names written out, an open question that counts as a fail, and a rule of groups", () => {
    const text = textOf(part);
    expect(text).toContain(
      "where mounting method is tapped hole and not exposure to water is one of jets, hot high pressure",
    );
    expect(text).toContain("counts as a fail in the verdict");
    expect(text).toContain("Pass only where the other limits of the rule are kept, too");
    const load = textOf(rulePartsOf(html).get("load") ?? "");
    expect(load).toContain(
      "to each group of points that name the same supply, where name of the supply is not battery",
    );
    expect(textOf(html)).toContain("The rulebook has no change record.");
  });
});
