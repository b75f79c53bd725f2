import { sha256OfData } from "../base/index.js";
import type { Facts } from "../facts/index.js";
import type { ImportProblem, PointRecord, Survey } from "../records/index.js";
import type { NotAsked, SurveyShown } from "../screening/index.js";
import type { Row } from "./rows.js";

interface PairSurvey {
  readonly built: Survey | null;
  readonly proposed: Survey | null;
  readonly survey: Survey;
  readonly records: PointRecord[];
}

/**
 * The surveys of the run over what was built. Rows of a built survey that belong to rows of one and the same proposed
 * survey make up a survey of their own: which facts it asks depends on both.
 */
export class PairSurveys {
  readonly #pairs: PairSurvey[] = [];

  /** Adds a row of a built survey, with the facts by which it is judged. */
  add(built: Row, proposed: Row | null, facts: Facts): Row {
    const { file, sheet, row } = built.record;
    const record = facts === built.record.facts ? built.record : { file, sheet, row, facts };
    return this.#put(record, built.survey, proposed?.survey ?? null);
  }

  /** Adds a row that is not built yet: it counts in the groups of those that are. */
  addNotBuilt(proposed: Row): void {
    this.#put(proposed.record, null, proposed.survey);
  }

  get surveys(): readonly Survey[] {
    return this.#pairs.map(({ survey }) => survey);
  }

  /**
   * The built surveys as results tell of them.
   *
   * @param shown - the surveys of the run, in the order of `surveys`
   */
  shownFor(survey: Survey, shown: readonly SurveyShown[]): SurveyShown {
    const own = shown.filter((_, i) => this.#pairs[i]?.built === survey);
    const remarks = new Map<string, ImportProblem>();
    for (const problem of own.flatMap(({ problems }) => problems)) remarks.set(JSON.stringify(problem), problem);
    const notAsked = new Map<string, NotAsked>();
    for (const one of own.flatMap((pair) => pair.notAsked)) notAsked.set(`${one.model ?? ""} ${one.rule}`, one);
    const { file, digest, sheets, columns, problems } = survey;
    return {
      file,
      digest,
      sheets,
      columns,
      problems: [...remarks.values(), ...problems],
      notAsked: [...notAsked.values()],
    };
  }

  #put(record: PointRecord, built: Survey | null, proposed: Survey | null): Row {
    const known = this.#pairs.find((pair) => pair.built === built && pair.proposed === proposed);
    const pair = known ?? this.#open(built, proposed);
    pair.records.push(record);
    return { record, survey: pair.survey };
  }

  #open(built: Survey | null, proposed: Survey | null): PairSurvey {
    const of = built ?? proposed;
    if (of === null) throw new RangeError("a row stands in a survey");
    const records: PointRecord[] = [];
    const digest = sha256OfData([built?.digest ?? null, proposed?.digest ?? null]);
    // What the proposal was asked is asked of what was built, also where its word does not count: else a rule that
    // stood in the way could fall silent.
    const factsAsked = new Set([...(built?.factsAsked ?? []), ...(proposed?.factsAsked ?? [])]);
    const pair = { built, proposed, survey: { ...of, digest, records, problems: [], factsAsked }, records };
    this.#pairs.push(pair);
    return pair;
  }
}
