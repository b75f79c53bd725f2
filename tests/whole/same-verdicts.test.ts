import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { nodeInflating } from "../../src/disk/index.js";
import { type Survey, surveyReader } from "../../src/records/index.js";
import { type CellValue, type RawSheet, readWorkbook } from "../../src/workbook/index.js";
import { rowOf, sheetOf, workbookOf } from "../outputs/workbook/fake-survey.js";
import { shippedRulebook } from "../tools/shipped.js";
import { screenWith } from "../tools/with-deviations.js";

/** A table as cells: the headings, then a row per point, each cell filled where a merged one covered it. */
type Table = readonly (readonly (CellValue | null)[])[];

const HEADING_ROW = 4;
const rulebook = await shippedRulebook();

/** One sheet of the large sample, without what stands above its headings. */
async function tableOf(sheetName: string): Promise<Table> {
  const reading = await readWorkbook(readFileSync("samples/survey-full.xlsx"), nodeInflating);
  if (!reading.ok) throw new Error(reading.error.text);
  const sheet = reading.workbook.sheets.find(({ name }) => name === sheetName);
  if (!sheet) throw new Error(`no sheet ${sheetName}`);
  const rows = sheet.rows.filter(({ row }) => row >= HEADING_ROW);
  const width = Math.max(...rows.flatMap(({ cells }) => cells.map(({ column }) => column)));
  return rows.map(({ row }) => Array.from({ length: width }, (_, i) => valueAt(sheet, row, i + 1)));
}

function valueAt({ rows, merges }: RawSheet, row: number, column: number): CellValue | null {
  const over = merges.find((one) => {
    return row >= one.top && row <= one.bottom && column >= one.left && column <= one.right;
  });
  const [top, left] = [over?.top ?? row, over?.left ?? column];
  return rows.find((one) => one.row === top)?.at(left) ?? null;
}

/** Reads tables as the sheets of one workbook. */
function surveyOf(file: string, tables: readonly Table[]): Survey {
  const sheets = tables.map((table, i) =>
    sheetOf(
      `Part ${i + 1}`,
      table.flatMap((cells, row) => (cells.some((cell) => cell !== null) ? [rowOf(row + 1, cells)] : [])),
    ),
  );
  const reading = surveyReader(rulebook.words, null).read(workbookOf(sheets), file, "0".repeat(64));
  if (!reading.ok) throw new Error(reading.text);
  return reading.survey;
}

/** What is said of each point, by its name: verdict, and rule, outcome, message and margin of each finding. */
function saidOf(surveys: readonly Survey[], set: string): unknown {
  const { points } = screenWith(rulebook, surveys, null, { set });
  expect(new Set(points.map(({ id }) => id)).size).toBe(points.length);
  return new Map(
    points
      .map(({ point, id, verdict, settledBy, methodAdvised, findings }) => {
        const said = findings.map(({ rule, outcome, message, margin, remedy }) => ({
          ...{ rule, outcome, message, remedy },
          margin: margin?.value ?? null,
        }));
        return [point ?? "", { id, verdict, settledBy, methodAdvised, said }] as const;
      })
      .sort(([a], [b]) => (a < b ? -1 : 1)),
  );
}

function shuffled(count: number): fc.Arbitrary<readonly number[]> {
  const all = [...Array(count).keys()];
  return fc.shuffledSubarray(all, { minLength: count, maxLength: count });
}

const table = await tableOf("Hall 4 wet end");
const [headings = [], ...points] = table;
const text = (content: string): CellValue => ({ kind: "text", text: content });
const RUNS = { numRuns: 4 };
const TIME = { timeout: 240_000 };

describe("what is said of the points of a survey", () => {
  const full = saidOf([surveyOf("a.xlsx", [table])], "full");

  it("is said of every row, and of every verdict", () => {
    const verdicts = [...(full as Map<string, { readonly verdict: string }>).values()].map(({ verdict }) => verdict);
    expect(verdicts.length).toBeGreaterThan(50);
    expect(new Set(verdicts)).toEqual(new Set(["pass", "warn", "fail"]));
  });

  it("does not depend on the order of rows", TIME, () => {
    fc.assert(
      fc.property(shuffled(points.length), (order) => {
        const rows = order.map((row) => points[row] ?? []);
        expect(saidOf([surveyOf("a.xlsx", [[headings, ...rows]])], "full")).toEqual(full);
      }),
      RUNS,
    );
  });

  it("does not depend on the order of columns", TIME, () => {
    fc.assert(
      fc.property(shuffled(headings.length), (order) => {
        const moved = table.map((cells) => order.map((column) => cells[column] ?? null));
        expect(saidOf([surveyOf("a.xlsx", [moved])], "full")).toEqual(full);
      }),
      RUNS,
    );
  });

  it("does not change with an empty column, an unknown one, one of notes, or blank rows", TIME, () => {
    const MORE: readonly (readonly [heading: CellValue | null, cell: (row: number) => CellValue | null])[] = [
      [null, () => null],
      [text("Inspector's mood"), (row) => text(`fair to middling ${row}`)],
      [text("Checked in the office"), () => null],
    ];
    const column = fc.tuple(fc.constantFrom(...MORE), fc.nat({ max: headings.length }));
    fc.assert(
      fc.property(fc.array(column, { minLength: 1, maxLength: 3 }), fc.nat({ max: points.length }), (columns, gap) => {
        const wider = table.map((cells, row) => {
          const with_ = [...cells];
          // Nobody writes a note beside a footnote of the sheet.
          const isPoint = cells.filter((one) => one !== null).length > 5;
          for (const [[heading, cell], at] of columns) {
            with_.splice(at, 0, row === 0 ? heading : isPoint ? cell(row) : null);
          }
          return with_;
        });
        wider.splice(gap + 1, 0, []);
        expect(saidOf([surveyOf("a.xlsx", [wider])], "full")).toEqual(full);
      }),
      RUNS,
    );
  });

  it("does not depend on the sheet on which a row stands, nor on the order of sheets", TIME, () => {
    fc.assert(
      fc.property(fc.integer({ min: 10, max: points.length - 10 }), fc.boolean(), (cut, turned) => {
        const parts = [points.slice(0, cut), points.slice(cut)].map((rows): Table => [headings, ...rows]);
        expect(saidOf([surveyOf("a.xlsx", turned ? parts.toReversed() : parts)], "full")).toEqual(full);
      }),
      RUNS,
    );
  });

  // Which rules of the full set are asked is said of each file by itself.
  it("does not depend on the file in which a row stands, nor on the order of files", TIME, () => {
    const core = saidOf([surveyOf("a.xlsx", [table])], "core");
    fc.assert(
      fc.property(fc.integer({ min: 10, max: points.length - 10 }), fc.boolean(), (cut, turned) => {
        const files = [points.slice(0, cut), points.slice(cut)].map((rows, i) =>
          surveyOf(`${i}.xlsx`, [[headings, ...rows]]),
        );
        expect(saidOf(turned ? files.toReversed() : files, "core")).toEqual(core);
      }),
      RUNS,
    );
  });
});
