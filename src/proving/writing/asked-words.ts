import { findFact } from "../../facts/index.js";
import { OPERATORS } from "../../rulebook/index.js";

/** A band, a condition or a bound as data of a rule file. */
export type Written = Readonly<Record<string, unknown>>;

/** What was written, or why it says nothing. */
export type WordsReading =
  | { readonly ok: true; readonly data: Written }
  | { readonly ok: false; readonly text: string };

const SIDES: ReadonlyMap<string, string> = new Map([
  ["below", "below"],
  ["above", "above"],
  ["at or below", "atOrBelow"],
  ["at or above", "atOrAbove"],
  ["atorbelow", "atOrBelow"],
  ["atorabove", "atOrAbove"],
]);

const HOW =
  'write "below 9 mm", "above", "at or below", "at or above", "outside 20 V to 28 V", "one of a, b", "none of a, b", "is yes", "is not a", or "when FACT OPERATOR VALUE"';

/**
 * Reads what breaks a limit, as one says it: "below 9 mm", "above 1.2 times model.torque_max", "outside 20 V to 28 V",
 * "one of painted, rusty", "is no", "when joints_in_path greaterThan 3".
 *
 * @param judged - the judged fact, for "is yes" and the like
 */
export function readBandWords(text: string, judged: string): WordsReading {
  const said = text.trim().replace(/\s+/g, " ");
  const side = /^(at or below|at or above|atOrBelow|atOrAbove|below|above) (.+)$/i.exec(said);
  if (side)
    return { ok: true, data: { [SIDES.get(side[1]?.toLowerCase() ?? "") ?? ""]: bound(side[2] ?? "", judged) } };
  const outside = /^outside \[?(.+?)(?: to | and |, ?)(.+?)\]?$/i.exec(said);
  if (outside)
    return { ok: true, data: { outside: [bound(outside[1] ?? "", judged), bound(outside[2] ?? "", judged)] } };
  const choices = /^(one of|none of|oneOf|noneOf) \[?(.+?)\]?$/i.exec(said);
  if (choices) {
    const kind = choices[1]?.toLowerCase().startsWith("one") ? "oneOf" : "noneOf";
    return { ok: true, data: { [kind]: listed(choices[2] ?? "") } };
  }
  const when = /^when (.+)$/i.exec(said);
  if (when) {
    const condition = readConditionWords(when[1] ?? "");
    return condition.ok ? { ok: true, data: { when: condition.data } } : condition;
  }
  const is = /^is (not )?(.+)$/i.exec(said);
  if (is) return { ok: true, data: isBand(is[2] ?? "", is[1] !== undefined, judged) };
  return { ok: false, text: `"${said}" does not say what breaks the limit; ${HOW}` };
}

function isBand(word: string, negated: boolean, judged: string): Written {
  if (findFact(judged)?.kind === "choice") return { [negated ? "noneOf" : "oneOf"]: [word] };
  return { when: { fact: judged, operator: negated ? "notEqual" : "equal", value: valueFor(word, judged) } };
}

/** Reads a condition as one says it: "mounting_method equal tapped-hole", "thread in M6, M8", "condition outdoors". */
export function readConditionWords(text: string): WordsReading {
  const said = text.trim().replace(/\s+/g, " ");
  const named = /^condition (\S+)$/.exec(said);
  if (named) return { ok: true, data: { condition: named[1] ?? "" } };
  const [, fact, operator = "", rest = ""] = /^(\S+) (\S+) (.+)$/.exec(said) ?? [];
  if (fact === undefined) {
    const how = `write FACT OPERATOR VALUE, such as "mounting_method equal tapped-hole", with one of ${OPERATORS.join(", ")}`;
    return { ok: false, text: `"${said}" is no condition; ${how}` };
  }
  const isList = operator === "in" || operator === "notIn";
  const value = isList ? listed(rest).map((one) => valueFor(one, fact)) : comparedWith(rest, fact);
  return { ok: true, data: { fact, operator, value } };
}

function listed(text: string): readonly string[] {
  return text
    .replace(/^\[|\]$/g, "")
    .split(",")
    .map((one) => one.trim())
    .filter((one) => one !== "");
}

function comparedWith(text: string, fact: string): unknown {
  return looksLikeFact(text) && findFact(fact)?.kind !== "choice" ? { fact: text } : valueFor(text, fact);
}

/** A value as rule files write it for its fact. */
function valueFor(text: string, fact: string): unknown {
  const kind = findFact(fact)?.kind;
  if (kind === "yes-no" && /^(?:yes|true)$/i.test(text)) return true;
  if (kind === "yes-no" && /^(?:no|false)$/i.test(text)) return false;
  return isBareNumber(text) && (kind === "count" || kind === "quantity") ? Number(text) : text;
}

function isBareNumber(text: string): boolean {
  return /^[+-]?\d{1,15}(?:\.\d{1,12})?$/.test(text);
}

/** An id has an underscore or a full stop in it, or is in the catalogue; a number with its unit begins with a digit. */
function looksLikeFact(text: string): boolean {
  return findFact(text) !== undefined || /^[a-z]+(?:[_.][a-z0-9]+)+$/.test(text);
}

const SCALED =
  /^(?:(\d+(?:\.\d+)?) ?(?:times|×|\*) )?([a-z][a-z0-9_.]*)(?: (?:times|×|\*) (\d+(?:\.\d+)?))?(?: (plus|minus) (.+))?$/;

/** A number with its unit, or a fact, scaled and shifted. */
function bound(text: string, judged: string): unknown {
  const [, before, fact = "", after, sign, shift] = SCALED.exec(text) ?? [];
  if (!looksLikeFact(fact)) return valueFor(text, judged);
  const times = before ?? after;
  const plus = shift === undefined ? undefined : valueFor(sign === "minus" ? `-${shift}` : shift, judged);
  return { fact, ...(times === undefined ? {} : { times: Number(times) }), ...(plus === undefined ? {} : { plus }) };
}
