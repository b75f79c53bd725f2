import { beforeAll, describe, expect, it } from "vitest";
import { CATALOGUE, factName } from "../../../src/facts/index.js";
import { rulebookHtml, rulebookMarkdown } from "../../../src/outputs/index.js";
import type { RulebookDocumentInput } from "../../../src/outputs/rulebook-document/book-shown.js";
import { UNIT_WORDS } from "../../../src/outputs/rulebook-document/terms-part.js";
import type { Rulebook } from "../../../src/rulebook/index.js";
import { CAUTIONS } from "../../../src/screening/index.js";
import { projectText, shippedRulebook } from "../../tools/shipped.js";
import { idsOf, levelsOf, rulePartsOf, targetsOf, textOf, timesIn } from "./page-text.js";

let rulebook: Rulebook;
let input: RulebookDocumentInput;
let html = "";
let markdown = "";

beforeAll(async () => {
  rulebook = await shippedRulebook();
  const program = { name: "spotface", version: "9.9.9" };
  const changes = [projectText("rules/CHANGES.md")];
  input = { rulebook, set: null, asOf: "2026-11-25", changes, cases: "folded", program };
  html = rulebookHtml(input);
  markdown = rulebookMarkdown(input);
});

describe("the shipped rulebook as a page", () => {
  it("has every rule once, with each limit, source, case and what is to be done", () => {
    const parts = rulePartsOf(html);
    expect([...parts.keys()].sort()).toEqual(rulebook.rules.map(({ id }) => id).sort());
    for (const rule of rulebook.rules) {
      const part = parts.get(rule.id) ?? "";
      const text = textOf(part);
      expect(text.startsWith(rule.title), rule.id).toBe(true);
      expect(text).toContain(`What to do${rule.remedy.text}`);
      for (const { from, reviewBy } of rule.limits) {
        expect(timesIn(text, `From ${from} on, in force, to be reviewed by ${reviewBy}`), rule.id).toBe(1);
      }
      const bands = rule.limits.reduce((count, { fail, warn }) => count + fail.length + warn.length, 0);
      expect(timesIn(part, '<li><span class="mark fail">■ fail</span> where '), rule.id).toBe(
        rule.limits.reduce((count, { fail }) => count + fail.length, 0),
      );
      expect(timesIn(part, "</span> where "), rule.id).toBe(bands);
      for (const { says } of rule.citations.values()) expect(timesIn(text, says), `${rule.id}: ${says}`).toBe(1);
      const cases = [...part.matchAll(/<th scope="row">(.*?)<\/th>/g)].map(([, cell]) => textOf(cell ?? ""));
      expect(cases, rule.id).toEqual(rule.cases.map(({ name }) => name));
    }
  });

  it("draws the bands of every limit on a number, told apart by more than colour", () => {
    const parts = rulePartsOf(html);
    const isOnLine = (is: string): boolean => /^(?:below|above|atOr|outside)/.test(is);
    // One comparison of two numbers stands in for a band.
    const compares = new Set(["gap-filled", "set-time-by-sheet", "bolt-reach"]);
    for (const rule of rulebook.rules) {
      const numbers = rule.limits.filter(({ fail, warn }) => [...fail, ...warn].some(({ is }) => isOnLine(is)));
      const drawn = compares.has(rule.id) ? rule.limits.length : numbers.length;
      const pictures = [...(parts.get(rule.id) ?? "").matchAll(/<svg class="bands".*?<\/svg>/gs)];
      expect(pictures.length, rule.id).toBe(drawn);
      for (const [picture] of pictures) {
        expect(picture).toMatch(/role="img" aria-labelledby="(bands-[a-z0-9-]+)-title \1-desc"/);
        expect(picture).toMatch(/<title id="[^"]+">Bands of .+<\/title><desc id="[^"]+">.+<\/desc>/);
        expect(timesIn(picture, "url(#hatch-")).toBe(picture.match(/class="zone (?:fail|warn)"/g)?.length);
        expect(picture).not.toMatch(/NaN|undefined|style=/);
      }
    }
  });

  it("describes every fact that it names, and every model, table, group and way of measuring", () => {
    const ids = new Set(idsOf(html));
    for (const id of rulebook.models.keys()) expect(ids).toContain(`model-${id}`);
    for (const id of rulebook.tables.keys()) expect(ids).toContain(`table-${id}`);
    for (const id of rulebook.groups.keys()) expect(ids).toContain(`group-${id}`);
    for (const id of rulebook.ways.keys()) expect(ids).toContain(`way-${id}`);
    for (const { judges, remedy } of rulebook.rules) {
      for (const id of [...Object.values(judges), ...remedy.change]) {
        if (id !== null) expect(ids, factName(id)).toContain(`fact-${id.replace(".", "-")}`);
      }
    }
    const cited = [...rulebook.models.values(), ...rulebook.tables.values(), ...rulebook.ways.values()];
    const text = textOf(html);
    for (const { says } of cited.flatMap(({ citations }) => [...citations.values()])) expect(text).toContain(says);
  });

  it("leads every link to a place that there is, and has each place once", () => {
    const ids = idsOf(html);
    expect(new Set(ids).size).toBe(ids.length);
    const known = new Set(ids);
    expect(targetsOf(html).filter((id) => !known.has(id))).toEqual([]);
    const inMarkdown = new Set([...markdown.matchAll(/<a id="([^"]+)"><\/a>/g)].map(([, id]) => id));
    const wanted = [...markdown.matchAll(/\]\(#([^)]+)\)/g)].map(([, id]) => id);
    expect(wanted.length).toBeGreaterThan(1000);
    expect(wanted.filter((id) => !inMarkdown.has(id))).toEqual([]);
  });

  it("has headings in order, tables with captions and headed rows and columns, and a link past the rest", () => {
    const levels = levelsOf(html);
    expect(levels.filter((level) => level === 1)).toHaveLength(1);
    expect(levels[0]).toBe(1);
    for (const [index, level] of levels.entries()) expect(level - (levels[index - 1] ?? 0)).toBeLessThanOrEqual(1);
    expect(timesIn(html, "<table")).toBe(timesIn(html, "<caption>"));
    expect(html).not.toMatch(/<th>|<th class/);
    expect(html).toContain('<a class="skip" href="#document">');
    for (const caution of CAUTIONS) expect(textOf(html)).toContain(caution);
  });

  it("stands alone and says which book it is, but never what time it is", () => {
    expect(html).not.toMatch(/<script|\ssrc=|style="|https?:\/\/(?!www\.w3\.org)/);
    for (const text of [html, markdown]) {
      expect(text).toContain(rulebook.digest);
      expect(text).toContain("2026-11-25");
      expect(text).toContain("spotface 9.9.9");
    }
  });

  it("is the same, byte for byte, whenever it is written", () => {
    expect(rulebookHtml({ ...input, rulebook: { ...rulebook, rules: [...rulebook.rules].reverse() } })).toBe(html);
    expect(rulebookMarkdown(input)).toBe(markdown);
  });

  it("knows the unit of every fact in words", () => {
    for (const { kind, unit } of CATALOGUE) if (kind === "quantity") expect(Object.keys(UNIT_WORDS)).toContain(unit);
  });
});

describe("the shipped rulebook as Markdown", () => {
  it("says the same as the page", () => {
    for (const rule of rulebook.rules) {
      expect(timesIn(markdown, `<a id="rule-${rule.id}"></a>`), rule.id).toBe(1);
      expect(timesIn(markdown, `<details><summary>${rule.cases.length} case`), rule.id).toBeGreaterThan(0);
    }
    const cases = rulebook.rules.reduce((count, rule) => count + rule.cases.length, 0);
    const tables = markdown.split(/\n\n/).filter((part) => part.startsWith("| case | given | comes out as |"));
    expect(tables.reduce((count, table) => count + table.split("\n").length - 2, 0)).toBe(cases);
  });

  it("has tables of one width each", () => {
    for (const table of markdown.split(/\n\n/).filter((part) => part.startsWith("|"))) {
      const widths = table
        .trimEnd()
        .split("\n")
        .map((row) => row.replace(/\\\\|\\\|/g, "").split("|").length);
      expect(new Set(widths).size, table.slice(0, 200)).toBe(1);
    }
  });
});

describe("a part of the book", () => {
  it("is one set, with the facts and tables that its rules rest on", () => {
    const core = rulebookHtml({ ...input, set: "core" });
    expect(rulePartsOf(core).size).toBe(rulebook.rules.filter(({ sets }) => sets.includes("core")).length);
    const ids = new Set(idsOf(core));
    expect(ids).toContain("fact-hole_depth");
    expect(ids).not.toContain("fact-bearing_type");
    expect(ids).not.toContain("table-conductors");
    expect(targetsOf(core).filter((id) => !ids.has(id))).toEqual([]);
  });

  it("has its cases open, or none", () => {
    expect(rulebookHtml({ ...input, cases: "open" })).toContain("<details open>");
    const without = rulebookHtml({ ...input, cases: "none" });
    expect(without).not.toContain("<details");
    expect(rulePartsOf(without).size).toBe(rulebook.rules.length);
  });
});
