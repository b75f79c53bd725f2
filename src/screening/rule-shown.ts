import { formatNumber, type PlainDay, type Stage } from "../base/index.js";
import { factName, findFact, plainWords } from "../facts/index.js";
import type { Band, Bound, Condition, LimitEntry, Operator, Rulebook } from "../rulebook/index.js";
import type { ReadyRule } from "./judge-point.js";
import type { LimitShown, RuleShown } from "./result.js";
import { overlaysOfRule } from "./rulebook-shown.js";

/** A rule as results list it: what it demands, when it applies, its limits in force and their sources. */
export function showRule(
  { rule, compiled }: ReadyRule,
  rulebook: Pick<Rulebook, "conditions" | "overlays">,
  options: { readonly stage: Stage; readonly asOf: PlainDay },
): RuleShown {
  const entry = rule.limits.find(({ from, until }) => from <= options.asOf && (until === null || options.asOf < until));
  const judged = rule.judges[options.stage];
  return {
    id: rule.id,
    title: rule.title,
    sets: rule.sets,
    undecided: rule.undecided,
    releases: rule.releases,
    judged,
    appliesWhen: rule.appliesWhen === null ? null : conditionInWords(rule.appliesWhen, rulebook),
    limits: entry ? limitsShown(entry, judged, rulebook) : [],
    citations: [...rule.citations.values()],
    reviewOverdue: compiled.reviewOverdue,
    remedy: rule.remedy.text,
    ...overlaysOfRule(rulebook, rule.id),
  };
}

/** The bands of a dated entry, failing ones first. `judged` is the fact that they speak of, or null. */
export function limitsShown(
  entry: LimitEntry,
  judged: string | null,
  rulebook: Pick<Rulebook, "conditions">,
): readonly LimitShown[] {
  const sides = [
    ...entry.fail.map((band) => ({ outcome: "fail" as const, band })),
    ...entry.warn.map((band) => ({ outcome: "warn" as const, band })),
  ];
  return sides.map(({ outcome, band }) => ({
    outcome,
    is: band.is,
    unit: "bound" in band || "bounds" in band ? (findFact(judged ?? "")?.unit ?? null) : null,
    bounds: boundsOf(band).map(showBound),
    choices: "choices" in band ? band.choices : [],
    condition: band.is === "when" ? conditionInWords(band.condition, rulebook) : null,
    from: entry.from,
    until: entry.until,
    reviewBy: entry.reviewBy,
    cites: entry.cites,
  }));
}

function boundsOf(band: Band): readonly Bound[] {
  if ("bound" in band) return [band.bound];
  return "bounds" in band ? band.bounds : [];
}

function showBound(bound: Bound): LimitShown["bounds"][number] {
  if (bound.kind === "number") return { value: bound.value, fact: null, times: 1, plus: 0 };
  return { value: null, fact: bound.fact, times: bound.times, plus: bound.plus };
}

const OPERATOR_WORDS: Readonly<Record<Operator, string>> = {
  equal: "is",
  notEqual: "is not",
  lessThan: "is below",
  lessThanInclusive: "is at most",
  greaterThan: "is above",
  greaterThanInclusive: "is at least",
  in: "is one of",
  notIn: "is none of",
};

/** A condition as a person says it ("mounting method is tapped hole"). */
export function conditionInWords(condition: Condition, rulebook: Pick<Rulebook, "conditions">): string {
  const inner = (part: Condition): string => {
    const words = conditionInWords(part, rulebook);
    return part.kind === "all" || part.kind === "any" ? `(${words})` : words;
  };
  switch (condition.kind) {
    case "all":
      return condition.parts.map(inner).join(" and ");
    case "any":
      return condition.parts.map(inner).join(" or ");
    case "not":
      return `not ${inner(condition.part)}`;
    case "named": {
      const named = rulebook.conditions.get(condition.name);
      return named ? inner(named) : plainWords(condition.name);
    }
    case "comparison":
      return `${factName(condition.fact)} ${OPERATOR_WORDS[condition.operator]} ${valueInWords(condition)}`;
  }
}

function valueInWords({ fact, value }: Extract<Condition, { kind: "comparison" }>): string {
  if (typeof value === "object" && "fact" in value) return `the ${factName(value.fact)}`;
  const values = typeof value === "object" ? value : [value];
  const unit = findFact(fact)?.unit ?? null;
  return values
    .map((one) =>
      typeof one === "number"
        ? formatNumber(one, unit)
        : typeof one === "boolean"
          ? one
            ? "yes"
            : "no"
          : plainWords(one),
    )
    .join(", ");
}
