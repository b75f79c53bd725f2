export { type AlterationReport, alterBook, type Noticed, type Unnoticed } from "./alter-book.js";
export { type CoverageReport, coverageOf, type Shown } from "./coverage.js";
export { type AskedRule, linesToFill, type NewRule, newRule } from "./writing/new-rule.js";
