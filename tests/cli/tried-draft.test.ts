import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { triedDraft } from "../../src/cli/tried-draft.js";
import { nodeInflating } from "../../src/disk/index.js";
import { type SurveyReading, surveyReader } from "../../src/records/index.js";
import { readColumnFile } from "../../src/rulebook/index.js";
import { type RawWorkbook, readWorkbook } from "../../src/workbook/index.js";
import { shippedWords } from "../tools/shipped.js";

const words = await shippedWords();
const LISTED = [...words.fields.values()].flatMap(({ headings }) => Object.values(headings).flat());

const ODD = [
  "Wert",
  "Wert 2",
  "?",
  "№ 7",
  "Loch\ntief",
  'a "b" \\ c',
  "x=y",
  "# nein",
  "{a: b}",
  "Rest/über",
  "\u202eabc",
  "ja",
];
const heading = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom(...LISTED) },
  { weight: 1, arbitrary: fc.constantFrom(...ODD) },
  { weight: 1, arbitrary: fc.string({ maxLength: 12 }) },
  {
    weight: 2,
    arbitrary: fc
      .tuple(fc.constantFrom(...LISTED), fc.constantFrom("mm", "in", "[rpm]", "(V)", "Nm"))
      .map((both) => both.join(" ")),
  },
  {
    weight: 3,
    arbitrary: fc
      .tuple(
        fc.constantFrom("Hole depth", "Tiefe", "Speed", "Supply voltage", "Drehmoment", ...LISTED),
        fc.constantFrom(
          "±0.5",
          "[mm] ±0,5",
          "(± 2 %)",
          "(mm, ±0,02 in)",
          "± 1,500",
          "mm, caliper",
          "mit Messschieber",
          "(torque wrench)",
          "(V, ±0.1)",
        ),
      )
      .map((both) => both.join(" ")),
  },
);
const cell = fc.constantFrom(
  "",
  "P-1",
  "Pump",
  "1485",
  "1.485",
  "1,485",
  "16,5",
  "0.8 in",
  "24 V DC",
  "yes",
  "nein",
  "cast iron, painted",
  "tbc",
  '"',
  "fan",
);
const table = fc.integer({ min: 2, max: 7 }).chain((width) =>
  fc.record({
    group: fc.option(fc.array(heading, { minLength: width, maxLength: width })),
    headings: fc.array(heading, { minLength: width, maxLength: width }),
    rows: fc.array(fc.array(cell, { minLength: width, maxLength: width }), { maxLength: 4 }),
  }),
);
const sheet = fc.array(table, { minLength: 1, maxLength: 2 });
const name = fc.constantFrom("Halle 3", "Halle: 3", '"', "1", "true", "constructor", "a # b", "Blatt\u202e", "ß");

function quoted(text: string): string {
  return `"${text.replaceAll('"', '""')}"`;
}

/** The sheets as one workbook, each read from text as a file would be. */
async function workbookOf(sheets: readonly [string | null, unknown][]): Promise<RawWorkbook | null> {
  const read = [];
  for (const [title, tables] of sheets) {
    const rows = (tables as { group: string[] | null; headings: string[]; rows: string[][] }[]).flatMap((one) => [
      ...(one.group ? [one.group] : []),
      one.headings,
      ...one.rows,
    ]);
    const text = rows.map((row) => row.map(quoted).join(";")).join("\n");
    const reading = await readWorkbook(new TextEncoder().encode(text), nodeInflating, {
      separator: ";",
      encoding: "utf-8",
    });
    const [first] = reading.ok ? reading.workbook.sheets : [];
    if (first) read.push({ ...first, name: title });
  }
  return read.length === 0 ? null : { kind: "xlsx", sheets: read, dateSystem: 1900, remarks: [] };
}

/** Facts of columns whose headings state an accuracy without a unit. */
function unsettledFacts(reading: SurveyReading): ReadonlySet<string> {
  const columns = reading.ok ? reading.survey.columns : [];
  return new Set(columns.flatMap(({ why, facts }) => (why.includes("no unit is settled for it") ? facts : [])));
}

function withoutFacts(reading: SurveyReading, left: ReadonlySet<string>) {
  return (
    reading.ok && reading.survey.records.map(({ row, facts }) => [row, [...facts].filter(([id]) => !left.has(id))])
  );
}

async function tried(sheets: readonly [string | null, unknown][]): Promise<void> {
  const workbook = await workbookOf(sheets);
  if (!workbook) return;
  const understood = surveyReader(words, null).understand(workbook, "s.xlsx", "0");
  const draft = triedDraft(understood, words, (reader) => reader.read(workbook, "s.xlsx", "0"));
  const reading = readColumnFile({ path: "draft", text: draft.text }, words.ways);
  expect(reading.ok ? [] : reading.findings, draft.text).toEqual([]);
  if (draft.same) return;
  // A draft names the unit of a column, which settles an accuracy that its heading leaves without one; the command says
  // that the two readings are not quite the same. Nothing else may be another.
  const settled = unsettledFacts(understood.reading);
  expect(settled.size, draft.text).toBeGreaterThan(0);
  if (!reading.ok) return;
  const guide = { file: reading.columns, language: null, decimalSign: null, columns: [] };
  const again = surveyReader(words, null, guide).read(workbook, "s.xlsx", "0");
  expect(withoutFacts(again, settled), draft.text).toEqual(withoutFacts(understood.reading, settled));
}

describe("a draft of a column file", () => {
  it("is a column file and gives the reading that it was made from, for any sheet without a name", async () => {
    await fc.assert(
      fc.asyncProperty(sheet, (tables) => tried([[null, tables]])),
      { numRuns: 50 },
    );
  });

  it("does so for any two sheets, whatever their names", async () => {
    await fc.assert(
      fc.asyncProperty(fc.tuple(name, sheet), fc.tuple(name, sheet), (one, two) => tried([one, two])),
      { numRuns: 30 },
    );
  });
});
