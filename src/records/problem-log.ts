import type { ImportProblem } from "./problems.js";

/** Different remarks of one kind kept per column; more of them say nothing new. */
const MOST_TALLIES = 200;

/** Gathers what is to be said about one file: troubles one by one, repeated remarks once with their count. */
export class ProblemLog {
  readonly #single: ImportProblem[] = [];
  readonly #tallies = new Map<string, { readonly problem: ImportProblem; count: number }>();

  add(problem: ImportProblem): void {
    this.#single.push(problem);
  }

  /** Says a remark once, at the first place it was met, with the number of times. */
  tally(problem: ImportProblem): void {
    const key = JSON.stringify([problem.code, problem.sheet, problem.heading, problem.fact, problem.text]);
    const known = this.#tallies.get(key);
    if (known) known.count += 1;
    else if (this.#tallies.size < MOST_TALLIES) this.#tallies.set(key, { problem, count: 1 });
  }

  /** Remarks first, then troubles in the order of the file. */
  all(): readonly ImportProblem[] {
    const tallied = [...this.#tallies.values()].map(({ problem, count }) =>
      count === 1 ? problem : { ...problem, text: `${problem.text} (${count} times, here first)` },
    );
    return [...tallied, ...this.#single];
  }
}
