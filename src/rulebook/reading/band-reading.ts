import { type FactDefinition, factOf, isNumeric } from "../../facts/index.js";
import type { Band, Bound } from "../book/rule.js";
import { factAsText } from "../text/fact-as-text.js";
import { kindInWords } from "../text/kind-words.js";
import type { RawBand, RawBound } from "../text/raw.js";
import { below, type Report } from "../text/source.js";
import { type BookNames, factsDiffer, readCondition } from "./condition-reading.js";
import { readChoice, readNumber, readShift } from "./fact-values.js";
import { checkReach } from "./limit-reach.js";

/**
 * Checks the bands of one side of a limit against the judged facts.
 *
 * @param judged - the judged facts of all stages, alike in kind and unit; empty where the rule judges none
 * @returns the bands that could be read; whatever could not has been reported
 */
export function readBands(
  raw: RawBand | readonly RawBand[] | undefined,
  pointer: string,
  judged: readonly FactDefinition[],
  report: Report,
  names: BookNames,
): readonly Band[] {
  if (raw === undefined) return [];
  const read = (written: RawBand, at: string): readonly Band[] => {
    const band = readBand(written, at, judged, report, names);
    if (band) checkReach(band, below(at, band.is), judged, report);
    return band ? [band] : [];
  };
  return isList(raw) ? raw.flatMap((band, index) => read(band, below(pointer, index))) : read(raw, pointer);
}

function readBand(
  raw: RawBand,
  pointer: string,
  judged: readonly FactDefinition[],
  report: Report,
  names: BookNames,
): Band | null {
  const [is] = Object.keys(raw);
  const inner = below(pointer, is ?? "");
  const at = report.placeOfKey(inner);
  if (raw.when !== undefined) {
    const condition = readCondition(raw.when, inner, report, names);
    return condition && { is: "when", condition, at };
  }
  const [first, ...others] = judged;
  if (first === undefined) {
    report.atKey(
      inner,
      "nothing-judged",
      `"${is}" speaks of the judged fact, and the rule judges none; add judges, or use when`,
    );
    return null;
  }
  if (raw.oneOf !== undefined) return choiceBand("oneOf", raw.oneOf, inner, judged, report);
  if (raw.noneOf !== undefined) return choiceBand("noneOf", raw.noneOf, inner, judged, report);
  if (!isNumeric(first)) {
    const text = `"${is}" compares numbers, and "${first.id}" is ${kindInWords(first)}; use oneOf, noneOf or when`;
    report.atKey(inner, "band-does-not-fit", text);
    return null;
  }
  if (raw.outside !== undefined) return outsideBand(raw.outside, inner, [first, ...others], report);
  for (const kind of ["below", "above", "atOrBelow", "atOrAbove"] as const) {
    const written = raw[kind];
    const bound = written === undefined ? null : readBound(written, inner, [first, ...others], report);
    if (bound) return { is: kind, bound, at };
  }
  return null;
}

function choiceBand(
  is: "oneOf" | "noneOf",
  choices: readonly string[],
  pointer: string,
  judged: readonly FactDefinition[],
  report: Report,
): Band | null {
  let good = true;
  for (const definition of judged) {
    if (definition.kind !== "choice") {
      report.atKey(
        pointer,
        "band-does-not-fit",
        `"${is}" names choices, and "${definition.id}" is ${kindInWords(definition)}`,
      );
      return null;
    }
    for (const [index, choice] of choices.entries()) {
      const reading = readChoice(choice, definition);
      if (reading.ok) continue;
      report.atValue(below(pointer, index), reading.mistake.code, reading.mistake.text);
      good = false;
    }
  }
  return good ? { is, choices, at: report.placeOfKey(pointer) } : null;
}

function outsideBand(
  raw: readonly [RawBound, RawBound],
  pointer: string,
  judged: readonly [FactDefinition, ...FactDefinition[]],
  report: Report,
): Band | null {
  const low = readBound(raw[0], below(pointer, 0), judged, report);
  const high = readBound(raw[1], below(pointer, 1), judged, report);
  if (!low || !high) return null;
  if (low.kind === "number" && high.kind === "number" && low.value > high.value) {
    report.atValue(
      below(pointer, 1),
      "bounds-swapped",
      "the second bound lies below the first; write the lower one first",
    );
    return null;
  }
  return { is: "outside", bounds: [low, high], at: report.placeOfKey(pointer) };
}

function readBound(
  raw: RawBound,
  pointer: string,
  judged: readonly [FactDefinition, ...FactDefinition[]],
  report: Report,
): Bound | null {
  const [first] = judged;
  if (typeof raw !== "object") {
    const reading = readNumber(raw, first);
    if (reading.ok) return { kind: "number", value: reading.value };
    const { code, text } = factAsText(raw, true) ?? reading.mistake;
    report.atValue(pointer, code, text);
    return null;
  }
  const definition = factOf(raw.fact);
  const mismatch = factsDiffer(first, definition);
  if (mismatch) {
    report.atValue(below(pointer, "fact"), mismatch.code, mismatch.text);
    return null;
  }
  if (judged.some(({ id }) => id === definition.id)) {
    const text = `"${definition.id}" is compared with itself; name another fact, or a number with its unit`;
    report.atValue(below(pointer, "fact"), "compared-with-itself", text);
    return null;
  }
  if (raw.times !== undefined && first.dimension === "temperature") {
    const text = "a temperature cannot be scaled, its zero is a convention; shift it by plus, such as plus: -10 K";
    report.atValue(below(pointer, "times"), "scaled-temperature", text);
    return null;
  }
  const plus = raw.plus === undefined ? ({ ok: true, value: 0 } as const) : readShift(raw.plus, first);
  if (!plus.ok) {
    report.atValue(below(pointer, "plus"), plus.mistake.code, plus.mistake.text);
    return null;
  }
  return { kind: "fact", fact: definition.id, times: raw.times ?? 1, plus: plus.value };
}

function isList<T>(value: T | readonly T[]): value is readonly T[] {
  return Array.isArray(value);
}
