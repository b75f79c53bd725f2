import type { LimitShown, ResultHead, SurveyShown } from "../../src/screening/index.js";

/** A made-up digest: the same character 64 times. */
export function digestOf(character: string): string {
  return character.repeat(64);
}

const SURVEY: SurveyShown = {
  file: "survey.xlsx",
  digest: digestOf("a"),
  sheets: [
    {
      sheet: "Pumps",
      used: true,
      why: "five headings are known",
      headingRows: [3],
      pointRows: 4,
      hidden: false,
      language: "en",
      languageWhy: "headings are English",
    },
    {
      sheet: "Legend",
      used: false,
      why: "no row of headings",
      headingRows: [],
      pointRows: 0,
      hidden: true,
      language: null,
      languageWhy: "no points",
    },
  ],
  columns: [
    column("A", "Point", ["point_id"], null),
    column("B", "Machine", ["machine_name"], null),
    column("C", "Position", ["bearing_position"], null),
    column("D", "Speed", ["nominal_speed"], "r/min"),
    column("E", "Thread", ["thread_depth"], "mm"),
    column("F", "Seat", ["surface_material", "surface_finish"], null),
    column("G", "Inspector's mood", [], null),
  ],
  problems: [
    {
      code: "not-a-number",
      file: "survey.xlsx",
      sheet: "Pumps",
      cell: "E8",
      heading: "Thread",
      fact: "thread_depth",
      found: "deep enough",
      text: "expected a number in mm; type the number alone",
    },
    {
      code: "file-remark",
      file: "survey.xlsx",
      sheet: null,
      cell: null,
      heading: null,
      fact: null,
      found: null,
      text: "the file was saved by a program that leaves out the row numbers",
    },
  ],
  notAsked: [{ rule: "adhesive-cure", model: null, facts: ["cure_time"], text: "no column for the curing time" }],
};

function column(letters: string, heading: string, facts: readonly string[], unit: string | null) {
  const why = facts.length > 0 ? "the heading says so" : "no known heading";
  return { sheet: "Pumps", column: letters, heading, facts, unit, hidden: false, why } as const;
}

/** Every form in which a limit can be stated. */
const LIMITS_IN_FORCE: readonly LimitShown[] = [
  limitInForce("below", {
    unit: "mm",
    bounds: [{ value: null, fact: "model.thread_depth_min", times: 1.1, plus: -0.5 }],
  }),
  limitInForce("outside", { unit: "mm", bounds: [numberBound(9), numberBound(12.5)] }),
  limitInForce("oneOf", { choices: ["not-solid"] }),
  limitInForce("when", {
    outcome: "warn",
    condition: "stage is proposed",
    until: "2027-01-01",
    reviewBy: "2026-12-01",
  }),
];

function numberBound(value: number): LimitShown["bounds"][number] {
  return { value, fact: null, times: 1, plus: 0 };
}

function limitInForce(is: LimitShown["is"], more: Partial<LimitShown>): LimitShown {
  const plain = { unit: null, bounds: [], choices: [], condition: null, until: null, reviewBy: null, cites: [] };
  return { outcome: "fail", is, from: "2026-01-01", ...plain, ...more };
}

function rule(id: string, title: string, cites: string, undecided: "warn" | "fail" = "warn") {
  const says = `${cites.replace(/-/g, " ")}, as the trade does it`;
  const citations = [{ id: cites, basis: "common-practice", says }] as const;
  return {
    id,
    title,
    sets: ["core"],
    undecided,
    releases: null,
    judged: "thread_depth",
    appliesWhen: id === "thread-depth" ? "mounting method is tapped hole" : null,
    limits: LIMITS_IN_FORCE,
    citations,
    reviewOverdue: false,
    remedy: "see the title",
    addedBy: null,
    changedBy: [],
  };
}

export const HEAD: ResultHead = {
  program: { name: "spotface", version: "0.1.0" },
  digest: digestOf("d"),
  asOf: "2026-06-01",
  stage: "proposed",
  set: "core",
  rulebook: {
    name: "trade-practice",
    version: "2026.1",
    digest: digestOf("b"),
    overlays: [],
    switchedOff: [],
    signedBy: null,
  },
  site: { name: "Harbour mill", file: "site.yaml", digest: digestOf("c") },
  reading: { columnFile: null, wordFiles: [], options: [] },
  deviations: null,
  surveys: [SURVEY],
  skipped: [{ file: "old.xls", text: "an older binary workbook; save it as .xlsx" }],
  models: [
    {
      id: "baseline",
      title: "wired unit on an M6 bolt",
      facts: [
        {
          fact: "model.thread_depth_min",
          value: 9,
          unit: "mm",
          from: "2026-01-01",
          cites: ["trade"],
          origin: { file: "models/baseline.yaml", line: 9 },
        },
      ],
      citations: [{ id: "trade", basis: "common-practice", says: "usual for an M6 bolt" }],
    },
  ],
  tables: [
    {
      id: "wall-metals",
      title: "Metals in which threads are cut",
      by: ["wall_metal"],
      gives: ["table.engagement_min"],
      from: "2026-01-01",
      until: null,
      reviewBy: "2026-03-01",
      reviewOverdue: true,
      citations: [{ id: "thumb", basis: "common-practice", says: "two diameters in aluminium" }],
      origin: { file: "tables/wall-metals.yaml", line: 8 },
    },
  ],
  rules: [
    rule("min-speed", "The shaft always turns fast enough", "model-range"),
    {
      ...rule("seat-material", "The seat is solid bare metal", "clean-metal"),
      citations: [
        {
          id: "clean-metal",
          basis: "standard",
          says: "the sensor sits on clean bare metal",
          source: "ISO 5348",
          clause: "5.1",
          readOn: "2026-05-02",
        },
      ],
      reviewOverdue: true,
    },
    rule("hole-depth", "The hole is deep enough for the bolt", "bolt-length"),
    rule("thread-depth", "The internal thread is deep enough for the bolt", "bolt-length"),
    rule("tightening-torque", "The torque does not overload the unit", "torque-of-unit", "fail"),
    rule("supply-voltage", "The supply is direct current within its band", "nominal-24-v"),
    rule("adhesive-cure", "The adhesive has set before tightening", "slowest-adhesive"),
  ],
  groups: [],
  cautions: ["Isolate and lock out the machine.", "A verdict is a screening, not a permission."],
};
