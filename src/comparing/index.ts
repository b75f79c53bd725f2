export { overlayReleaseProblems, type ReleaseFiles, type ReleaseProblem, releaseProblems } from "./release-check.js";
export type { LeafChange, ThingChanged } from "./rulebook-changes.js";
export { rulebookChanges } from "./rulebook-changes.js";
export { type RunCompared, type RunDifferences, runDifferences, surveysByDigest } from "./run-differences.js";
export type { FindingTurned, PointCompared, PointTurned, Turn, Turned } from "./turned-points.js";
export { compareResults } from "./turned-points.js";
