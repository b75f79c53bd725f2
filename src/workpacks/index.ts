export type { AcceptedFinding, HeldBack, HeldBackCause, PointOfRun, Release } from "./release.js";
export { Releasing, type ReleasingBook, releasedPoints } from "./releasing.js";
