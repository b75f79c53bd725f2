import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nodeInflating } from "../../src/disk/index.js";
import type { FactState } from "../../src/facts/index.js";
import { jsonDocument, ndjsonDocument } from "../../src/outputs/index.js";
import { surveyReader } from "../../src/records/index.js";
import { loadRulebook, type Rulebook } from "../../src/rulebook/index.js";
import { auditScreening, type Finding, type PointResult, type ScreeningInput } from "../../src/screening/index.js";
import { readWorkbook } from "../../src/workbook/index.js";
import { known, screenRows, surveyOf, unknown } from "../tools/make-record.js";
import { shippedFiles, shippedRulebook } from "../tools/shipped.js";

type Row = Readonly<Record<string, FactState>>;

const rulebook = await shippedRulebook();

const name = fc.constantFrom(known("PSU 1"), known("psu 1"), known("PSU 2"), unknown("missing"));
const current = fc.constantFrom(known(100), known(0.1), known(433.3), unknown("missing"), unknown("doubtful"));
const row: fc.Arbitrary<Row> = fc.record({
  supply_name: name,
  sensor_current: current,
  supply_rating: fc.constantFrom(known(1000), known(1000), known(1000), known(2000), unknown("missing")),
  criticality: fc.constantFrom(known("A"), known("B"), unknown("missing")),
  asset_tag: fc.constantFrom(known("P-1"), known("P-2"), unknown("unreadable")),
  component: fc.constantFrom(known("pump"), known("motor")),
  bearing_position: fc.constantFrom(known("drive-end"), known("thrust"), unknown("missing")),
  direction: fc.constantFrom(known("axial"), known("vertical"), known("horizontal"), unknown("missing")),
});
const rows = fc.array(row, { minLength: 1, maxLength: 14 });

function groupsOf(all: readonly Row[]) {
  const { screening, points } = screenRows(rulebook, [surveyOf(all)], { set: "full" });
  const groups = screening.head.groups.map(({ id, key, findings, rows: members }) => {
    return { id, key, findings, members: members.length };
  });
  return { groups, points };
}

function ofGroups({ findings }: PointResult): readonly string[] {
  return findings.flatMap((one) =>
    one.group === null ? [] : [`${one.rule} ${one.outcome} ${one.group} ${one.message}`],
  );
}

describe("the groups of a run", () => {
  it("are the same, with the same findings on every row, whatever the order of the rows", () => {
    const shuffled = rows.chain((all) =>
      fc.tuple(fc.constant(all), fc.shuffledSubarray([...all.keys()], { minLength: all.length })),
    );
    fc.assert(
      fc.property(shuffled, ([all, order]) => {
        const before = groupsOf(all);
        const after = groupsOf(order.map((i) => all[i] ?? {}));
        expect(after.groups).toEqual(before.groups);
        for (const [at, i] of order.entries()) {
          const [one, other] = [after.points[at], before.points[i]];
          expect(one && ofGroups(one)).toEqual(other && ofGroups(other));
        }
      }),
      { numRuns: 25 },
    );
  });

  it("never get better on a supply by a fact that is not known", () => {
    const supplied = fc.array(
      fc.tuple(row, fc.boolean()).map(([one, lost]) => [{ ...one, supply_name: known("PSU 1") }, lost] as const),
      { minLength: 1, maxLength: 14 },
    );
    fc.assert(
      fc.property(supplied, (all) => {
        const lost = all.map(([one, is]) => (is ? { ...one, sensor_current: unknown("missing") } : one));
        const outcomeOf = (some: readonly Row[]): Finding["outcome"] =>
          groupsOf(some).points[0]?.findings.find(({ rule }) => rule === "supply-current")?.outcome ?? "pass";
        const [before, after] = [outcomeOf(all.map(([one]) => one)), outcomeOf(lost)];
        // A current that is not known may be any: too much stays too much or gets open, and nothing is enough.
        if (all.some(([, is]) => is)) expect(["fail", "undecided"]).toContain(after);
        if (after === "fail") expect(before).toBe("fail");
      }),
      { numRuns: 25 },
    );
  });

  it("agree with the reference engine", async () => {
    const [sample] = fc.sample(fc.array(row, { minLength: 40, maxLength: 40 }), { seed: 7, numRuns: 1 });
    const input: ScreeningInput = {
      program: { name: "spotface", version: "test" },
      rulebook: onlyGroups(rulebook),
      surveys: [surveyOf(sample ?? [])],
      skipped: [],
      site: null,
      options: { set: "full", stage: "proposed", asOf: "2026-11-25", siteName: null, allFindings: false },
    };
    const report = await auditScreening(input, () => {});
    expect(report.differences).toEqual([]);
    expect(report.compared).toBeGreaterThan(2);
    expect(report.completed).toBeGreaterThan(0);
  });

  it("are told alike by the document and by its lines, each group in a line of the document", () => {
    const all = Array.from({ length: 3 }, (_, i) => ({ junction_box: known(`JB-${i}`), channel: known("1") }));
    const { screening } = screenRows(rulebook, [surveyOf([...all, ...all])], { set: "full" });
    const text = [...jsonDocument(screening)].join("");
    const { groups } = JSON.parse(text) as { groups: { id: string; rows: unknown[] }[] };
    expect(groups.map(({ id, rows: members }) => [id, members.length])).toEqual([
      ["channel: JB-0 / 1", 2],
      ["channel: JB-1 / 1", 2],
      ["channel: JB-2 / 1", 2],
    ]);
    expect(text.split("\n").filter((line) => line.startsWith('{"id":"channel: '))).toHaveLength(3);
    const [first = ""] = [...ndjsonDocument(screening)].join("").split("\n");
    expect((JSON.parse(first) as { groups: unknown }).groups).toEqual(groups);
  });
});

