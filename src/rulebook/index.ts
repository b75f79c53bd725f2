export type { CompiledRule, Judgement, LimitSpoken, Margin, OpenFact } from "./judgement.js";
export type {
  Band,
  BandKind,
  Basis,
  Bound,
  Citation,
  Condition,
  LimitEntry,
  Operator,
  Rule,
  RuleCase,
} from "./rule.js";
export { BASES } from "./rule.js";
export type { FileFinding, ModelValue, Rulebook, RulebookLoading, SensorModel } from "./rulebook.js";
