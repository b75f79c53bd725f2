import { describe, expect, it } from "vitest";
import type { FactState } from "../../src/facts/index.js";
import { loadRulebook, type Rulebook } from "../../src/rulebook/index.js";
import { auditScreening, type Finding } from "../../src/screening/index.js";
import { GOOD_POINT, known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { shippedFiles, shippedRulebook } from "../tools/shipped.js";
import { surveyOfCsv } from "../tools/survey-of.js";

const rulebook = await shippedRulebook();

type Row = Readonly<Record<string, FactState>>;

function findingOf(rule: string, row: Row, book: Rulebook = rulebook): Finding | undefined {
  const options = { set: "full", allFindings: true } as const;
  return screenRows(book, [surveyOf([row])], options).points[0]?.findings.find((finding) => finding.rule === rule);
}

async function bookWith(file: string, change: (text: string) => string): Promise<Rulebook> {
  const files = (await shippedFiles()).map((one) =>
    one.path === `rules/${file}` ? { ...one, text: change(one.text) } : one,
  );
  const loading = loadRulebook(files, { root: "rules" });
  if (!loading.ok) throw new Error(JSON.stringify(loading.findings));
  return loading.rulebook;
}

describe("a limit from a table", () => {
  const pad = { ...GOOD_POINT, mounting_method: known("adhesive-pad", "F7"), highest_frequency: known(6000, "G7") };

  it("is shown with its row, with the cells of the fact it is looked up by, and with its margin", () => {
    const finding = findingOf("mount-frequency", pad);
    expect(finding).toMatchObject({
      outcome: "fail",
      limit: { is: "above", value: 5000, unit: "Hz", fact: "table.usable_frequency", cites: ["usual-figures"] },
      margin: { value: -1000, fraction: -0.2 },
      message: "6000 Hz is to be seen, more than a mounting by adhesive pad carries (5000 Hz)",
    });
    expect(finding?.limit?.origin).toEqual({ file: "rules/tables/mounting-methods.yaml", line: 15 });
    expect(finding?.facts[1]).toMatchObject({
      fact: "table.usable_frequency",
      value: 5000,
      unit: "Hz",
      cells: [{ sheet: "S", cell: "F7" }],
      origin: { file: "rules/tables/mounting-methods.yaml", line: 15 },
    });
  });

  it("is decided where every row that is possible decides alike, and else asks for the fact it is looked up by", () => {
    const open = (hertz: number) =>
      findingOf("mount-frequency", { ...pad, mounting_method: unknown("unreadable"), highest_frequency: known(hertz) });
    expect(open(2000)?.outcome).toBe("pass");
    expect(open(10_001)?.outcome).toBe("fail");
    expect(open(6000)).toMatchObject({
      outcome: "undecided",
      missing: [{ fact: "mounting_method", reason: "unreadable" }],
    });
  });

  it("names the survey's own fact where the table is looked up by a derived one", () => {
    const row = { ...GOOD_POINT, thread: known("M6"), surface_material: known("sheet-metal") };
    expect(findingOf("thread-engagement", row)).toMatchObject({
      outcome: "undecided",
      missing: [{ fact: "surface_material", reason: "missing" }],
    });
  });

  it("is the site's to change, without a word of program text", async () => {
    const bolder = await bookWith("tables/mounting-methods.yaml", (text) =>
      text.replace("adhesive-pad, table.usable_frequency: 5 kHz", "adhesive-pad, table.usable_frequency: 7 kHz"),
    );
    expect(findingOf("mount-frequency", pad, bolder)).toMatchObject({ outcome: "pass", limit: { value: 7000 } });
    const measured = await bookWith("tables/tightening.yaml", (text) =>
      text.replace(
        "thread_state: greased, table.torque_factor_min: 0.12",
        "thread_state: greased, table.torque_factor_min: 0.16",
      ),
    );
    const bolt = {
      ...GOOD_POINT,
      thread: known("M6"),
      bolt_class: known("8.8"),
      thread_state: known("greased"),
      target_torque: known(8),
    };
    // 8 N·m at K 0.12 is 95 per cent of the proof load, at 0.16 it is 71.
    expect(findingOf("bolt-preload", bolt)?.outcome).toBe("warn");
    expect(findingOf("bolt-preload", bolt, measured)?.outcome).toBe("pass");
  });
});

describe("a bond", () => {
  const bond = { ...GOOD_POINT, mounting_method: known("adhesive-pad"), cure_time: known(60) };

  it.each([
    ["nobody names the adhesive, at the usual limit", {}, 80, "pass"],
    ["nobody names the adhesive, above the usual limit", {}, 80.1, "fail"],
    ["it is one that is in no list", { adhesive: known("other") }, 80.1, "fail"],
    ["it is made for the heat", { adhesive: known("heat-resistant-epoxy") }, 120, "pass"],
    ["it is written so that nobody can read it, below every limit", { adhesive: unknown("unreadable") }, 80, "pass"],
    ["it is written so that nobody can read it", { adhesive: unknown("unreadable") }, 100, "undecided"],
    ["it is written so that nobody can read it, above every limit", { adhesive: unknown("doubtful") }, 121, "fail"],
  ] as const)("in the heat: %s", (_name, adhesive, degrees, outcome) => {
    expect(findingOf("bond-heat", { ...bond, ...adhesive, surface_temperature: known(degrees) })?.outcome).toBe(
      outcome,
    );
  });

  it.each([
    ["by the sheet, whatever the kind", { adhesive: known("instant"), adhesive_gap_max: known(1) }, "pass"],
    ["by the kind where there is no sheet", { adhesive: known("two-part-epoxy") }, "pass"],
    ["by the kind, too wide", { adhesive: known("instant") }, "fail"],
    ["by neither", { adhesive_gap_max: unknown("missing") }, "undecided"],
    [
      "by a sheet that nobody can read",
      { adhesive: known("two-part-epoxy"), adhesive_gap_max: unknown("unreadable") },
      "undecided",
    ],
  ] as const)("over a gap: %s", (_name, said, outcome) => {
    // 30 mm on 200 mm leave 0.56 mm.
    expect(findingOf("gap-filled", { ...bond, surface_radius: known(200), ...said })?.outcome).toBe(outcome);
  });

  it("asks for the sheet where the gap hangs on it", () => {
    expect(
      findingOf("gap-filled", { ...bond, surface_radius: known(200), adhesive_gap_max: unknown("missing") })?.missing,
    ).toEqual([{ fact: "adhesive_gap_max", reason: "missing", measureTo: null }]);
  });
});

describe("a run with tables", () => {
  const CSV =
    "Point ID;Mounting method;Highest frequency (Hz);Wall thickness (mm)\n" +
    "P-1;tapped hole;6000;12\nP-2;adhesive pad;6000;12\nP-3;tapped hole;6000;12\nP-4;?;6000;2\nP-5;adhesive pad;4000;12\n";

  it("judges equal points once and unequal ones apart", async () => {
    const options = { set: "full", allFindings: true } as const;
    const { points } = screenRows(rulebook, [await surveyOfCsv(CSV)], options);
    const outcomes = (rule: string) => points.map(({ findings }) => findings.find((f) => f.rule === rule)?.outcome);
    expect(outcomes("mount-frequency")).toEqual(["pass", "fail", "pass", "undecided", "pass"]);
    expect(outcomes("thin-wall")).toEqual(["pass", "pass", "pass", "fail", "pass"]);
  });

  it("lists the tables that its rules look up, and says when one is to be reviewed", async () => {
    const head = (options: object) => screenRows(rulebook, [surveyOf([GOOD_POINT])], options).screening.head;
    expect(head({ set: "core" }).tables).toEqual([]);
    const { tables } = head({ set: "full", asOf: "2028-01-02" });
    expect(tables.map(({ id }) => id)).toContain("mounting-methods");
    expect(tables.find(({ id }) => id === "wall-metals")).toMatchObject({
      by: ["wall_metal"],
      from: "2026-01-01",
      reviewOverdue: true,
      origin: { file: "rules/tables/wall-metals.yaml" },
    });
    expect(head({ set: "full", asOf: "2025-12-31" }).tables).toEqual([]);
  });

  it("agrees with the reference, also on rows whose keys are open", async () => {
    const report = await auditScreening(
      {
        program: { name: "spotface", version: "test" },
        rulebook,
        surveys: [await surveyOfCsv(CSV)],
        skipped: [],
        site: null,
        options: { set: "full", stage: "proposed", asOf: "2026-11-25", siteName: null, allFindings: false },
      },
      () => {},
    );
    expect(report.differences).toEqual([]);
    expect(report.completions).toBeGreaterThan(0);
  });
});
