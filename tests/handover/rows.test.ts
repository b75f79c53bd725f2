import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { pointUuid, uuidOfNames } from "../../src/screening/index.js";
import { fill, mappingText, pointsMapping, tablesOf } from "./made-mapping.js";

const HEAD = "Point ID;Asset tag;Machine;Next outage;Hole depth (mm);Mounting method\n";
const KEY = { heading: "Key", field: "id", key: true };
const ORDERS = {
  target: "orders",
  rows: { one: "order", per: ["machine", { by: "next_outage", whenEmpty: "together" }] },
  columns: [
    KEY,
    { heading: "Machine", field: "machine", type: "code" },
    { heading: "Outage", fact: "next_outage", type: "date" },
    { heading: "Points", field: "points", type: "number" },
    { heading: "Work", each: "{point}[: {hole_depth in mm} mm]", lines: "many", join: "|" },
  ],
};

/** Problems without their texts. */
function problemsOf(filling: Awaited<ReturnType<typeof fill>>): readonly string[] {
  return filling.problems.map(({ target, column, of, code }) => `${target} > ${column}: ${of}: ${code}`);
}

async function table(mapping: string, survey: string): Promise<string> {
  return [...(await tablesOf(await fill(mapping, survey))).values()].join("---\r\n");
}

describe("rows of points", () => {
  it("are refused by name without an id, and where an id stands twice", async () => {
    const mapping = pointsMapping([KEY]);
    const survey = `Point ID;Machine\nP-1;Mill\n;Fan\nP-2;Mill\nP-1;Mill\n`;
    const filling = await fill(mapping, survey);
    expect(problemsOf(filling)).toEqual([
      "points > null: survey.csv, line 3: no-id",
      "points > null: P-1 (survey.csv, line 5): id-twice",
    ]);
    expect(filling.problems[1]?.text).toContain("P-1 (survey.csv, line 2)");
  });

  it("are in the order of their keys, whatever the order of the survey", async () => {
    const lines = ["P-1;A;Mill;;15;\n", "P-2;B;Fan;;14;\n", "P-3;C;Mill;;;\n", "P-4;D;Fan;2027-01-02;16;\n"];
    const mapping = mappingText([{ target: "points", columns: [KEY, { heading: "M", field: "machine" }] }, ORDERS]);
    const once = await table(mapping, HEAD + lines.join(""));
    await fc.assert(
      fc.asyncProperty(fc.shuffledSubarray(lines, { minLength: lines.length }), async (shuffled) => {
        expect(await table(mapping, HEAD + shuffled.join(""))).toBe(once);
      }),
      { numRuns: 10 },
    );
  });

  it("with keys that differ by nothing but case are refused, with both names", async () => {
    const mapping = pointsMapping([{ heading: "Tag", fact: "asset_tag", key: true }]);
    const filling = await fill(mapping, `${HEAD}P-1;A-1;;;;\nP-2;a-1;;;;\nP-3;A-1;;;;\n`);
    expect(problemsOf(filling)).toEqual([
      "points > Tag: P-1 (survey.csv, line 2): key-twice",
      "points > Tag: P-2 (survey.csv, line 3): key-twice",
    ]);
    expect(filling.problems[1]?.text).toContain('"a-1" differs by nothing but case from the key of P-3');
  });

  it("refer to what is loaded before", async () => {
    const machines = {
      target: "machines",
      rows: { one: "machine", per: ["machine"] },
      where: { facts: { mounting_method: ["tapped-hole"] } },
      columns: [{ heading: "M", field: "machine", key: true }],
    };
    const points = {
      target: "points",
      columns: [KEY, { heading: "M", field: "machine", type: "code", references: "machines" }],
    };
    const survey = `${HEAD}P-1;;Mill;;;tapped hole\nP-2;;Fan;;;\n`;
    const filling = await fill(mappingText([machines, points]), survey);
    expect(problemsOf(filling)).toEqual(["points > M: P-2 (survey.csv, line 3): refers-to-nothing"]);
  });

  it("are all looked at before anything is said, and problems beyond the first 200 are counted", async () => {
    const mapping = pointsMapping([{ heading: "T", fact: "asset_tag", required: true }]);
    const lines = Array.from({ length: 250 }, (_, index) => `P-${index};;;;;\n`);
    const filling = await fill(mapping, HEAD + lines.join(""));
    expect([filling.problems.length, filling.problemCount]).toEqual([200, 250]);
  });
});

