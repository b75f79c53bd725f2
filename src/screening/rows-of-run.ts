import type { Facts } from "../facts/index.js";
import type { PointRecord, Survey } from "../records/index.js";
import type { TableLookup } from "../rulebook/index.js";
import type { GroupsOfPoint } from "./groups/groups-of-point.js";
import type { ModelShelf } from "./models.js";
import { PointFacts, type PointOnItsWay } from "./point-facts.js";

/** What the facts of rows are made with beside their records. */
export interface FactsBesideRecords {
  readonly shelf: ModelShelf;
  readonly tables: TableLookup;
  /** The facts of the groups that a row is in, where some rule of points asks for them. */
  groupsOf(row: number, record: Facts): GroupsOfPoint | null;
}

/** All rows of a run, survey after survey, numbered from 0. */
export class RowsOfRun {
  readonly length: number;
  readonly #surveys: readonly Survey[];
  readonly #starts: readonly number[];
  readonly #beside: FactsBesideRecords;
  /** Only for those who ask for single rows. */
  readonly #places = new Map<Survey, ReadonlyMap<PointRecord, number>>();

  constructor(surveys: readonly Survey[], beside: FactsBesideRecords) {
    this.#surveys = surveys;
    this.#beside = beside;
    const starts = [0];
    for (const { records } of surveys) starts.push((starts.at(-1) ?? 0) + records.length);
    this.#starts = starts;
    this.length = starts.at(-1) ?? 0;
  }

  *all(): Iterable<PointOnItsWay> {
    for (const survey of this.#surveys) yield* this.of(survey);
  }

  *of(survey: Survey): Iterable<PointOnItsWay> {
    const { from } = this.stretchOf(survey);
    for (const [i, record] of survey.records.entries()) yield this.#point(record, survey, from + i);
  }

  /** @throws RangeError for a row that the run does not have */
  at(row: number): PointOnItsWay {
    const survey = this.surveyOf(row);
    const record = survey.records[row - this.stretchOf(survey).from];
    if (!record) throw new RangeError(`the run has no row ${row}`);
    return this.#point(record, survey, row);
  }

  /** @throws RangeError for a row that the run does not have */
  surveyOf(row: number): Survey {
    const survey = this.#surveys[this.#starts.findIndex((start) => start > row) - 1];
    if (!survey) throw new RangeError(`the run has no row ${row}`);
    return survey;
  }

  /** The rows of a survey: the first, and the one behind the last. */
  stretchOf(survey: Survey): { readonly from: number; readonly until: number } {
    const from = this.#starts[this.#surveys.indexOf(survey)] ?? 0;
    return { from, until: from + survey.records.length };
  }

  /** @throws RangeError for a record that does not stand in the survey, or a survey that is not of the run */
  rowOf(record: PointRecord, survey: Survey): number {
    const places = this.#places.get(survey) ?? new Map(survey.records.map((one, place) => [one, place]));
    this.#places.set(survey, places);
    const place = places.get(record);
    if (place === undefined || !this.#surveys.includes(survey)) {
      throw new RangeError(`row ${record.row} of ${record.file} is not in this run`);
    }
    return this.stretchOf(survey).from + place;
  }

  #point(record: PointRecord, survey: Survey, at: number): PointOnItsWay {
    const { shelf, tables, groupsOf } = this.#beside;
    const model = shelf.modelOf(record.facts, survey.factsAsked.has("sensor_model"));
    return { record, survey, at, facts: new PointFacts(record.facts, model, tables, groupsOf(at, record.facts)) };
  }
}
