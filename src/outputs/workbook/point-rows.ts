import type { PointResult } from "../../screening/index.js";
import type { ResultRow } from "./result-columns.js";
import type { ScreenedSurvey } from "./sheet-results.js";

/**
 * Finds the points of a sheet by their rows while a sheet is written from the top down; points are judged as they
 * are come to. Those that come early wait.
 */
export class PointRows {
  readonly #points: Iterator<PointResult>;
  readonly #early = new Map<number, PointResult>();
  readonly #hidden: ReadonlySet<number>;
  readonly #remarks = new Map<number, number>();

  /** @param points - of this sheet */
  constructor(points: Iterable<PointResult>, { workbook, survey }: ScreenedSurvey, sheet: string | null) {
    this.#points = points[Symbol.iterator]();
    const raw = workbook.sheets.find(({ name }) => name === sheet);
    this.#hidden = new Set(raw?.rows.filter(({ hidden }) => hidden).map(({ row }) => row));
    for (const { sheet: on, cell } of survey.problems) {
      if (on !== sheet || cell === null) continue;
      const row = Number(cell.replace(/^[A-Z]+/, ""));
      this.#remarks.set(row, (this.#remarks.get(row) ?? 0) + 1);
    }
  }

  /** What is to be said beside a row; undefined where it holds no point. */
  at(row: number): ResultRow | undefined {
    const point = this.#pointAt(row);
    return point && { point, hidden: this.#hidden.has(row), remarks: this.#remarks.get(row) ?? 0 };
  }

  #pointAt(row: number): PointResult | undefined {
    const early = this.#early.get(row);
    if (early) {
      this.#early.delete(row);
      return early;
    }
    for (let next = this.#points.next(); !next.done; next = this.#points.next()) {
      if (next.value.row === row) return next.value;
      this.#early.set(next.value.row, next.value);
    }
    return undefined;
  }
}
