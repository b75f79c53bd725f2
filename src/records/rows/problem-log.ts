import type { ImportProblem } from "../cells/problems.js";

/** Different remarks of one kind kept per column; more of them say nothing new. */
const MOST_TALLIES = 200;

interface Counted {
  readonly problem: ImportProblem;
  count: number;
}

/** Gathers what is to be said about one file: troubles one by one, repeated remarks once with their count. */
export class ProblemLog {
  readonly #single: ImportProblem[] = [];
  readonly #tallies = new Map<string, Counted>();
  readonly #recalled = new Map<object, Counted | null>();

  add(problem: ImportProblem): void {
    this.#single.push(problem);
  }

  /** Says a remark once, at the first place it was met, with the number of times. */
  tally(problem: ImportProblem): void {
    this.#counted(problem);
  }

  /**
   * The same for a remark that many cells share as one object.
   *
   * @param problem - made only the first time
   */
  tallyOf(remark: object, problem: () => ImportProblem): void {
    const known = this.#recalled.get(remark);
    if (known) known.count += 1;
    else if (known === undefined) this.#recalled.set(remark, this.#counted(problem()));
  }

  /** Remarks first, then troubles in the order of the file. */
  all(): readonly ImportProblem[] {
    const tallied = [...this.#tallies.values()].map(({ problem, count }) =>
      count === 1 ? problem : { ...problem, text: `${problem.text} (${count} times, here first)` },
    );
    return [...tallied, ...this.#single];
  }

  #counted(problem: ImportProblem): Counted | null {
    const key = JSON.stringify([problem.code, problem.sheet, problem.heading, problem.fact, problem.text]);
    const known = this.#tallies.get(key);
    if (known) {
      known.count += 1;
      return known;
    }
    if (this.#tallies.size >= MOST_TALLIES) return null;
    const counted = { problem, count: 1 };
    this.#tallies.set(key, counted);
    return counted;
  }
}
