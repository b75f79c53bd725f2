/** What one rule says about one point. */
export type Outcome = "pass" | "warn" | "fail" | "undecided" | "not-applicable" | "no-limit-in-force";

/** What all rules together say about one point. */
export type Verdict = "pass" | "warn" | "fail";

/** Whether a point is still a proposal or has been built. */
export type Stage = "proposed" | "installed";

/** Both stages, in the order of the work. */
export const STAGES: readonly Stage[] = ["proposed", "installed"];

/** Outcomes that leave the question open; both count alike in a verdict. */
export function isOpen(outcome: Outcome): boolean {
  return outcome === "undecided" || outcome === "no-limit-in-force";
}