/** The rules of groups alone; those of points are compared elsewhere. */
function onlyGroups(book: Rulebook): Rulebook {
  return { ...book, rules: book.rules.filter(({ group }) => group !== null) };
}

const OF_POINTS = `id: own-share
title: "a point of a crowded supply draws little"
sets: [core]
stages: [proposed]
judges: sensor_current
limits:
  - from: 2026-01-01
    until: null
    warn: { when: { fact: group.supply_current, operator: greaterThan, value: 250 mA } }
    cites: [c]
citations: { c: { basis: from-memory, says: "made up for a test" } }
messages: { warn: "all draw {group.supply_current}" }
remedy: { text: "x", change: [] }
cases:
  - { name: "good", given: { group.supply_current: 250 mA }, expect: pass }
  - { name: "poor", given: { group.supply_current: 251 mA }, expect: warn }
  - { name: "open", given: {}, expect: undecided }
casesGive: { asOf: 2026-06-01 }
`;

describe("a rule of points that names facts of groups", () => {
  it("judges each point by the group that it is in, also where rows are remembered", async () => {
    const loading = loadRulebook(
      [...(await shippedFiles()), { path: "rules/supply/own-share.yaml", text: OF_POINTS }],
      {
        root: "rules",
      },
    );
    if (!loading.ok) throw new Error(JSON.stringify(loading.findings));
    const text = [
      "Point ID,Supply name,Sensor current (mA)",
      "1,PSU 1,100",
      "2,PSU 1,100",
      "3,PSU 1,100",
      "4,PSU 2,100",
      "5,,100",
      "",
    ].join("\n");
    const reading = await readWorkbook(new TextEncoder().encode(text), nodeInflating);
    if (!reading.ok) throw new Error(reading.error.text);
    const understood = surveyReader(loading.rulebook.words, null).read(reading.workbook, "s.csv", "0".repeat(64));
    if (!understood.ok) throw new Error(understood.text);
    const { survey } = understood;
    const { points } = screenRows(loading.rulebook, [survey], { set: "core", allFindings: true });
    const said = points.map((point) => point.findings.find(({ rule }) => rule === "own-share"));
    expect(said.map((one) => one?.outcome)).toEqual(["warn", "warn", "warn", "pass", "undecided"]);
    expect(said[0]?.message).toBe("all draw 300 mA");
    expect(said[4]?.missing).toEqual([{ fact: "supply_name", reason: "missing", measureTo: null }]);
  });
});

describe("how margins of groups are spread", () => {
  const spreadOf = (all: readonly Row[]) => {
    const { screening } = screenRows(rulebook, [surveyOf(all)], { set: "full", allFindings: true });
    return screening.summary().distributions.margins.find(({ rule }) => rule === "supply-current");
  };
  const feed = (supply: string, mA: number): Row => ({
    supply_name: known(supply),
    sensor_current: known(mA),
    supply_rating: known(1000),
  });

  it("counts each group once, however many rows it has, and no row that is in none", () => {
    const few = [
      feed("PSU 1", 600),
      feed("PSU 2", 300),
      feed("PSU 2", 900),
      { ...feed("", 1), supply_name: unknown("missing") },
    ];
    const spread = spreadOf(few);
    expect(spread).toMatchObject({ counts: "groups", unit: null, known: 2, notKnown: 0 });
    const filled = spread?.bins.filter(({ points }) => points > 0) ?? [];
    // 600 of 1000 leave 0.4 of the limit, 1200 are 0.2 of it beyond; a factor in the rule moves both alike.
    expect(filled.map(({ points }) => points)).toEqual([1, 1]);
    expect(filled[0]?.to).toBeLessThanOrEqual(0);
    expect(filled[1]?.from).toBeGreaterThan(0);
  });

  it("is that of the groups' findings, in any survey", () => {
    fc.assert(
      fc.property(rows, (all) => {
        const { screening } = screenRows(rulebook, [surveyOf(all)], { set: "full", allFindings: true });
        for (const { rule, counts, known: decided } of screening.summary().distributions.margins) {
          if (counts === "points") continue;
          const findings = screening.head.groups.flatMap((group) => group.findings.filter((one) => one.rule === rule));
          expect(decided).toBe(findings.filter(({ margin, outcome }) => margin && outcome !== "undecided").length);
        }
      }),
      { numRuns: 60 },
    );
  });
});
