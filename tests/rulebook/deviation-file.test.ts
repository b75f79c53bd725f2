import { describe, expect, it } from "vitest";
import { loadRulebook, readDeviationFile } from "../../src/rulebook/index.js";
import { shippedRulebook } from "./shipped.js";
import { SMALL_BOOK, smallFiles } from "./small-book.js";

const loading = loadRulebook(smallFiles());
if (!loading.ok) throw new Error(JSON.stringify(loading.findings));
const [rule] = loading.rulebook.rules;
if (!rule) throw new Error(`no rule in ${Object.keys(SMALL_BOOK).join(", ")}`);
const RULES = [
  rule,
  { ...rule, id: "behind-wall", releases: "never" as const },
  { ...rule, id: "no-fact", judges: { proposed: null, installed: null } },
];

const GOOD = `# what the office has accepted
deviations:
  - point: "P-1101, pump, drive end, horizontal"
    rule: thread-depth
    outcome: fail
    limit: 9 mm
    reason: "the bolt was shortened, drawing 4711"
    acceptedBy: "N. Nemo, lead engineer"
    from: 2026-03-01
    until: 2027-01-01
  - { point: p-2, rule: thread-depth, outcome: undecided, limit: [8 mm, 0.08 m], reason: "w", acceptedBy: "N. N.", from: 2026-01-01, until: 2026-02-01 }
  - { point: p-2, rule: thread-depth, outcome: warn, reason: "w", acceptedBy: "N. N.", from: 2026-02-01, until: 2026-03-01, value: 0.85 cm }
`;

function read(text: string) {
  return readDeviationFile({ path: "north/deviations.yaml", text }, RULES);
}

function findings(text: string): readonly string[] {
  const reading = read(text);
  return reading.ok ? [] : reading.findings.map(({ line, column, code }) => `${line}:${column} ${code}`);
}

