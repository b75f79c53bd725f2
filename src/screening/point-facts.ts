import type { CellPlace } from "../base/index.js";
import type { AskedFacts, FactState, Facts, Said } from "../facts/index.js";
import type { PointRecord, Survey } from "../records/index.js";
import type { TableLookup } from "../rulebook/index.js";
import { ChangedRecord } from "./changed-record.js";
import { DERIVED } from "./derive.js";
import type { GroupsOfPoint } from "./groups/groups-of-point.js";
import type { ModelChoice } from "./models.js";

/**
 * All facts of a point: those of its record and of its groups, over them those of its sensor model, over them those
 * looked up in tables and the derived ones.
 */
export class PointFacts implements Facts {
  readonly #record: Facts;
  readonly model: ModelChoice;
  readonly tables: TableLookup;
  readonly #groups: GroupsOfPoint | null;
  #derived: Map<string, FactState> | null = null;

  /** @param groups - where a rule of points asks for facts of the groups that the point is in */
  constructor(record: Facts, model: ModelChoice, tables: TableLookup, groups: GroupsOfPoint | null = null) {
    this.#record = record;
    this.model = model;
    this.tables = tables;
    this.#groups = groups;
  }

  get(id: string): FactState | undefined {
    const derive = DERIVED.get(id);
    if (!derive) return this.tables.get(id, this) ?? this.#ofModel(id) ?? this.#record.get(id) ?? this.#groups?.get(id);
    this.#derived ??= new Map();
    const known = this.#derived.get(id) ?? derive(this);
    this.#derived.set(id, known);
    return known;
  }

  /** The point as it would be if some facts of its record, or its model, were others; what is derived follows. */
  changed(changes: ReadonlyMap<string, FactState>, model: ModelChoice = this.model): PointFacts {
    return new PointFacts(new ChangedRecord(this.#record, changes), model, this.tables, this.#groups);
  }

  has(id: string): boolean {
    return this.get(id) !== undefined;
  }

  /** What the record says of a fact. */
  said(id: string): Said | undefined {
    return this.#record.said?.(id);
  }

  cells(id: string): readonly CellPlace[] {
    if (this.#record.cells && !this.#isOfModel(id)) return this.#record.cells(id);
    const origin = this.get(id)?.origin;
    return origin?.kind === "cells" ? origin.cells : [];
  }

  get family(): number | undefined {
    return this.#record.family;
  }

  /**
   * Writes the sameness of several facts.
   *
   * @param ofGroups - facts of groups
   * @returns the place behind the last
   */
  keyNumbers(ofRecord: AskedFacts, ofGroups: readonly string[], into: Int32Array, at: number): number {
    let next = at;
    if (this.#record.samenesses) next = this.#record.samenesses(ofRecord, into, next);
    else for (const id of ofRecord.ids) into[next++] = this.#record.sameness?.(id) ?? 0;
    for (const id of ofGroups) into[next++] = this.#groups?.sameness(id) ?? 0;
    return next;
  }

  *[Symbol.iterator](): Iterator<readonly [string, FactState]> {
    const ids = new Set([...this.#record].map(([id]) => id));
    if (this.model.ok) for (const id of this.model.facts.keys()) ids.add(id);
    else ids.add("sensor_model");
    for (const id of [...ids, ...this.tables.facts, ...DERIVED.keys()]) {
      const state = this.get(id);
      if (state) yield [id, state];
    }
  }

  /** The fact that names the model stands in the record, also where no model is known by that name. */
  #isOfModel(id: string): boolean {
    return this.model.ok && this.model.facts.has(id);
  }

  #ofModel(id: string): FactState | undefined {
    if (this.model.ok) return this.model.facts.get(id);
    if (id !== "sensor_model") return undefined;
    return { known: false, reason: this.model.reason, origin: this.#record.get(id)?.origin ?? { kind: "none" } };
  }
}

/** A point on its way: its record, and all its facts. */
export interface PointOnItsWay {
  readonly record: PointRecord;
  readonly survey: Survey;
  /** Its place among all rows of the run, from 0. */
  readonly at: number;
  readonly facts: PointFacts;
}
