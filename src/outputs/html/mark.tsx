import type { Outcome } from "../../base/index.js";
import { markedOutcome } from "../wording/outcomes.js";

/** An outcome as shape and word; the colour only repeats them. */
export function Mark({ outcome }: { readonly outcome: Outcome }) {
  return <span class={`mark ${outcome}`}>{markedOutcome(outcome)}</span>;
}
