import type { PointRecord } from "../records/index.js";

/** The ids of the points of a run, and which rows share one. */
export class PointIds {
  readonly #ids = new Map<PointRecord, string>();
  readonly #first = new Map<string, PointRecord>();
  /** Only of ids that stand in more than one row. */
  readonly #rows = new Map<string, PointRecord[]>();

  /** Notes the id of a row and gives it back; null for a row that says too little. */
  add(record: PointRecord, id: string | null): string | null {
    if (id === null) return null;
    this.#ids.set(record, id);
    const first = this.#first.get(id);
    if (first === undefined) this.#first.set(id, record);
    else if (first !== record) {
      const rows = this.#rows.get(id) ?? [first];
      rows.push(record);
      this.#rows.set(id, rows);
    }
    return id;
  }

  idOf(record: PointRecord): string | null {
    return this.#ids.get(record) ?? null;
  }

  /** The other rows with the id of this one, over all files. */
  othersOf(record: PointRecord): readonly PointRecord[] {
    const rows = this.#rows.get(this.idOf(record) ?? "");
    return rows?.filter((other) => other !== record) ?? [];
  }
}
