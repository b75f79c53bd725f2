import type { CellPlace } from "../../base/index.js";
import { type Facts, findFact, stateInWords } from "../../facts/index.js";
import type { PointRecord } from "../../records/index.js";
import { namesOf, siteOfRow } from "../identity.js";
import type { Disagreement, Finding, GroupRow, GroupShown } from "../result.js";
import type { GroupIndex } from "./group-index.js";
import type { GroupJudge } from "./group-judge.js";

/** Cells shown of each value that the rows of a group state. */
const CELLS_SHOWN = 3;

/** A row of the run with its facts. */
export interface RowAt {
  readonly record: PointRecord;
  readonly facts: Facts;
}

/** One group as results tell of it; rows and findings are made when they are asked for, since there may be many. */
export class GroupView implements GroupShown {
  readonly id: string;
  readonly kind: string;
  readonly title: string;
  readonly #group: number;
  readonly #index: GroupIndex;
  readonly #judges: readonly GroupJudge[];
  readonly #rowAt: (row: number) => RowAt;

  /** @param judges - of the rules that have something to list */
  constructor(index: GroupIndex, group: number, judges: readonly GroupJudge[], rowAt: (row: number) => RowAt) {
    this.id = index.idOf(group);
    this.kind = index.compiled.group.id;
    this.title = index.compiled.group.title;
    this.#group = group;
    this.#index = index;
    this.#judges = judges;
    this.#rowAt = rowAt;
  }

  get key(): GroupShown["key"] {
    const row = this.#rowAt(this.#index.spellerOf(this.#group));
    const site = siteOfRow(row.facts, null);
    const facts = this.#index.factsOf(this.#group, row.facts);
    return [
      ...(site?.stated ? [{ fact: "site", value: site.name }] : []),
      ...this.#index.compiled.group.key.map((fact) => ({ fact, value: keyInWords(fact, facts) })),
    ];
  }

  get rows(): readonly GroupRow[] {
    return [...this.#index.rowsOf(this.#group)].map((at) => {
      const { record, facts } = this.#rowAt(at);
      return { file: record.file, sheet: record.sheet, row: record.row, point: namesOf(facts).point };
    });
  }

  get disagreements(): readonly Disagreement[] {
    const { states } = this.#index.sumOf(this.#group);
    return this.#index.compiled.members.flatMap(({ id, is, fact }) => {
      const state = states.get(id);
      const disagree = is === "same" && fact !== null && state?.known === false && state.reason === "conflicting";
      return disagree ? [{ fact, values: this.#statedOf(fact) }] : [];
    });
  }

  get findings(): readonly Finding[] {
    return this.#judges.map((judge) => judge.findingOn(this.#group));
  }

  #statedOf(fact: string): Disagreement["values"] {
    const values = new Map<string, { rows: number; cells: (CellPlace & { file: string })[] }>();
    for (const at of this.#index.rowsOf(this.#group)) {
      const { record, facts } = this.#rowAt(at);
      const state = facts.get(fact);
      if (!state?.known) continue;
      const value = stateInWords(fact, state);
      const stated = values.get(value) ?? { rows: 0, cells: [] };
      values.set(value, stated);
      stated.rows += 1;
      const cells = facts.cells?.(fact) ?? (state.origin.kind === "cells" ? state.origin.cells : []);
      for (const { sheet, cell } of cells) {
        if (stated.cells.length < CELLS_SHOWN) stated.cells.push({ file: record.file, sheet, cell });
      }
    }
    return [...values].sort(([a], [b]) => (a < b ? -1 : 1)).map(([value, stated]) => ({ value, ...stated }));
  }
}

function keyInWords(fact: string, facts: Facts): string {
  const state = facts.get(fact);
  if (state?.known && typeof state.value === "string" && findFact(fact)?.kind === "choice") return state.value;
  return stateInWords(fact, state);
}
