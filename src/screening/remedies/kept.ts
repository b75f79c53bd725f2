import type { Outcome } from "../../base/index.js";
import type { Finding } from "../result.js";
import type { Change } from "./change.js";
import type { Alternative } from "./solve.js";

/** How a finding that is not passed was solved, and the finding with its changes for each set of rules they break. */
export interface Solved {
  readonly alternatives: readonly Alternative[];
  readonly findings: Map<string, Finding>;
}

/** What a rule says after a change; a chain, since there are few and this is kept for many sets of facts. */
export interface After {
  readonly change: Change;
  readonly outcome: Outcome;
  readonly next: After | null;
}

/** What follows from one set of facts of one rule, kept with its judgement. */
export interface Kept {
  solved: Solved | null;
  after: After | null;
}
