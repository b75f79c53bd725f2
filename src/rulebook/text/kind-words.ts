import { dimensionInWords, withArticle } from "../../base/index.js";
import type { FactDefinition, FactKind } from "../../facts/index.js";

const KINDS: Readonly<Partial<Record<FactKind, string>>> = {
  quantity: "a number with a unit",
  count: "a number",
  "yes-no": "true or false",
};

/** What kind of thing a fact holds, for a finding ("a choice", "a number with a unit"). */
export function kindInWords({ kind }: FactDefinition): string {
  return KINDS[kind] ?? withArticle(kind);
}

/** What a fact measures, for a finding ("a length", "a count"). */
export function measureInWords({ dimension, kind }: FactDefinition): string {
  return withArticle(dimension === undefined ? kind : dimensionInWords(dimension));
}
