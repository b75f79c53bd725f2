import { describe, expect, it } from "vitest";
import { jsonDocument } from "../../../src/outputs/index.js";
import { pointEntry } from "../../../src/outputs/report/list/entry.js";
import { screen } from "../../../src/screening/index.js";
import { readTestSurvey, shippedRulebook } from "../../tools/shipped.js";
import { COATED_SEAT, finding, POINTS, point, THREAD_TOO_SHORT } from "../fake-findings.js";
import { HEAD } from "../fake-head.js";
import { SUMMARY } from "../fake-screening.js";
import { dataOf, reportOf } from "./made-report.js";

const HOSTILE = '</script><script>alert(1)</script><!--<img src=x onerror="alert(2)">';

/** What a page would run or show as markup, of a text that came from a file. */
const PLANTED = /<img|<script>alert|onerror="/u;

describe("the report", () => {
  it("allows its one style and one script by their hashes, and fetches nothing", () => {
    const page = reportOf();
    expect(page.match(/<script>/g)).toHaveLength(1);
    expect(page.match(/<style>/g)).toHaveLength(1);
    expect(page).toMatch(/default-src 'none'; style-src 'sha256-[^']+'; script-src 'sha256-[^']+'/);
    const [markup = ""] = page.split("<script");
    expect(markup).not.toMatch(/ (?:src|style)=|href="(?!#)|url\((?!#)/);
  });

  it("shows hostile texts as texts, wherever they stand", () => {
    const hostile = {
      ...point(4, "fail", [{ ...THREAD_TOO_SHORT, message: HOSTILE, remedy: HOSTILE, group: HOSTILE }]),
      point: HOSTILE,
      machine: HOSTILE,
      sheet: HOSTILE,
    };
    const [survey] = HEAD.surveys;
    if (!survey) throw new Error("no survey");
    const head = {
      ...HEAD,
      site: { ...HEAD.site, name: HOSTILE },
      rules: HEAD.rules.map((rule) => ({ ...rule, title: HOSTILE })),
      surveys: [{ ...survey, file: HOSTILE, problems: survey.problems.map((one) => ({ ...one, found: HOSTILE })) }],
    };
    const page = reportOf([hostile], head);
    expect(page).not.toMatch(PLANTED);
    expect(page.match(/<\/script>/g)).toHaveLength(2);
    const data = dataOf(page);
    const entry = data.points[0] && pointEntry(data, data.points[0]);
    expect(entry?.leading).toBe(HOSTILE);
    expect(page).toContain("&lt;/script>&lt;script>alert(1)");
  });

  it("makes characters that nobody sees visible", () => {
    const page = reportOf([{ ...point(4, "pass", []), machine: "pump\u202e\u0000 3" }]);
    for (const unseen of ["\u202e", "\u0000"]) expect(page).not.toContain(unseen);
    const data = dataOf(page);
    expect(data.texts).toContain("pump\ufffd␀ 3 (P-0003)");
  });

  it("gives the same bytes again", () => {
    expect(reportOf()).toBe(reportOf());
  });

  it("holds every point with every finding, its cells, limit, source, remedy and acceptance", () => {
    const accepted = {
      reason: "measured",
      acceptedBy: "A. Quill",
      from: "2026-01-01",
      until: "2027-01-01",
      origin: { file: "d.yaml", line: 2 },
    };
    const data = dataOf(reportOf([...POINTS, point(9, "fail", [{ ...THREAD_TOO_SHORT, accepted }])]));
    const entries = data.points.map((one) => pointEntry(data, one));
    expect(entries.map(({ findings }) => findings.length)).toEqual([...POINTS.map((one) => one.findings.length), 1]);
    expect(entries.at(-1)?.findings[0]).toEqual({
      rule: "thread-depth",
      title: "The internal thread is deep enough for the bolt",
      outcome: "fail",
      message: "the full thread is 7.5 mm deep, the bolt needs 9 mm",
      facts: [
        { text: expect.stringMatching(/: 7\.5 mm ± 0\.2 mm$/), ownSheet: "Pumps", cells: "E5" },
        { text: expect.stringMatching(/: 9 mm \(models\/a\.yaml, line 3\)$/), ownSheet: "", cells: "" },
      ],
      limit: expect.stringContaining("not below 9 mm"),
      source: expect.stringContaining("(common practice)"),
      sourceInShort: expect.stringMatching(/^common practice; in full at rule \d+$/),
      margin: "1.7 mm beyond the limit (18.9 %)",
      missing: "",
      remedy: "tap deeper, or choose a bonded pad",
      accepted: "accepted until 2027-01-01 by A. Quill, because measured",
      group: "",
    });
    expect(entries[1]?.notes.map(([what]) => what)).toEqual(["Point", "Row", "Id", "Another method", "Methods tried"]);
    expect(entries[3]?.notes).toContainEqual(["Settled by", "lowest speed"]);
  });

  it("says a finding once, however many points have it", () => {
    const many = Array.from({ length: 50 }, (_, at) => point(at + 4, "warn", [COATED_SEAT]));
    const data = dataOf(reportOf(many));
    expect(data.findings).toHaveLength(1);
    expect(data.texts.filter((text) => text === "the seat is painted")).toHaveLength(1);
  });

  it("names cells of another sheet with the sheet, and tells unlike sheets of one cell apart", () => {
    const [own] = COATED_SEAT.facts;
    if (!own) throw new Error("no fact");
    const elsewhere = finding("seat-material", "warn", {
      facts: [
        {
          ...own,
          cells: [
            { sheet: "Pumps", cell: "F6" },
            { sheet: "Fans", cell: "F6" },
          ],
        },
      ],
    });
    const data = dataOf(reportOf([point(6, "warn", [elsewhere])]));
    expect(data.points[0] && pointEntry(data, data.points[0]).findings[0]?.facts[0]).toMatchObject({
      ownSheet: "Pumps",
      cells: "F6, Fans!F6",
    });
  });

  it("shows the points without its script, unless there are too many to be read", () => {
    const page = reportOf();
    const [, without = ""] = /<div id="list"><noscript>(.*?)<\/noscript>/s.exec(page) ?? [];
    expect(without).toContain("the full thread is 7.5 mm deep");
    expect(without.match(/<li>/g)).toHaveLength(POINTS.length);
    const many = Array.from({ length: 301 }, (_, at) => point(at + 4, "pass", []));
    expect(reportOf(many)).toMatch(/<noscript><p>The list of 301 points is made by the script/);
  });

  it("carries the cautions and the counts", () => {
    const page = reportOf();
    for (const caution of HEAD.cautions) expect(page).toContain(caution);
    expect(page).toContain(`Verdicts on ${SUMMARY.points} points: ${SUMMARY.fail} fail, ${SUMMARY.warn} warn`);
  });
});

describe("the report of a real survey", () => {
  it("says nothing that the result document does not have", async () => {
    const screening = screen({
      program: { name: "spotface", version: "0" },
      rulebook: await shippedRulebook(),
      surveys: [await readTestSurvey("samples/survey.csv")],
      skipped: [],
      site: null,
      options: { set: "core", stage: "proposed", asOf: "2026-11-25", siteName: "Molinos", allFindings: false },
    });
    const document = JSON.parse([...jsonDocument(screening)].join(""));
    const points = [...screening.points()];
    const data = dataOf(reportOf(points, screening.head));
    expect(data.points).toHaveLength(document.points.length);
    for (const [at, told] of document.points.entries()) {
      const one = data.points[at];
      const entry = one && pointEntry(data, one);
      expect(entry?.outcome).toBe(told.verdict);
      const { findings } = told as { findings: { rule: string; outcome: string; message: string | null }[] };
      expect(entry?.findings.map(({ rule }) => rule).sort()).toEqual(findings.map(({ rule }) => rule).sort());
      for (const read of entry?.findings ?? []) {
        const same = findings.find(({ rule }) => rule === read.rule);
        expect(read.outcome).toBe(same?.outcome);
        if (same?.message != null) expect(read.message).toBe(same.message);
      }
    }
  });
});
