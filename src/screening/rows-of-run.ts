import type { Facts } from "../facts/index.js";
import type { PointRecord, Survey } from "../records/index.js";
import type { GroupsOfPoint } from "./groups/groups-of-point.js";
import type { ModelShelf } from "./models.js";
import { PointFacts, type PointOnItsWay } from "./point-facts.js";

/** All rows of a run, survey after survey, numbered from 0. */
export class RowsOfRun {
  readonly length: number;
  readonly #surveys: readonly Survey[];
  readonly #starts: readonly number[];
  readonly #shelf: ModelShelf;
  /** Only for those who ask for single rows. */
  #places: Map<PointRecord, number> | null = null;
  readonly #groupsOf: (row: number, record: Facts) => GroupsOfPoint | null;

  /** @param groupsOf - the facts of the groups that a row is in, where some rule of points asks for them */
  constructor(
    surveys: readonly Survey[],
    shelf: ModelShelf,
    groupsOf: (row: number, record: Facts) => GroupsOfPoint | null,
  ) {
    this.#surveys = surveys;
    this.#shelf = shelf;
    this.#groupsOf = groupsOf;
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

  /** @throws RangeError for a record that is in none of the surveys */
  rowOf(record: PointRecord): number {
    this.#places ??= new Map(this.#surveys.flatMap(({ records }) => records).map((one, row) => [one, row]));
    const row = this.#places.get(record);
    if (row === undefined) throw new RangeError(`row ${record.row} of ${record.file} is not in this run`);
    return row;
  }

  #point(record: PointRecord, survey: Survey, at: number): PointOnItsWay {
    const model = this.#shelf.modelOf(record.facts, survey.factsAsked.has("sensor_model"));
    return { record, survey, at, facts: new PointFacts(record.facts, model, this.#groupsOf(at, record.facts)) };
  }
}
