import type { Citation } from "../../rulebook/index.js";
import type { Finding, ResultHead, RuleShown } from "../../screening/index.js";

/** What outputs look up about rules: order, titles and sources. */
export interface RuleIndex {
  /** The rule as the head tells it; undefined for a built-in one that the head does not list. */
  rule(id: string): RuleShown | undefined;
  /** Place in the order of the rulebook; rules that the head does not list come last. */
  order(id: string): number;
  title(id: string): string;
  /** Sources of the limit that spoke; where none spoke, those of the rule. */
  sourcesOf(finding: Finding): readonly Citation[];
}

/** Makes the rules and models of a result ready to be looked up. */
export function indexRules(head: Pick<ResultHead, "rules" | "models">): RuleIndex {
  const places = new Map(head.rules.map((rule, place) => [rule.id, place]));
  const modelSources = new Map(head.models.flatMap((model) => model.citations).map((one) => [one.id, one]));
  const rule = (id: string) => head.rules[places.get(id) ?? -1];
  return {
    rule,
    order: (id) => places.get(id) ?? head.rules.length,
    title: (id) => rule(id)?.title ?? id,
    sourcesOf: (finding) => {
      const ofRule = rule(finding.rule)?.citations ?? [];
      if (finding.limit === null || finding.limit.cites.length === 0) return ofRule;
      return finding.limit.cites.flatMap((id) => ofRule.find((one) => one.id === id) ?? modelSources.get(id) ?? []);
    },
  };
}
