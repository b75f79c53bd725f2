import type { PointRecord, Survey } from "../records/index.js";
import { namesOf, pointIdOf } from "../screening/index.js";
import type { RowAt } from "./result.js";
import { saidOf } from "./said.js";

/** A row with the survey that it stands in. */
export interface Row {
  readonly record: PointRecord;
  readonly survey: Survey;
}

/** The rows of one side by the id of their point. */
export class RowsById {
  readonly #rows = new Map<string, Row | readonly Row[]>();
  readonly #unnamed: Row[] = [];

  /** @param siteName - the site where neither row nor site column names it */
  constructor(surveys: readonly Survey[], siteName: string | null) {
    for (const survey of surveys) {
      for (const record of survey.records) this.#add({ record, survey }, pointIdOf(record.facts, siteName));
    }
  }

  /** All rows with an id, in the order in which the id is met first. */
  [Symbol.iterator](): IterableIterator<readonly [string, readonly Row[]]> {
    return entriesOf(this.#rows);
  }

  get unnamed(): readonly Row[] {
    return this.#unnamed;
  }

  of(id: string): readonly Row[] {
    const rows = this.#rows.get(id);
    return rows === undefined ? [] : listOf(rows);
  }

  #add(row: Row, id: string | null): void {
    if (id === null) {
      this.#unnamed.push(row);
      return;
    }
    const known = this.#rows.get(id);
    this.#rows.set(id, known === undefined ? row : [...listOf(known), row]);
  }
}

function listOf(rows: Row | readonly Row[]): readonly Row[] {
  return "record" in rows ? [rows] : rows;
}

function* entriesOf(
  rows: ReadonlyMap<string, Row | readonly Row[]>,
): IterableIterator<readonly [string, readonly Row[]]> {
  for (const [id, one] of rows) yield [id, listOf(one)];
}

/** A row as results name it. */
export function rowAt({ record }: Row): RowAt {
  const { file, sheet, row } = record;
  return { file, sheet, row };
}

/** The asset tag of a row as tags are compared; null where it is not known. */
export function tagOf({ record }: Row): string | null {
  const said = saidOf(record.facts, "asset_tag");
  return said?.known && typeof said.value === "string" ? said.value.normalize("NFC").trim() : null;
}

/** The one site that all rows name in a column of their own; null where they name none, or several. */
export function onlySite(surveys: readonly Survey[]): string | null {
  const sites = new Set<string | null>();
  for (const survey of surveys) {
    for (const { facts } of survey.records) {
      const said = saidOf(facts, "site");
      sites.add(said?.known && typeof said.value === "string" ? said.value : null);
      if (sites.size > 1) return null;
    }
  }
  return [...sites][0] ?? null;
}

/** How many parts of the place two rows have in common; for finding a likely partner. */
export function partsInCommon(one: Row, other: Row): number {
  const [a, b] = [namesOf(one.record.facts), namesOf(other.record.facts)];
  const parts = ["component", "bearingPosition", "direction"] as const;
  return parts.filter((part) => a[part] !== null && a[part] === b[part]).length;
}
