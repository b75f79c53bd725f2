import { describe, expect, it } from "vitest";
import { filesOf, fill, groupOf, mappingText } from "../../../handover/made-mapping.js";
import { checkGroup } from "./check-group.js";
import { checkMetadata } from "./check-metadata.js";
import { checkReferences } from "./check-table.js";

const SURVEY = "Point ID,Machine,Next outage\nP-1,Fan,2027-02-01\nP-2,Fan,2027-02-01\nP-3,Mill,\n";
const MACHINES = {
  target: "machines",
  file: "the machines.csv",
  rows: { one: "machine", per: ["machine"] },
  columns: [{ heading: "Machine", field: "machine", key: true }],
};
const POINTS = {
  target: "points",
  columns: [
    { heading: "Point", field: "point", key: true, type: "code" },
    { heading: "On machine", field: "machine", type: "code", references: "machines" },
  ],
};

// biome-ignore lint/suspicious/noExplicitAny: documents are broken here in ways that no type allows
type Document = any;

/** The description of all tables, and the tables. */
async function described(targets: readonly object[], survey = SURVEY, isWhole = true) {
  const filling = await fill(mappingText(targets), survey);
  const group = groupOf(filling, isWhole);
  if (group === null) throw new Error("there are text tables");
  expect([group.name, group.rows]).toEqual(["csv-metadata.json", 0]);
  const text = new TextDecoder().decode(group.bytes);
  const files = await filesOf(filling);
  const tables = new Map(files.map(({ name, bytes }) => [encodeURIComponent(name), bytes]));
  expect(checkGroup(text)).toEqual([]);
  expect(checkReferences(text, tables)).toEqual([]);
  const document: Document = JSON.parse(text);
  // What stands beside a table says the same of it, and stands alone.
  for (const { name, bytes } of files.filter((file) => file.name.endsWith("-metadata.json"))) {
    const alone = new TextDecoder().decode(bytes);
    expect(checkMetadata(alone)).toEqual([]);
    const { "@context": _, ...own } = JSON.parse(alone);
    const together = document.tables.find(
      (table: Document) => `${decodeURIComponent(table.url)}-metadata.json` === name,
    );
    const { foreignKeys: __, ...schema } = together.tableSchema;
    expect({ ...together, tableSchema: schema }).toEqual(own);
  }
  const foreignKeys = document.tables.map((table: Document) => table.tableSchema.foreignKeys ?? []);
  return { text, document, tables, foreignKeys };
}

describe("the description of all tables of an export", () => {
  it("says which column refers to which key of which table", async () => {
    const { foreignKeys, document } = await described([MACHINES, POINTS]);
    expect(foreignKeys).toEqual([
      [],
      [
        {
          columnReference: "on_machine",
          reference: { resource: "the%20machines.csv", columnReference: "machine" },
        },
      ],
    ]);
    expect(document.tables.map((table: Document) => table.tableSchema.primaryKey)).toEqual(["machine", "point"]);
  });

  it("says so of each part of the table that refers", async () => {
    const parts = { ...POINTS, file: "points-{part}.csv", rowLimit: 2 };
    expect((await described([MACHINES, parts])).foreignKeys.map((keys: Document) => keys.length)).toEqual([0, 1, 1]);
  });

  it.each<readonly [why: string, targets: readonly object[]]>([
    ["what is referred to has several parts", [{ ...MACHINES, file: "m-{part}.csv", rowLimit: 1 }, POINTS]],
    ["what is referred to is a workbook", [{ ...MACHINES, file: "machines.xlsx" }, POINTS]],
    [
      "a row refers to nothing",
      [
        {
          ...MACHINES,
          target: "outages",
          rows: { one: "outage", per: ["next_outage"] },
          where: { verdicts: ["pass", "warn", "fail"], facts: { machine_name: ["Fan"] } },
          columns: [{ heading: "Outage", fact: "next_outage", type: "code", key: true }],
        },
        { ...POINTS, columns: [{ heading: "Outage", fact: "next_outage", type: "code", references: "outages" }] },
      ],
    ],
    [
      "what is referred to is a number, and what refers is none",
      [
        { ...MACHINES, columns: [{ heading: "Number", field: "points", type: "number", key: true }] },
        { ...POINTS, columns: [{ heading: "Number", constant: "1", type: "code", references: "machines" }] },
      ],
    ],
  ])("says nothing that a checker could not find true: %s", async (why, targets) => {
    const survey = why.includes("number") ? "Point ID,Machine\nP-1,Fan\n" : SURVEY;
    const more = { ...MACHINES, target: "more", file: "more.csv" };
    expect((await described([...targets, more], survey)).foreignKeys.flat()).toEqual([]);
  });

  it("says nothing of references in a difference: what is referred to may have been told before", async () => {
    expect((await described([MACHINES, POINTS], SURVEY, false)).foreignKeys.flat()).toEqual([]);
  });

  it("is not there where there are not two text tables", async () => {
    expect(groupOf(await fill(mappingText([{ ...MACHINES, file: "machines.xlsx" }, POINTS]), SURVEY))).toBeNull();
  });

  it.each<readonly [what: string, sections: readonly string[], change: (document: Document) => void]>([
    ["no tables", ["metadata 5.3.1"], (d) => (d.tables = [])],
    ["a context within", ["metadata 4"], (d) => (d.tables[0]["@context"] = "http://www.w3.org/ns/csvw")],
    ["a table that is not there", ["metadata 5.5"], (d) => (keyOf(d).reference.resource = "machines.csv")],
    ["a column that is not there", ["metadata 5.5"], (d) => (keyOf(d).columnReference = "machine")],
    ["another that is not there", ["metadata 5.5"], (d) => (keyOf(d).reference.columnReference = "x")],
    ["more in a foreign key", ["metadata 5.5"], (d) => (keyOf(d)["dc:title"] = "x")],
    ["two ways to refer", ["metadata 5.5"], (d) => (keyOf(d).reference.schemaReference = "x")],
  ])("is checked by what finds %s", async (_, sections, change) => {
    const { document } = await described([MACHINES, POINTS]);
    change(document);
    expect(checkGroup(JSON.stringify(document)).map(({ section }) => section)).toEqual(sections);
  });

  it("is checked by what finds a reference that leads nowhere", async () => {
    const { document, tables } = await described([MACHINES, POINTS]);
    keyOf(document).columnReference = "point";
    expect(checkReferences(JSON.stringify(document), tables)).toHaveLength(3);
  });
});

const keyOf = (document: Document): Document => document.tables[1].tableSchema.foreignKeys[0];
