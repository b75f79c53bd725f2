import { describe, expect, it } from "vitest";
import { filesOf, fill, mappingText } from "../../../handover/made-mapping.js";
import { checkMetadata } from "./check-metadata.js";
import { checkTable } from "./check-table.js";

const COLUMNS = [
  { heading: "Größe #1", field: "id", key: true },
  {
    heading: "größe 1",
    fact: "machine_name",
    length: { most: 12, counted: "utf-8-bytes", tooLong: "shorten" },
    whenEmpty: { clear: "CLEAR" },
  },
  { heading: "Depth", fact: "hole_depth", type: "number", unit: "cm" },
  { heading: "Day", fact: "next_outage", type: "date", whenEmpty: "blank" },
  { heading: "?", fact: "asset_tag", type: "code", required: true },
];
const SURVEY =
  'Point ID;Asset tag;Machine;Next outage;Hole depth (mm)\nP-1;#A;"Mühle; ""die alte""";2027-02-01;15.2\nP-2;B;;;\n"P-3";=C1;Fan, new;;14\n';
const FORMS = [
  {},
  { encoding: "utf-8-bom", lineEnd: "lf", separator: "tab", days: "YYYYMMDD" },
  { encoding: "windows-1252", separator: "semicolon", decimalSign: "comma", days: "DD.MM.YYYY" },
  { separator: "pipe", decimalSign: "comma", days: "MM/DD/YYYY", lineEnd: "lf" },
];

interface Pair {
  readonly table: Uint8Array;
  readonly metadata: string;
}

async function pairOf(form: object): Promise<Pair> {
  const mapping = mappingText([{ target: "points", file: "my points.csv", columns: COLUMNS }], { form });
  const [table, metadata] = await filesOf(await fill(mapping, SURVEY));
  if (!table || !metadata) throw new Error("a text table has metadata beside it");
  expect([table.name, metadata.name]).toEqual(["my points.csv", "my points.csv-metadata.json"]);
  return { table: table.bytes, metadata: new TextDecoder().decode(metadata.bytes) };
}

describe("the metadata beside a text table", () => {
  it.each(FORMS)("with %j is as the vocabulary wants it, and the table is as the metadata says", async (form) => {
    const { table, metadata } = await pairOf(form);
    expect(checkMetadata(metadata)).toEqual([]);
    expect(checkTable(table, metadata)).toEqual([]);
  });

  it("names columns so that each can stand in a URI template", async () => {
    const { tableSchema, url } = JSON.parse((await pairOf({})).metadata);
    expect(tableSchema.columns.map(({ name }: { readonly name: string }) => name)).toEqual([
      "grosse_1",
      "grosse_1_2",
      "depth",
      "day",
      "column_5",
    ]);
    expect(tableSchema).toMatchObject({ primaryKey: "grosse_1", aboutUrl: "urn:uuid:{grosse_1}" });
    expect(url).toBe("my%20points.csv");
    expect(tableSchema.columns[1]).toMatchObject({ null: ["", "CLEAR"], datatype: { base: "string", maxLength: 12 } });
  });
});

/** A metadata document with one thing in it changed. */
function changed(
  metadata: string,
  change: (document: Record<string, never> & { [key: string]: never }) => void,
): string {
  const document = JSON.parse(metadata);
  change(document);
  return JSON.stringify(document);
}

// biome-ignore lint/suspicious/noExplicitAny: documents are broken here in ways that no type allows
type Broken = any;

