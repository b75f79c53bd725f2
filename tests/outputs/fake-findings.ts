import type { FactShown, Finding, MethodTried, PointResult } from "../../src/screening/index.js";

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
    changes: [],
    group: null,
    accepted: null,
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
    { fact: "lowest_speed", reason: "missing", measureTo: null },
    { fact: "nominal_speed", reason: "too-close", measureTo: { accuracy: 0.15, unit: "r/min" } },
  ],
});

export const TORQUE_OPEN = finding("tightening-torque", "undecided", {
  missing: [{ fact: "target_torque", reason: "unreadable", measureTo: null }],
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
    assetTag: "P-0003",
    component: null,
    bearingPosition: "drive-end",
    direction: "horizontal",
    file: "survey.xlsx",
    sheet: "Pumps",
    row,
    verdict,
    accepted: false,
    methods: null,
    methodAdvised: null,
    settledBy: null,
    findings,
  };
}

/** A method in place of the proposed one, with something in each of its lists. */
const BONDED: MethodTried = {
  method: "adhesive-pad",
  proposed: false,
  allowed: true,
  verdict: "fail",
  fails: ["supply-voltage"],
  warns: ["seat-material"],
  undecided: ["adhesive-cure"],
  missing: ["cure_time"],
  asked: ["adhesive-cure"],
  notAsked: ["hot-work"],
};

/** Every outcome, and every way in which a fact, a limit and an origin can be shown. */
export const POINTS: readonly PointResult[] = [
  point(4, "pass", [finding("hole-depth", "pass", { margin: { value: -0, fraction: null } })]),
  {
    ...point(5, "fail", [THREAD_TOO_SHORT, SUPPLY_OUTSIDE, COATED_SEAT]),
    methods: [BONDED, { ...BONDED, method: "tapped-hole", proposed: true, fails: ["thread-depth", "supply-voltage"] }],
    methodAdvised: { method: "adhesive-pad", verdict: "fail", closest: true },
  },
  point(6, "warn", [COATED_SEAT, finding("adhesive-cure", "not-applicable")]),
  {
    ...point(7, "warn", [SPEED_OPEN, finding("hole-depth", "no-limit-in-force", { group: "supply 1" })]),
    settledBy: ["lowest_speed"],
  },
  { ...point(8, "fail", [TORQUE_OPEN]), id: null, point: null, machine: null, sheet: null, file: "second.csv" },
];
