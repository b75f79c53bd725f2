import { didYouMean } from "../../base/index.js";
import { type FactDefinition, factOf, isNumeric } from "../../facts/index.js";
import type { Condition, ConditionValue, Operator } from "../book/rule.js";
import { factAsText } from "../text/fact-as-text.js";
import { kindInWords, measureInWords } from "../text/kind-words.js";
import type { RawComparison, RawCondition } from "../text/raw.js";
import { below, type Report } from "../text/source.js";
import { readScalar } from "./fact-values.js";

/** What a file may refer to in the rest of its rulebook; null where that part itself could not be read. */
export interface BookNames {
  readonly sets: ReadonlySet<string> | null;
  readonly conditions: ReadonlySet<string>;
  readonly models: ReadonlySet<string>;
}

const ORDERED: ReadonlySet<Operator> = new Set([
  "lessThan",
  "lessThanInclusive",
  "greaterThan",
  "greaterThanInclusive",
]);

/**
 * Checks what a condition means and converts its numbers to the units of their facts.
 *
 * @returns the condition, or null after something was reported
 */
export function readCondition(raw: RawCondition, pointer: string, report: Report, names: BookNames): Condition | null {
  if ("all" in raw) return readParts("all", raw.all, below(pointer, "all"), report, names);
  if ("any" in raw) return readParts("any", raw.any, below(pointer, "any"), report, names);
  if ("not" in raw) {
    const part = readCondition(raw.not, below(pointer, "not"), report, names);
    return part && { kind: "not", part };
  }
  if ("condition" in raw) {
    if (names.conditions.has(raw.condition)) return { kind: "named", name: raw.condition };
    const near = didYouMean(raw.condition, names.conditions);
    const text = `there is no file conditions/${raw.condition}.yaml${near || "; write it or correct the name"}`;
    report.atValue(below(pointer, "condition"), "unknown-condition", text);
    return null;
  }
  return readComparison(raw, pointer, report);
}

function readParts(
  kind: "all" | "any",
  raw: readonly RawCondition[],
  pointer: string,
  report: Report,
  names: BookNames,
): Condition | null {
  const parts: Condition[] = [];
  for (const [index, inner] of raw.entries()) {
    const part = readCondition(inner, below(pointer, index), report, names);
    if (part) parts.push(part);
  }
  return parts.length === raw.length ? { kind, parts } : null;
}

function readComparison(raw: RawComparison, pointer: string, report: Report): Condition | null {
  const { fact, operator } = raw;
  const definition = factOf(fact);
  const at = below(pointer, "value");
  if (ORDERED.has(operator) && !isNumeric(definition)) {
    const text = `"${operator}" compares numbers, and "${fact}" is ${kindInWords(definition)}; use equal, notEqual, in or notIn`;
    report.atValue(below(pointer, "operator"), "operator-does-not-fit", text);
    return null;
  }
  const wantsList = operator === "in" || operator === "notIn";
  if (isList(raw.value) !== wantsList) {
    const text = wantsList
      ? `"${operator}" needs a list of values`
      : `"${operator}" takes one value; use in or notIn for a list`;
    report.atValue(at, "operator-does-not-fit", text);
    return null;
  }
  if (isList(raw.value)) {
    const values: ConditionValue[] = [];
    for (const [index, written] of raw.value.entries()) {
      const value = readValue(written, definition, below(at, index), report);
      if (value !== null) values.push(value);
    }
    return values.length === raw.value.length ? { kind: "comparison", fact, operator, value: values } : null;
  }
  if (typeof raw.value === "object") {
    const other = factOf(raw.value.fact);
    const mismatch = factsDiffer(definition, other);
    if (mismatch) report.atValue(below(at, "fact"), mismatch.code, mismatch.text);
    else if (other.id === fact) {
      const text = `"${fact}" is compared with itself; name another fact, or a value`;
      report.atValue(below(at, "fact"), "compared-with-itself", text);
    }
    return mismatch ? null : { kind: "comparison", fact, operator, value: { fact: other.id } };
  }
  const value = readValue(raw.value, definition, at, report);
  return value === null ? null : { kind: "comparison", fact, operator, value };
}

function readValue(written: unknown, definition: FactDefinition, at: string, report: Report): ConditionValue | null {
  const reading = readScalar(written, definition);
  if (reading.ok) return reading.value;
  const { code, text } = (isNumeric(definition) ? factAsText(written, false) : null) ?? reading.mistake;
  report.atValue(at, code, text);
  return null;
}

/** Why two facts cannot be compared with each other, or null if they can; `difference` says it without the advice. */
export function factsDiffer(
  a: FactDefinition,
  b: FactDefinition,
): { readonly code: string; readonly text: string; readonly difference: string } | null {
  const differ = (code: string, difference: string): ReturnType<typeof factsDiffer> => {
    return { code, difference, text: `${difference}; they cannot be compared, so name another fact or a value` };
  };
  if (a.kind !== b.kind) return differ("wrong-kind", `"${a.id}" is ${kindInWords(a)} and "${b.id}" ${kindInWords(b)}`);
  if (a.dimension === b.dimension) return null;
  return differ("wrong-dimension", `"${b.id}" is ${measureInWords(b)}, and "${a.id}" ${measureInWords(a)}`);
}

function isList<T>(value: unknown | readonly T[]): value is readonly T[] {
  return Array.isArray(value);
}
