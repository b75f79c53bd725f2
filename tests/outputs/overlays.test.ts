import { describe, expect, it } from "vitest";
import { terminalReport } from "../../src/outputs/index.js";
import { rulesRows, summaryRows } from "../../src/outputs/workbook/summary-rows.js";
import type { ResultHead } from "../../src/screening/index.js";
import { HEAD } from "./fake-head.js";
import { fakeScreening } from "./fake-screening.js";

const WORD = { reason: "our bolts are shorter", by: "A. Quill, vibration engineer", on: "2026-05-04" } as const;
const LIMITS = {
  ...WORD,
  keys: ["limits", "citations", "undecided"],
  loosens: ["what is open counts as warn instead of fail"],
};
const CASES = { ...WORD, keys: ["addsCases"], loosens: [] };

const OVER: ResultHead = {
  ...HEAD,
  rulebook: {
    ...HEAD.rulebook,
    overlays: [
      {
        name: "works book",
        version: "2.1.0",
        digest: "e".repeat(64),
        signedBy: null,
        added: [{ kind: "measuring", id: "feeler" }],
        changed: [
          { kind: "rule", id: "thread-depth", ...LIMITS },
          { kind: "rule", id: "min-speed", ...CASES },
          { kind: "table", id: "wall-metals", ...WORD, keys: ["entries", "citations"], loosens: [] },
        ],
      },
      { name: "unit 4", version: "1.0.0", digest: "f".repeat(64), signedBy: null, added: [], changed: [] },
    ],
    switchedOff: [{ rule: "slow", title: "The shaft is not slow", overlay: "unit 4", ...WORD }],
  },
  rules: HEAD.rules.map((rule) =>
    rule.id === "thread-depth"
      ? { ...rule, changedBy: [{ overlay: "works book", ...LIMITS }] }
      : rule.id === "min-speed"
        ? { ...rule, addedBy: "works book", changedBy: [{ overlay: "unit 4", ...CASES }] }
        : rule,
  ),
};

const CHANGED =
  "limit, weight of what is open by works book: our bolts are shorter (A. Quill, vibration engineer, 2026-05-04)";

function cells(rows: readonly { readonly cells: readonly unknown[] }[]): readonly string[] {
  return rows.flatMap((row) => row.cells.map(String));
}

describe("what sites have laid over the rulebook", () => {
  it("stands in the report, with what is looser, and without changes of nothing but cases", () => {
    const summary = fakeSummary();
    const text = terminalReport(OVER, summary).replace(/\s+/g, " ");
    expect(text).toContain("rulebook trade-practice 2026.1 with works book 2.1.0, unit 4 1.0.0, set core");
    const section = text.slice(text.indexOf("Laid over the rulebook"), text.indexOf("Rules that stand"));
    expect(section.trim()).toBe(
      `Laid over the rulebook works book 2.1.0 - rule thread-depth: ${CHANGED}; what is open counts as warn instead of fail ` +
        "- table wall-metals: values by works book: our bolts are shorter (A. Quill, vibration engineer, 2026-05-04) " +
        "- way of measuring feeler: added unit 4 1.0.0 " +
        "- rule slow: switched off, our bolts are shorter (A. Quill, vibration engineer, 2026-05-04)",
    );
    expect(terminalReport(HEAD, summary)).not.toContain("Laid over");
  });

  it("stands in the workbook, at each rule and in its summary", () => {
    const rules = rulesRows(OVER);
    const of = (id: string): readonly string[] => cells(rules.filter((row) => row.cells[0] === id));
    expect(of("thread-depth").join("\n")).toContain(CHANGED);
    expect(of("min-speed").join("\n")).toContain("a rule of works book");
    expect(of("min-speed").join("\n")).not.toContain("unit 4");
    expect(of("slow")).toEqual(["slow", "The shaft is not slow", "unit 4", WORD.reason, WORD.by, WORD.on]);
    const summary = cells(summaryRows(OVER, fakeSummary(), null)).join("\n");
    expect(summary).toContain("trade-practice 2026.1 with works book 2.1.0, unit 4 1.0.0\nSHA-256");
    expect(summary).toContain(`works book 2.1.0\nrule thread-depth: ${CHANGED}`);
    expect(cells(rulesRows(HEAD)).join("\n")).not.toContain("switched off");
  });
});

function fakeSummary() {
  const screening = fakeScreening();
  for (const _ of screening.points());
  return screening.summary();
}
