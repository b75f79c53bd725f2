import type { DataValidation, Worksheet } from "exceljs";
import type { JobRecord, PointJob, WorkPack } from "../../workpacks/index.js";
import type { BlankColumn } from "../blank-survey/columns.js";
import { inputCheck } from "../blank-survey/input-checks.js";
import { checksOf, lookOf, readyStyles, widthOf } from "../blank-survey/ready-cells.js";
import { ENGLISH } from "../blank-survey/texts/english.js";
import { spelledForParts } from "../workbook/cell-text.js";
import { layOutPages, pagesWide, repeatRows } from "../workbook/pages.js";
import { fitRowHeights } from "../workbook/row-heights.js";
import type { styleBook } from "../workbook/styles.js";
import { bandText, isKnown, valueText } from "./value-words.js";

/** Most characters that spreadsheet programs show of a message. */
const LONGEST_MESSAGE = 255;
const KEPT_IN_SIGHT = 2;
const TITLE = [
  "What was built at the released points",
  "One row per point. Write down what was measured and checked; what was not stays empty. Shaded cells are not for the point. Click on a cell to see what is planned.",
  "The file is read as it is: spotface check-built PROPOSAL --built THIS-FILE",
];
/** A cell of a point that does not have what the column asks for. */
const NOT_HERE = { type: "pattern", pattern: "darkTrellis", fgColor: { argb: "FFC8C8C4" } } as const;

/** A column of the sheet: a fact of the point that is filled in already, or one to be written down. */
export interface AsBuiltColumn {
  readonly column: BlankColumn;
  /** Text of a cell that is filled in already, by its point; null in a column to be filled in. */
  readonly given: ((job: PointJob, pack: WorkPack) => string | null) | null;
}

/** Writes title, headings, and a row for every point with its names, empty cells, checks and the plan as advice. */
export function writeAsBuilt(
  sheet: Worksheet,
  packs: readonly WorkPack[],
  { columns, lists }: { readonly columns: readonly AsBuiltColumn[]; readonly lists: ReadonlyMap<string, string> },
  styles: ReturnType<typeof styleBook>,
): void {
  TITLE.forEach((line, i) => {
    const cell = sheet.getCell(i + 1, KEPT_IN_SIGHT + 1);
    cell.value = line;
    cell.style = styles({ part: i === 0 ? "title" : "survey", wrap: false });
  });
  const headingRow = TITLE.length + 2;
  columns.forEach(({ column }, i) => {
    sheet.getColumn(i + 1).width = widthOf(column);
    const cell = sheet.getCell(headingRow, i + 1);
    cell.value = column.heading;
    cell.style = styles({ part: "our-heading", wrap: true });
  });
  const ready = readyStyles();
  let row = headingRow;
  for (const pack of packs) {
    for (const job of pack.points) {
      row += 1;
      columns.forEach(({ column, given }, i) => {
        const cell = sheet.getCell(row, i + 1);
        cell.style = ready(lookOf(column), false);
        if (given !== null) {
          const text = given(job, pack);
          if (text !== null) cell.value = spelledForParts(text);
          return;
        }
        const record = job.records.find(({ fact }) => fact === column.field.id);
        if (!record && column.field.id !== "notes") {
          cell.style = { ...cell.style, fill: NOT_HERE };
          return;
        }
        const at = `${column.letter}${row}`;
        checksOf(sheet).add(at, checkOf(column, at, lists.get(column.field.id) ?? null, record));
      });
    }
  }
  fitRowHeights(sheet);
  sheet.views = [{ state: "frozen", xSplit: KEPT_IN_SIGHT, ySplit: headingRow }];
  layOutPages(sheet);
  sheet.pageSetup.fitToWidth = pagesWide(sheet);
  repeatRows(sheet, headingRow, headingRow);
}

/** The check of a cell with the plan as its message, and with the band of the plan where there is one. */
function checkOf(column: BlankColumn, at: string, list: string | null, record: JobRecord | undefined): DataValidation {
  const usual = inputCheck(column, at, list, "en", ENGLISH);
  const expected = record?.expected ?? null;
  if (expected === null || !isKnown(expected.fact)) return usual;
  const { band } = expected;
  const planned = `Planned: ${valueText(expected.fact)}.${band === null ? "" : ` Allowed: ${bandText(band)}.`}`;
  const prompt = `${planned} ${usual.prompt ?? ""}`.slice(0, LONGEST_MESSAGE);
  if (band === null) return { ...usual, prompt };
  const within = [
    ...(band.lowest === null ? [] : [`${at}>=${band.lowest}`]),
    ...(band.highest === null ? [] : [`${at}<=${band.highest}`]),
  ].join(",");
  return {
    ...usual,
    type: "custom",
    formulae: [`OR(AND(ISNUMBER(${at}),${within}),${at}="-",${at}="tbc")`],
    prompt,
    errorTitle: "Outside what is allowed",
    error: `${planned} Measure again. If it stays, write it down as it is and tell the engineering office.`.slice(
      0,
      LONGEST_MESSAGE,
    ),
  };
}
