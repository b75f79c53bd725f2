import { type CellPlace, columnNumber, formatNumber } from "../../base/index.js";
import type { Survey } from "../../records/index.js";
import { type CellValue, type RawWorkbook, readAddress } from "../../workbook/index.js";

/** What a cell of the survey holds, and under which heading it stands. */
export interface CellRead {
  readonly text: string;
  readonly heading: string | null;
  /** The unit in which bare numbers of the column were read. */
  readonly unit: string | null;
}

/** Looks cells of one survey up. */
export type CellsRead = (place: CellPlace) => CellRead | null;

/** Makes the cells of a survey ready to be looked up, beside how their columns were read. */
export function cellsRead(survey: Pick<Survey, "columns">, workbook: RawWorkbook): CellsRead {
  const rows = new Map(
    workbook.sheets.map((sheet) => [sheet.name, new Map(sheet.rows.map((row) => [row.row, row]))] as const),
  );
  return ({ sheet, cell }) => {
    const address = readAddress(cell);
    const value = address ? rows.get(sheet)?.get(address.row)?.at(address.column) : undefined;
    if (!address || value === undefined) return null;
    const column = survey.columns.find(
      (one) => one.sheet === sheet && columnNumber(one.column) === address.column && one.facts.length > 0,
    );
    return { text: valueInWords(value), heading: column?.heading ?? null, unit: column?.unit ?? null };
  };
}

function valueInWords(value: CellValue): string {
  switch (value.kind) {
    case "text":
      return `"${value.text}"`;
    case "number":
      return formatNumber(value.number);
    case "boolean":
      return value.boolean ? "TRUE" : "FALSE";
    case "date":
      return value.iso;
    case "error":
      return value.text;
    case "no-result":
      return "a formula without a saved result";
    case "unusable":
      return value.why;
  }
}