describe("orders", () => {
  const two = `${HEAD}P-1;;Mill 2;2027-02-01;15.2;\nP-2;;Mill 2;2027-02-01;;\nP-3;;Mill 2;;14;\nP-4;;Fan;2027-02-01;;\n`;

  it("are one for each machine and outage, with all their points in the long text", async () => {
    const rows = (await table(mappingText([ORDERS]), two))
      .split("\r\n")
      .map((line) => line.split(",").slice(1).join(","));
    expect(rows.sort().filter((line) => line !== "")).toEqual([
      "Fan,2027-02-01,1,P-4",
      "Machine,Outage,Points,Work",
      "Mill 2,,1,P-3: 14 mm",
      "Mill 2,2027-02-01,2,P-1: 15.2 mm|P-2",
    ]);
  });

  it("have ids made of site, word, and what they are grouped by; never that of a point", async () => {
    const filling = await fill(mappingText([ORDERS]), two, { siteName: "Works North" });
    const ids = filling.targets[0]?.mapped.rows.map(({ id }) => id);
    expect(ids).toContain(uuidOfNames(["Works North", "order", "machine=Fan", "next_outage=2027-02-01"]));
    expect(ids).toContain(uuidOfNames(["Works North", "order", "machine=Mill 2", "next_outage="]));
    expect(uuidOfNames(["a", "b"])).toBe(pointUuid("a", "b"));
    expect(uuidOfNames(["a", "b", "c"])).not.toBe(pointUuid("a", "b c"));
    expect(uuidOfNames(["a", "b", "c"])).not.toBe(pointUuid("a", "b\nc"));
  });

  it("name the points that they speak of", async () => {
    const filling = await fill(mappingText([ORDERS]), two);
    const points = filling.targets[0]?.mapped.rows.map((row) => row.points.length);
    expect(points?.toSorted()).toEqual([1, 1, 2]);
    const all = filling.targets[0]?.mapped.rows.flatMap((row) => row.points);
    expect(all?.toSorted()).toEqual(["P-1", "P-2", "P-3", "P-4"].map((name) => pointUuid("", name)).toSorted());
  });

  it("hold the suitable points alone", async () => {
    const survey = "Point ID;Machine;Lowest speed (r/min);Tightening torque (N·m)\nP-1;Mill;1480;8\nP-2;Mill;300;8\n";
    const target = { ...ORDERS, where: { rulesDoNotSay: { "min-speed": ["fail"] } } };
    const filling = await fill(mappingText([target]), survey);
    expect(filling.targets[0]).toMatchObject({ taken: 1, leftOut: 1 });
    expect(filling.targets[0]?.mapped.rows.map((row) => row.values.at(-1))).toEqual(["P-1"]);
  });

  it("of points that do not agree, or do not say what they are grouped by, are refused", async () => {
    const target = { ...ORDERS, rows: { one: "order", per: ["machine"] } };
    expect(problemsOf(await fill(mappingText([target]), two))).toEqual([
      "orders > Outage: order Mill 2: not-one-value",
    ]);
    const said = { ...target, columns: [KEY, { heading: "Text", template: "{machine}: {next_outage}" }] };
    expect(problemsOf(await fill(mappingText([said]), two))).toEqual(["orders > Text: order Mill 2: not-one-value"]);
    const strict = { ...ORDERS, rows: { one: "order", per: ["machine", "next_outage"] } };
    expect(problemsOf(await fill(mappingText([strict]), two))).toEqual([
      "orders > null: P-3 (survey.csv, line 4): no-group",
    ]);
  });
});

describe("a filter", () => {
  const survey = "Point ID;Machine;Criticality;Lowest speed (r/min)\nP-1;Mill;A;1480\nP-2;Mill;B;300\nP-3;Mill;;1480\n";

  it.each<readonly [object, readonly string[]]>([
    [{ facts: { criticality: ["A", "B"] } }, ["P-1", "P-2"]],
    [{ rulesSay: { "min-speed": ["fail"] } }, ["P-2"]],
    [{ verdicts: ["fail"] }, ["P-2"]],
    [{ verdicts: ["warn"], facts: { criticality: ["A"] } }, ["P-1"]],
    [{ verdicts: ["pass"] }, []],
  ])("%j takes %j", async (where, names) => {
    const filling = await fill(pointsMapping([{ heading: "P", field: "point" }], { where }), survey);
    expect(filling.targets[0]?.mapped.rows.map((row) => row.values[0]).toSorted()).toEqual(names);
  });

  it("that takes nothing leaves a file of headings", async () => {
    expect(
      await table(pointsMapping([{ heading: "P", field: "point" }], { where: { verdicts: ["pass"] } }), survey),
    ).toBe("P\r\n");
  });
});

describe("parts", () => {
  it("can each be loaded alone, and no row stands in two", async () => {
    const lines = Array.from({ length: 7 }, (_, index) => `P-${index};A;Mill;;;\n`);
    const mapping = pointsMapping([{ heading: "P", field: "point" }], { rowLimit: 3 });
    const tables = await tablesOf(await fill(mapping, HEAD + lines.join("")));
    expect([...tables.keys()]).toEqual(["01-points-1.csv", "01-points-2.csv", "01-points-3.csv"]);
    const rows = [...tables.values()].map((text) => text.trimEnd().split("\r\n"));
    expect(rows.map((one) => one[0])).toEqual(["P", "P", "P"]);
    expect(rows.flatMap((one) => one.slice(1)).toSorted()).toEqual(lines.map((line) => line.split(";")[0]));
  });
});
