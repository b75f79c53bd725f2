import type {
  FactShown,
  Finding,
  LimitShown,
  PointResult,
  ResultHead,
  Screening,
  Summary,
  SurveyShown,
} from "../../src/screening/index.js";

/** A made-up digest: the same character 64 times. */
export function digestOf(character: string): string {
  return character.repeat(64);
}

const NO_FACT: FactShown = {
  fact: "thread_depth",
  value: null,
  lowest: null,
  highest: null,
  unit: null,
  accuracy: null,
  assumed: null,
  cells: [],
  origin: null,
};

export function fact(parts: Partial<FactShown>): FactShown {
  return { ...NO_FACT, ...parts };
}

export function finding(rule: string, outcome: Finding["outcome"], parts: Partial<Finding> = {}): Finding {
  return {
    rule,
    outcome,
    atBest: null,
    facts: [],
    limit: null,
    margin: null,
    missing: [],
    message: null,
    remedy: null,
    group: null,
    ...parts,
  };
}

const RULE_LINE = { file: "rules/holes/thread-depth.yaml", line: 12 };

export const THREAD_TOO_SHORT = finding("thread-depth", "fail", {
  facts: [
    fact({ value: 7.5, unit: "mm", accuracy: 0.2, cells: [{ sheet: "Pumps", cell: "E5" }] }),
    fact({ fact: "model.thread_depth_min", value: 9, unit: "mm", origin: { file: "models/a.yaml", line: 3 } }),
  ],
  limit: {
    is: "below",
    value: 9,
    unit: "mm",
    from: "2026-01-01",
    fact: "model.thread_depth_min",
    origin: RULE_LINE,
    cites: ["bolt-length"],
  },
  margin: { value: -1.7, fraction: -0.188888888889 },
  message: "the full thread is 7.5 mm deep, the bolt needs 9 mm",
  remedy: "tap deeper, or choose a bonded pad",
});

export const COATED_SEAT = finding("seat-material", "warn", {
  facts: [fact({ fact: "seat", value: "coated", assumed: "no cover", cells: [{ sheet: "Pumps", cell: "F6" }] })],
  limit: { ...limitOf("oneOf"), value: ["coated"], cites: ["clean-metal"] },
  message: "the seat is painted",
  remedy: "grind to bright metal",
});

export const SUPPLY_OUTSIDE = finding("supply-voltage", "fail", {
  facts: [fact({ fact: "supply_voltage", value: 12, unit: "V", origin: { file: "site.yaml", line: 4 } })],
  limit: { ...limitOf("outside"), value: [20.4, 28.8], unit: "V", cites: ["nominal-24-v"] },
  margin: { value: -8.4, fraction: -0.411764705882 },
  message: "the supply is 12 V",
});

export const SPEED_OPEN = finding("min-speed", "undecided", {
  atBest: "pass",
  facts: [
    fact({ fact: "lowest_running_speed", highest: 1480, unit: "r/min", cells: [{ sheet: "Pumps", cell: "D7" }] }),
    fact({ fact: "speed_varies", value: true }),
  ],
  limit: { ...limitOf("atOrBelow"), value: null, unit: "r/min", fact: "model.speed_min" },
  missing: [
    { fact: "lowest_speed", reason: "missing" },
    { fact: "nominal_speed", reason: "too-close" },
  ],
});

export const TORQUE_OPEN = finding("tightening-torque", "undecided", {
  missing: [{ fact: "target_torque", reason: "unreadable" }],
});

function limitOf(is: "below" | "outside" | "oneOf" | "atOrBelow") {
  return { is, unit: null, from: "2026-01-01", fact: null, origin: RULE_LINE, cites: [] } as const;
}

export function point(row: number, verdict: PointResult["verdict"], findings: readonly Finding[]): PointResult {
  const tail = String(row).padStart(12, "0");
  return {
    id: `0c9d3a52-7b1e-5f0a-8c44-${tail}`,
    point: `P-${row}`,
    machine: "cooling water pump 3",
    component: null,
    bearingPosition: "drive-end",
    direction: "horizontal",
    file: "survey.xlsx",
    sheet: "Pumps",
    row,
    verdict,
    findings,
  };
}

/** Every outcome, and every way in which a fact, a limit and an origin can be shown. */
export const POINTS: readonly PointResult[] = [
  point(4, "pass", [finding("hole-depth", "pass", { margin: { value: -0, fraction: null } })]),
  point(5, "fail", [THREAD_TOO_SHORT, SUPPLY_OUTSIDE, COATED_SEAT]),
  point(6, "warn", [COATED_SEAT, finding("adhesive-cure", "not-applicable")]),
  point(7, "warn", [SPEED_OPEN, finding("hole-depth", "no-limit-in-force", { group: "supply 1" })]),
  { ...point(8, "fail", [TORQUE_OPEN]), id: null, point: null, machine: null, sheet: null, file: "second.csv" },
];

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
  notAsked: [{ rule: "adhesive-cure", facts: ["cure_time"], text: "no column for the curing time" }],
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
    judged: "thread_depth",
    appliesWhen: id === "thread-depth" ? "mounting method is tapped hole" : null,
    limits: LIMITS_IN_FORCE,
    citations,
    reviewOverdue: false,
    remedy: "see the title",
  };
}

export const HEAD: ResultHead = {
  program: { name: "spotface", version: "0.1.0" },
  digest: digestOf("d"),
  asOf: "2026-06-01",
  stage: "proposed",
  set: "core",
  rulebook: { name: "trade-practice", version: "2026.1", digest: digestOf("b") },
  site: { name: "Harbour mill", file: "site.yaml", digest: digestOf("c") },
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

export const SUMMARY: Summary = {
  points: 5,
  pass: 1,
  warn: 2,
  fail: 2,
  warnOnlyUndecided: 1,
  problems: 2,
  byRule: HEAD.rules.map((one, index) => ({
    rule: one.id,
    pass: 5 - (index % 3),
    warn: index % 2,
    fail: index % 3 === 2 ? 1 : 0,
    undecided: index % 3 === 1 ? 1 : 0,
    notApplicable: 0,
    noLimitInForce: 0,
  })),
  toMeasure: [
    { fact: "lowest_speed", points: 1 },
    { fact: "target_torque", points: 1 },
  ],
};

/** A screening as the real one behaves: points once, the summary only afterwards. */
export function fakeScreening(points: readonly PointResult[] = POINTS, head: ResultHead = HEAD): Screening {
  let done = false;
  return {
    head,
    *points() {
      yield* points;
      done = true;
    },
    summary() {
      if (!done) throw new Error("summary asked for before all points were iterated");
      return SUMMARY;
    },
  };
}
