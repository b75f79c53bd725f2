/** Lays out one hall of the survey: title block, group headings, headings, machines merged over their points. */

const THIN = { style: "thin", color: { argb: "FFB4B4B4" } };
const BOX = { top: THIN, left: THIN, bottom: THIN, right: THIN };
const GROUP_LINE = { style: "medium", color: { argb: "FF5F6B78" } };
const font = (more) => ({ name: "Calibri", family: 2, size: 10, ...more });
const fill = (argb) => ({ type: "pattern", pattern: "solid", fgColor: { argb } });
/** Of a machine as a whole; they stand once and are merged down over its points. */
const OF_MACHINE = ["asset_tag", "machine_name", "machine_type", "criticality"];

/**
 * Writes one sheet.
 *
 * @param workbook - exceljs workbook
 * @param sheet - name, title lines, words for the groups of columns
 * @param columns - of each: fact, group, heading, and `write`, which turns a value into what stands in the cell
 * @param points - of this sheet, in order
 */
export function writeHall(workbook, sheet, columns, points) {
  const titles = sheet.title.length;
  const page = workbook.addWorksheet(sheet.name, {
    pageSetup: { paperSize: 8, orientation: "landscape", fitToPage: true, fitToWidth: 6, fitToHeight: 0 },
    views: [{ state: "frozen", xSplit: 3, ySplit: titles + 2 }],
  });
  page.columns = columns.map((column) => ({ width: widthFor(column, points) }));
  for (const [i, line] of sheet.title.entries()) {
    const row = page.addRow([line]);
    row.font = i === 0 ? font({ bold: true, size: 14 }) : font({ color: { argb: "FF404040" } });
  }
  writeHeadings(page, sheet, columns);
  for (const machine of new Set(points.map((point) => point.machine))) {
    writeMachine(
      page,
      { columns, ditto: sheet.ditto },
      points.filter((point) => point.machine === machine),
    );
  }
  for (const note of ["", ...sheet.notes]) page.addRow(note === "" ? [] : [note]).font = font({ italic: true });
  page.pageSetup.printTitlesRow = `${titles + 1}:${titles + 2}`;
  page.pageSetup.printTitlesColumn = "A:C";
}

/** Wide enough for every cell on one line; a heading may break between its words. */
function widthFor({ heading, write, fact }, points) {
  const texts = points
    .map(({ facts }) => write(facts[fact]))
    .map((value) => (value instanceof Date ? "00/00/0000" : value));
  const longest = Math.max(...[...heading.split(" "), ...texts].map((text) => String(text ?? "").length));
  return Math.max(8, Math.round(longest * 1.05) + 2);
}

function writeHeadings(page, sheet, columns) {
  const opens = (i) => i === 0 || columns[i].group !== columns[i - 1].group;
  const upper = page.addRow(columns.map(({ group }, i) => (opens(i) ? (sheet.groups[group] ?? group) : null)));
  const lower = page.addRow(columns.map(({ heading }) => heading));
  let first = 1;
  for (let i = 1; i <= columns.length; i++) {
    if (i < columns.length && !opens(i)) continue;
    if (i > first) page.mergeCells(upper.number, first, upper.number, i);
    first = i + 1;
  }
  lower.height = 58;
  for (const row of [upper, lower]) {
    for (let i = 0; i < columns.length; i++) {
      const cell = row.getCell(i + 1);
      cell.font = font({ bold: true });
      cell.fill = fill(row === upper ? "FFC9D7E6" : "FFE4ECF4");
      cell.border = opens(i) ? { ...BOX, left: GROUP_LINE } : BOX;
      cell.alignment = { horizontal: "center", vertical: "middle", wrapText: true };
    }
  }
}

/** What is the machine's own stands in the first row of its points and is merged down over them. */
function writeMachine(page, { columns, ditto }, points) {
  const first = page.rowCount + 1;
  for (const [i, { facts }] of points.entries()) {
    const row = page.addRow(
      columns.map(({ fact, write }) => {
        const above = i > 0 ? points[i - 1].facts[fact] : undefined;
        if (i > 0 && OF_MACHINE.includes(fact)) return null;
        return ditto.includes(fact) && above !== undefined && above === facts[fact] ? '"' : write(facts[fact]);
      }),
    );
    for (const [n, { fact, group }] of columns.entries()) {
      const cell = row.getCell(n + 1);
      cell.font = font({});
      cell.border = n > 0 && group !== columns[n - 1].group ? { ...BOX, left: GROUP_LINE } : BOX;
      cell.alignment = { horizontal: fact === "notes" ? "left" : "center", vertical: "middle", wrapText: true };
      if (cell.value instanceof Date) cell.numFmt = "dd/mm/yyyy";
    }
  }
  const last = first + points.length - 1;
  for (const [n, { fact }] of columns.entries()) {
    if (last > first && OF_MACHINE.includes(fact)) page.mergeCells(first, n + 1, last, n + 1);
  }
}
