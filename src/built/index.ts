export { checkBuilt } from "./check-built.js";
export type { BuiltInput } from "./input.js";
export { type IssuedPoint, type IssuedResult, worseOf } from "./issued.js";
export type {
  BuiltCheck,
  BuiltHead,
  BuiltPoint,
  BuiltSummary,
  Difference,
  IssuedShown,
  LikelyPartner,
  MatchStatus,
  RowAt,
  SaidBefore,
  Turned,
} from "./result.js";
export { MATCH_STATUSES } from "./result.js";
