import type { ScreenedInput } from "../../../src/outputs/index.js";
import { COATED_SEAT, point, THREAD_TOO_SHORT, TORQUE_OPEN } from "../fake-findings.js";
import { number, rowOf, SURVEYS, screenedInput, sheetOf, text, workbookOf } from "./fake-survey.js";

/** A survey of so many rows, 40 columns wide; each third row fails and warns, each in cells of its own. */
export function largeInput(rows: number): ScreenedInput {
  const [survey] = SURVEYS;
  if (!survey) throw new Error("no survey to start from");
  const cells = (row: number) =>
    Array.from({ length: 40 }, (_, column) =>
      column % 3 === 0 ? number(row + column / 8) : text(`r${row} c${column}`),
    );
  const sheet = sheetOf("Pumps", [
    rowOf(
      3,
      Array.from({ length: 40 }, (_, column) => text(`heading ${column}`)),
    ),
    ...Array.from({ length: rows }, (_, index) => rowOf(index + 4, cells(index + 4))),
  ]);
  const points = Array.from({ length: rows }, (_, index) => {
    const row = index + 4;
    if (index % 3 > 0) return point(row, "pass", []);
    const findings = [THREAD_TOO_SHORT, COATED_SEAT].map((finding, place) => ({
      ...finding,
      facts: finding.facts.map((fact) => ({ ...fact, cells: [{ sheet: "Pumps", cell: `${"EF"[place]}${row}` }] })),
    }));
    return point(row, "fail", [...findings, TORQUE_OPEN]);
  });
  return screenedInput([{ ...survey, workbook: workbookOf([sheet]) }], points);
}

/** The same survey, which counts how often a row, a point or its place in the survey is looked at. */
export function countedInput(rows: number): { readonly input: ScreenedInput; readonly looks: () => number } {
  let looks = 0;
  const counted = <T extends object>(one: T): T =>
    new Proxy(one, {
      get: (target, key) => {
        looks += 1;
        return Reflect.get(target, key);
      },
    });
  const { surveys, points, ...rest } = largeInput(rows);
  return {
    input: {
      ...rest,
      points: [...points].map(counted),
      surveys: surveys.map((survey) => ({
        ...survey,
        workbook: {
          ...survey.workbook,
          sheets: survey.workbook.sheets.map((sheet) => ({ ...sheet, rows: sheet.rows.map(counted) })),
        },
      })),
    },
    looks: () => looks,
  };
}
