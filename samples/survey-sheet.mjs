/** Lays out a sheet of the sample survey: title block, group headings, headings, machines merged over their points. */

const THIN = { style: "thin", color: { argb: "FFB4B4B4" } };
const BOX = { top: THIN, left: THIN, bottom: THIN, right: THIN };
/** A font by its name: without one, spreadsheet programs take a serif face. */
const font = (more) => ({ name: "Calibri", family: 2, size: 11, ...more });
const fill = (argb) => ({ type: "pattern", pattern: "solid", fgColor: { argb } });

/**
 * Writes one sheet of points.
 *
 * @param workbook - exceljs workbook
 * @param sheet - name, title lines, groups of columns, units, machines with their points, and closing lines
 */
export function writeSheet(workbook, sheet) {
  const columns = sheet.groups.flatMap((group) => group.columns);
  const page = workbook.addWorksheet(sheet.name, {
    pageSetup: { paperSize: 8, orientation: "landscape", fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
    views: [{ state: "frozen", xSplit: sheet.frozenColumns, ySplit: sheet.title.length + (sheet.units ? 3 : 2) }],
  });
  page.columns = columns.map(({ width }) => ({ width }));
  writeTitle(page, sheet.title, columns.length);
  writeHeadings(page, sheet);
  for (const part of sheet.parts) {
    writeSection(page, part.section, columns.length);
    for (const machine of part.machines) writeMachine(page, machine, sheet.mergedColumns, columns);
  }
  writeClosing(page, sheet, columns.length);
}

function writeTitle(page, lines, width) {
  for (const [i, cells] of lines.entries()) {
    const row = page.addRow(cells);
    if (i === 0) {
      page.mergeCells(row.number, 1, row.number, width);
      row.getCell(1).font = font({ bold: true, size: 15 });
      row.height = 24;
    } else row.font = font({ color: { argb: "FF404040" } });
    for (const [column, value] of cells.entries()) {
      if (value instanceof Date) row.getCell(column + 1).numFmt = "dd/mm/yyyy";
    }
  }
}

function writeHeadings(page, { groups, units }) {
  const upper = page.addRow(groups.flatMap(({ name, columns }) => columns.map((_, i) => (i === 0 ? name : null))));
  const lower = page.addRow(groups.flatMap(({ columns }) => columns.map(({ heading }) => heading)));
  let first = 1;
  for (const { columns } of groups) {
    if (columns.length > 1) page.mergeCells(upper.number, first, upper.number, first + columns.length - 1);
    first += columns.length;
  }
  const rows = [upper, lower];
  if (units) rows.push(page.addRow(groups.flatMap(({ columns }) => columns.map(({ unit }) => unit ?? null))));
  lower.height = 46;
  for (const row of rows) {
    for (let column = 1; column < first; column++) {
      const cell = row.getCell(column);
      cell.font = font({ bold: row !== rows[2], italic: row === rows[2] });
      cell.fill = fill(row === upper ? "FFC9D7E6" : "FFE4ECF4");
      cell.border = BOX;
      cell.alignment = { horizontal: "center", vertical: "middle", wrapText: true };
    }
  }
}

function writeSection(page, text, width) {
  const row = page.addRow([text]);
  page.mergeCells(row.number, 1, row.number, width);
  row.getCell(1).font = font({ bold: true });
  row.getCell(1).fill = fill("FFF3EBD8");
  row.getCell(1).border = BOX;
}

/** One machine: its own cells stand in the first row of its points and are merged down over them. */
function writeMachine(page, machine, mergedColumns, columns) {
  const first = page.rowCount + 1;
  for (const [i, point] of machine.points.entries()) {
    const cells = point.cells.map((value) => (value === null || value === "" ? null : value));
    for (const [n, column] of mergedColumns.entries()) cells[column - 1] = i === 0 ? machine.cells[n] : null;
    const row = page.addRow(cells.map((value) => (typeof value === "function" ? value(first + i) : value)));
    row.hidden = point.hidden === true;
    for (const [n, column] of columns.entries()) {
      const cell = row.getCell(n + 1);
      cell.border = BOX;
      cell.alignment = { horizontal: column.left ? "left" : "center", vertical: "middle", wrapText: true };
      if (cell.value instanceof Date) cell.numFmt = "dd/mm/yyyy";
    }
  }
  const last = first + machine.points.length - 1;
  if (last > first) for (const column of mergedColumns) page.mergeCells(first, column, last, column);
}

function writeClosing(page, { total, notes }, width) {
  const last = page.rowCount;
  const row = page.addRow([]);
  row.getCell(1).value = total.text;
  row.getCell(total.column).value = total.formula(last);
  row.font = font({ bold: true });
  for (let column = 1; column <= width; column++) row.getCell(column).border = { top: { style: "medium" } };
  page.addRow([]);
  for (const note of notes) {
    const line = page.addRow([note]);
    page.mergeCells(line.number, 1, line.number, width);
    line.getCell(1).font = font({ italic: true, color: { argb: "FF404040" } });
  }
}

/** The last sheet explains the marks; it holds no points. */
export function writeLegend(workbook) {
  const page = workbook.addWorksheet("Legend", {
    pageSetup: { paperSize: 9, orientation: "portrait", fitToPage: true, fitToWidth: 1, fitToHeight: 0 },
  });
  page.columns = [{ width: 12 }, { width: 90 }];
  for (const cells of [
    ["Marks used on both sheets / Abkürzungen"],
    ["tbc, ?", "not known on the day of the survey, to be found out"],
    ["-", "does not apply, or nobody looked"],
    ['"', "as above / wie oben"],
    ["k.A.", "keine Angabe: no statement"],
    ["±", "accuracy of the measurement, in the unit of its column"],
    ["AS, BS", "Antriebsseite, Gegenseite: drive end, non-drive end"],
  ]) {
    const row = page.addRow(cells);
    row.alignment = { vertical: "top", wrapText: cells.length > 1 };
    if (cells.length === 1) row.font = font({ bold: true, size: 13 });
  }
}
