import { foldText, isSameNumber } from "../base/index.js";
import type { Facts, Said } from "../facts/index.js";

/** What is said of a fact; where it stands is not looked up. */
export function saidOf(facts: Facts, id: string): Said | undefined {
  return facts.said ? facts.said(id) : facts.get(id);
}

/**
 * Whether a row itself says something of a fact: in a cell, also one that cannot be read. An empty cell says nothing,
 * the site's word is not the row's, and what was taken as absent for not being mentioned is no statement either.
 */
export function isFilled(said: Said | undefined): said is Said {
  if (said === undefined || isStatement(said)) return false;
  return said.known ? !isAssumedAbsent(said) : said.reason !== "missing";
}

/** Whether a fact is stated for a row at all, by its cell or by the site. */
export function isStated(said: Said | undefined): said is Said {
  return said !== undefined && (isStatement(said) || isFilled(said));
}

function isStatement(said: Said): boolean {
  return "origin" in said && (said.origin as { readonly kind?: unknown }).kind === "statement";
}

function isAssumedAbsent(said: Said): boolean {
  return said.known && said.value === "absent" && said.assumed !== undefined;
}

/** Whether two texts name the same thing as a value of a fact. */
export type SameText = (fact: string, one: string, other: string) => boolean;

/** Texts are compared without case, accents and blanks; names of one sensor model are one name. */
export function sameTextBy(models: Iterable<{ id: string; title: string; alsoWritten: readonly string[] }>): SameText {
  const ids = new Map<string, string>();
  for (const { id, title, alsoWritten } of models) {
    for (const name of [id, title, ...alsoWritten]) ids.set(foldText(name), id);
  }
  const nameOf = (fact: string, text: string): string => {
    const folded = foldText(text);
    return fact === "sensor_model" ? (ids.get(folded) ?? folded) : folded.replaceAll(" ", "");
  };
  return (fact, one, other) => one === other || nameOf(fact, one) === nameOf(fact, other);
}

/** Whether two known values cannot be the same: numbers only where their intervals, accuracy included, do not meet. */
export function differ(fact: string, one: Said, other: Said, sameText: SameText): boolean {
  if (!one.known || !other.known) return false;
  if (typeof one.value === "object" && typeof other.value === "object") {
    return isSameNumber(one.value, other.value) === false;
  }
  if (typeof one.value === "string" && typeof other.value === "string") return !sameText(fact, one.value, other.value);
  return one.value !== other.value;
}
