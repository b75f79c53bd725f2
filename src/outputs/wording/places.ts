import { plainWords } from "../../facts/index.js";
import type { PointResult } from "../../screening/index.js";

/** Where a row stands ("survey.xlsx > Pumps, row 17"). */
export function rowInWords(point: Pick<PointResult, "file" | "sheet" | "row">): string {
  return point.sheet === null ? `${point.file}, line ${point.row}` : `${point.file} > ${point.sheet}, row ${point.row}`;
}

/**
 * Where on which machine a point sits, as far as it is known ("cooling water pump 3, drive end, horizontal").
 * Falls back on the name of the point, then on its row.
 */
export function pointInWords(point: PointResult): string {
  const parts = [point.component, point.bearingPosition, point.direction].flatMap((choice) =>
    choice === null ? [] : [plainWords(choice)],
  );
  if (point.machine !== null) parts.unshift(point.machine);
  if (parts.length > 0) return parts.join(", ");
  return point.point ?? rowInWords(point);
}
