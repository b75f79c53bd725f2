export type { Counted, OutcomeCounts, VerdictCounts } from "./like-judge.js";
export { type LimitMoved, type MoveAsked, type MovedStep, moveLimit, placesIn } from "./move-limit.js";
export { type Moved, movedBook } from "./moved-book.js";
export type { NumberPlace } from "./number-places.js";
export type { Stretch } from "./stretches.js";
