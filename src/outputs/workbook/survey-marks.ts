import type { Outcome, Verdict } from "../../base/index.js";
import type { PointRecord } from "../../records/index.js";
import type { PointResult } from "../../screening/index.js";
import { readAddress } from "../../workbook/index.js";
import type { RuleIndex } from "../findings/rule-index.js";
import { type CellMark, GRAVITY, gravity, marksOf } from "./offending.js";
import type { ScreenedSurvey } from "./sheet-results.js";

/** Columns of a sheet; a place is one number of row and column. */
const COLUMNS = 16_384;
/** Rows of a sheet and more. */
const ROWS = 2 ** 21;

/** A cell that is marked. */
export interface MarkedCell {
  readonly row: number;
  readonly column: number;
  readonly outcome: Outcome;
}

interface SheetMarks {
  readonly rows: Set<number>;
  /** By place: gravity and the row of the point that marks it first, as one number. */
  readonly cells: Map<number, number>;
}

/**
 * Which rows of a survey hold points, and which cells are marked by whom: a few numbers for each, so that a hundred
 * thousand points with all that is to be said of them need no room at once. Points are judged again where they are
 * written.
 */
export class SurveyMarks {
  readonly verdicts: Record<Verdict, number> = { pass: 0, warn: 0, fail: 0 };
  readonly #rules: RuleIndex;
  readonly #sheets = new Map<string | null, SheetMarks>();
  readonly #records = new Map<string | null, Map<number, PointRecord>>();

  constructor({ survey }: ScreenedSurvey, rules: RuleIndex) {
    this.#rules = rules;
    for (const record of survey.records) {
      const records = this.#records.get(record.sheet) ?? new Map<number, PointRecord>();
      this.#records.set(record.sheet, records);
      records.set(record.row, record);
    }
  }

  /** Takes note of a point of this survey. */
  add(point: PointResult): void {
    this.verdicts[point.verdict] += 1;
    this.#sheet(point.sheet).rows.add(point.row);
    for (const mark of this.#marksOf(point)) {
      const place = placeOf(mark);
      if (place === null) continue;
      const { cells } = this.#sheet(mark.sheet);
      const known = cells.get(place);
      // A cell shared by many rows keeps the first of the gravest words on it.
      if (known === undefined || gravity(mark.outcome) < Math.floor(known / ROWS)) cells.set(place, owned(mark, point));
    }
  }

  /** Rows of a sheet that hold points. */
  rowsOf(sheet: string | null): ReadonlySet<number> {
    return this.#sheets.get(sheet)?.rows ?? new Set();
  }

  /** The marked cells of a sheet. */
  *cellsOf(sheet: string | null): Iterable<MarkedCell> {
    for (const [place, owner] of this.#sheets.get(sheet)?.cells ?? []) {
      const outcome = GRAVITY[Math.floor(owner / ROWS)] ?? "undecided";
      yield { row: Math.floor(place / COLUMNS), column: (place % COLUMNS) + 1, outcome };
    }
  }

  /** The marks that a point has made and that hold, when it is judged again. */
  heldBy(point: PointResult): readonly CellMark[] {
    return this.#marksOf(point).filter((mark) => {
      const place = placeOf(mark);
      return place !== null && this.#sheets.get(mark.sheet)?.cells.get(place) === owned(mark, point);
    });
  }

  #marksOf(point: PointResult): readonly CellMark[] {
    return marksOf(point, this.#records.get(point.sheet)?.get(point.row), this.#rules);
  }

  #sheet(name: string | null): SheetMarks {
    const known = this.#sheets.get(name) ?? { rows: new Set(), cells: new Map() };
    this.#sheets.set(name, known);
    return known;
  }
}

function placeOf({ cell }: CellMark): number | null {
  const address = readAddress(cell);
  return address === null ? null : address.row * COLUMNS + address.column - 1;
}

function owned(mark: CellMark, point: PointResult): number {
  return gravity(mark.outcome) * ROWS + point.row;
}