describe("a file of deviations", () => {
  it("names point, rule, what is accepted, why, by whom and for how long, each with its line", () => {
    const reading = read(GOOD);
    if (!reading.ok) throw new Error(JSON.stringify(reading.findings));
    const { file, digest, entries } = reading.deviations;
    expect(file).toBe("north/deviations.yaml");
    expect(digest).toMatch(/^[0-9a-f]{64}$/);
    expect(entries[0]).toEqual({
      point: "P-1101, pump, drive end, horizontal",
      rule: "thread-depth",
      outcome: "fail",
      limit: { written: "9 mm", values: [9] },
      value: null,
      reason: "the bolt was shortened, drawing 4711",
      acceptedBy: "N. Nemo, lead engineer",
      from: "2026-03-01",
      until: "2027-01-01",
      at: { file: "north/deviations.yaml", line: 3, column: 5 },
    });
    expect(entries.map(({ limit }) => limit?.values ?? null)).toEqual([[9], [8, 80], null]);
    expect(entries.map(({ value }) => value)).toEqual([null, null, { written: "0.85 cm", values: [8.5] }]);
  });

  it("has a digest of its data, not of its layout", () => {
    const digestOf = (text: string) => {
      const reading = read(text);
      return reading.ok ? reading.deviations.digest : null;
    };
    expect(digestOf(`${GOOD}\n# another remark\n`)).toBe(digestOf(GOOD));
    expect(digestOf(GOOD.replace("2027-01-01", "2027-01-02"))).not.toBe(digestOf(GOOD));
  });

  it.each([
    [
      "rule that is not there",
      "rule: thread-depth\n    outcome",
      "rule: tread-depth\n    outcome",
      "4:11 unknown-rule",
    ],
    ["rule on what can hurt somebody", "rule: thread-depth\n", "rule: behind-wall\n", "4:11 never-accepted"],
    ["key that is not there", "acceptedBy:", "aceptedBy:", "8:5 unknown-key"],
    ["no person", 'acceptedBy: "N. Nemo, lead engineer"', 'acceptedBy: " "', "8:17 bad-form"],
    ["no reason", '"the bolt was shortened, drawing 4711"', '""', "7:13 bad-form"],
    ["no end", "    until: 2027-01-01\n", "", "3:5 missing-key"],
    ["an end that is left open", "until: 2027-01-01", "until: null", "10:12 bad-date"],
    ["day that does not exist", "until: 2027-01-01", "until: 2027-02-29", "10:12 bad-date"],
    ["end before the beginning", "until: 2027-01-01", "until: 2026-03-01", "10:12 ends-before-start"],
    ["outcome that needs no acceptance", "outcome: warn", "outcome: pass", "12:48 unknown-outcome"],
    ["limit without unit", "limit: 9 mm", "limit: 9", "6:12 no-unit"],
    ["limit of another dimension", "limit: 9 mm", "limit: 9 V", "6:12 wrong-dimension"],
    ["value without unit", "value: 0.85 cm", "value: 8.5", "12:132 no-unit"],
    ["value that is a band", "value: 0.85 cm", "value: [8 mm, 9 mm]", "12:132 wrong-kind"],
    ["band of three", "[8 mm, 0.08 m]", "[8 mm, 9 mm, 10 mm]", "11:66 list-too-long"],
    ["band upside down", "[8 mm, 0.08 m]", "[0.08 m, 8 mm]", "11:66 out-of-order"],
    ["limit of a rule without numbers", "rule: thread-depth\n    ", "rule: no-fact\n    ", "6:5 no-number"],
    [
      "days that overlap",
      "from: 2026-02-01, until: 2026-03",
      "from: 2026-01-31, until: 2026-03",
      "12:5 overlapping-days",
    ],
    [
      "days that overlap, name with other blanks",
      'p-2, rule: thread-depth, outcome: warn, reason: "w", acceptedBy: "N. N.", from: 2026-02',
      '" p-2 ", rule: thread-depth, outcome: warn, reason: "w", acceptedBy: "N. N.", from: 2026-01',
      "12:5 overlapping-days",
    ],
    [
      "point by a bare number",
      "point: p-2, rule: thread-depth, outcome: u",
      "point: 815, rule: thread-depth, outcome: u",
      "11:14 wrong-kind",
    ],
    ["alias", "outcome: fail", "outcome: *x", "5:14 alias"],
  ])("refuses: %s", (_name, from, to, place) => {
    expect(GOOD.split(from).length).toBeGreaterThan(1);
    expect(findings(GOOD.replace(from, to))).toEqual([place]);
  });

  it("says what to do about a rule from which no deviation is accepted, and what was meant by an unknown one", () => {
    const textOf = (id: string) => {
      const reading = read(GOOD.replace("rule: thread-depth\n", `rule: ${id}\n`));
      return reading.ok ? "" : reading.findings[0]?.text;
    };
    expect(textOf("behind-wall")).toMatch(/no deviation from "behind-wall" is accepted .*leave this out/);
    expect(textOf("tread-depth")).toContain('did you mean "thread-depth"?');
  });

  it("may have nothing left in its list, but not be without one", () => {
    expect(read("deviations: []\n")).toMatchObject({ ok: true, deviations: { entries: [] } });
    expect(findings("deviations:\n")).toEqual(["1:12 wrong-kind"]);
    expect(findings("{}\n")).toEqual(["1:1 missing-key"]);
  });
});

describe("the shipped rulebook", () => {
  it("accepts no deviation from what can hurt somebody", () => {
    const never = shippedRulebook().rules.filter(({ releases }) => releases === "never");
    expect(never.map(({ id }) => id).sort()).toEqual([
      "behind-wall",
      "certified-enclosure",
      "hot-work",
      "isolation-possible",
      "rotor-blocked",
      "sensor-in-hazardous-area",
      "supply-separation",
      "supply-voltage",
      "work-in-hazardous-area",
    ]);
  });
});
