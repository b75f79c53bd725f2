import { isOpen, type Outcome } from "../base/index.js";

/** Whether an outcome keeps a point from passing. */
export function isGrave(outcome: Outcome): boolean {
  return outcome === "fail" || outcome === "warn" || isOpen(outcome);
}