describe("the checker finds", () => {
  it.each<readonly [what: string, section: string, change: (document: Broken) => void]>([
    ["no context", "metadata 5.2", (d) => delete d["@context"]],
    ["another context", "metadata 5.2", (d) => (d["@context"] = "http://example.org/")],
    ["more in the context", "metadata 5.2", (d) => (d["@context"][1].csvw = "x")],
    ["no language", "metadata 5.2", (d) => (d["@context"][1]["@language"] = "english language")],
    ["no url", "metadata 5.4.1", (d) => delete d.url],
    ["a url that is none", "metadata 5.1.2", (d) => (d.url = "my points.csv")],
    ["a property that is not defined", "metadata 4", (d) => (d.title = "x")],
    ["another type", "metadata 5.4.2", (d) => (d["@type"] = "Tables")],
    ["an unknown encoding", "metadata 5.9", (d) => (d.dialect.encoding = "utf8mb4")],
    ["a quoted truth", "metadata 5.9", (d) => (d.dialect.header = "true")],
    ["headings below none", "metadata 5.9", (d) => (d.dialect.headerRowCount = -1)],
    ["no comment prefix", "metadata 5.9", (d) => (d.dialect.commentPrefix = null)],
    ["an unknown flag", "metadata 5.9", (d) => (d.dialect.separator = ",")],
    ["columns that are no list", "metadata 5.1.1", (d) => (d.tableSchema.columns = {})],
    ["a name twice", "metadata 5.5", (d) => (d.tableSchema.columns[2].name = "day")],
    ["a name with a blank", "metadata 5.6", (d) => (d.tableSchema.columns[2].name = "hole depth")],
    ["a name that is kept", "metadata 5.6", (d) => (d.tableSchema.columns[2].name = "_row")],
    ["a title that is a number", "metadata 5.1.6", (d) => (d.tableSchema.columns[2].titles = [3])],
    ["a word for required", "metadata 5.1.7", (d) => (d.tableSchema.columns[2].required = "yes")],
    ["an unknown property of a column", "metadata 5.6", (d) => (d.tableSchema.columns[2].title = "Depth")],
    ["a null that is no string", "metadata 5.7", (d) => (d.tableSchema.columns[2].null = [0])],
    ["a key that is no column", "metadata 5.1.4", (d) => (d.tableSchema.primaryKey = "id")],
    ["no key in a list", "metadata 5.1.4", (d) => (d.tableSchema.primaryKey = [])],
    ["a template without its column", "metadata 5.1.3", (d) => (d.tableSchema.aboutUrl = "urn:uuid:{id}")],
    ["an unknown datatype", "metadata 5.11.1", (d) => (d.tableSchema.columns[2].datatype = "text")],
    ["a length of a number", "metadata 5.11.2", (d) => (d.tableSchema.columns[2].datatype.maxLength = 3)],
    ["a length that is none", "metadata 5.11.2", (d) => (d.tableSchema.columns[1].datatype.maxLength = 1.5)],
    ["lengths that cross", "metadata 5.11.2", (d) => (d.tableSchema.columns[1].datatype.minLength = 13)],
    ["a date format that few know", "model 6.4.4", (d) => (d.tableSchema.columns[3].datatype.format = "YYYY-MM-DD")],
    [
      "a decimal sign that is no text",
      "model 6.4.2",
      (d) => (d.tableSchema.columns[2].datatype.format = { decimalChar: 1 }),
    ],
  ])("%s (%s)", async (_, section, change) => {
    const { metadata } = await pairOf({});
    expect(checkMetadata(changed(metadata, change)).map((finding) => finding.section)).toEqual([section]);
  });

  it("no JSON (metadata 4), and no object (metadata 5)", () => {
    expect(checkMetadata("{").map(({ section }) => section)).toEqual(["metadata 4"]);
    expect(checkMetadata("[]").map(({ section }) => section)).toEqual(["metadata 5"]);
  });

  it.each<readonly [what: string, sections: readonly string[], change: (document: Broken) => void]>([
    ["headings that do not fit", ["metadata 5.5.1"], (d) => (d.tableSchema.columns[2].titles = ["depth"])],
    [
      "another separator",
      ["metadata 5.5.1", "metadata 2", "metadata 2", "metadata 2"],
      (d) => (d.dialect.delimiter = ";"),
    ],
    ["an empty value that is required", ["model 6.4", "model 6.4"], (d) => (d.tableSchema.columns[3].required = true)],
    [
      "another decimal sign",
      ["model 6.4.2", "model 6.4.2"],
      (d) => (d.tableSchema.columns[2].datatype = { base: "decimal", format: { decimalChar: "," } }),
    ],
    ["another date format", ["model 6.4.4"], (d) => (d.tableSchema.columns[3].datatype.format = "dd.MM.yyyy")],
    ["a text that is too long", ["metadata 5.11.2"], (d) => (d.tableSchema.columns[1].datatype.maxLength = 7)],
    ["a key that stands twice", ["metadata 5.5"], (d) => (d.tableSchema.primaryKey = "day")],
  ])("in a table: %s", async (_, sections, change) => {
    const { table, metadata } = await pairOf({});
    const broken = changed(metadata, change);
    expect(checkMetadata(broken)).toEqual([]);
    expect(checkTable(table, broken).map((finding) => finding.section)).toEqual(sections);
  });
});
