import type { FactState } from "../../facts/index.js";

/** The facts of the groups that a point is in. */
export interface GroupsOfPoint {
  get(id: string): FactState | undefined;
  /** A number that is the same for all points for which the same is said of the fact. */
  sameness(id: string): number;
}
