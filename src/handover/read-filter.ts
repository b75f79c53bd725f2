import { didYouMean, showText } from "../base/index.js";
import { type FactValue, findFact, isNumeric } from "../facts/index.js";
import { below, type Report, readGiven } from "../rulebook/index.js";
import type { Filter } from "./mapping.js";
import type { RawFilter } from "./raw.js";

/** Reads which points are taken. */
export function readFilter(
  raw: RawFilter | undefined,
  pointer: string,
  rules: ReadonlySet<string>,
  report: Report,
): Filter {
  const byRule = (key: "rulesSay" | "rulesDoNotSay"): Filter["rulesSay"] => {
    const outcomes = Object.entries(raw?.[key] ?? {});
    for (const [rule] of outcomes) {
      if (rules.has(rule)) continue;
      const near = didYouMean(rule, rules) || "; use the id of a rule of the rulebook";
      report.atKey(below(pointer, key, rule), "unknown-rule", `the rulebook has no rule "${showText(rule)}"${near}`);
    }
    return new Map(outcomes);
  };
  const facts = new Map(
    Object.entries(raw?.facts ?? {}).map(([id, written]) => [
      id,
      readValues(id, written, below(pointer, "facts", id), report),
    ]),
  );
  return {
    verdicts: raw?.verdicts ?? null,
    released: raw?.released ?? false,
    rulesSay: byRule("rulesSay"),
    rulesDoNotSay: byRule("rulesDoNotSay"),
    facts,
  };
}

function readValues(id: string, written: readonly unknown[], pointer: string, report: Report): readonly FactValue[] {
  const definition = findFact(id);
  if (definition === undefined || isNumeric(definition)) {
    const text =
      definition === undefined
        ? `"${showText(id)}" is no fact of the catalogue`
        : `"${id}" is a number, which is judged by rules; filter by a rule or by the verdict`;
    report.atKey(pointer, definition === undefined ? "unknown-fact" : "number-in-filter", text);
    return [];
  }
  return written.flatMap((value, index) => {
    const reading = readGiven(value, definition);
    if (reading.ok) return reading.value.known ? [reading.value.value] : [];
    report.atValue(below(pointer, index), reading.mistake.code, reading.mistake.text);
    return [];
  });
}
