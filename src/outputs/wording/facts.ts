import { formatNumber } from "../../base/index.js";
import { factName, findFact, plainWords } from "../../facts/index.js";
import type { LimitSpoken, Margin } from "../../rulebook/index.js";
import type { ChangeFound, FactShown, LimitShown, MissingFact } from "../../screening/index.js";

/** What a fact was found to be ("7.5 mm ± 0.2 mm", "at most 1480 r/min", "drive end", "yes"). */
export function factValueInWords(fact: FactShown): string {
  if (typeof fact.value === "boolean") return fact.value ? "yes" : "no";
  if (typeof fact.value === "string") {
    return findFact(fact.fact)?.kind === "choice" ? plainWords(fact.value) : fact.value;
  }
  const accuracy = fact.accuracy === null || fact.accuracy === 0 ? "" : ` ± ${formatNumber(fact.accuracy, fact.unit)}`;
  if (fact.value !== null) return formatNumber(fact.value, fact.unit) + accuracy;
  if (fact.lowest !== null && fact.highest !== null) {
    return `${formatNumber(fact.lowest)} to ${formatNumber(fact.highest, fact.unit)}`;
  }
  if (fact.highest !== null) return `at most ${formatNumber(fact.highest, fact.unit)}`;
  if (fact.lowest !== null) return `at least ${formatNumber(fact.lowest, fact.unit)}`;
  return "not known";
}

/** A change that was found ("hole depth 15 mm", "mounting method adhesive pad, breaks adhesive-cure"). */
export function changeInWords({ fact, to, unit, breaks }: ChangeFound): string {
  const choice = typeof to === "string" && findFact(fact)?.kind === "choice" ? plainWords(to) : to;
  const value = typeof choice === "number" ? formatNumber(choice, unit) : choice;
  return `${factName(fact)} ${value}${breaks.length > 0 ? `, breaks ${breaks.join(" ")}` : ""}`;
}

/** A missing fact with the reason, where the reason is more than that nobody wrote it down. */
export function missingInWords(missing: MissingFact): string {
  const name = factName(missing.fact);
  const { reason, measureTo } = missing;
  const to =
    measureTo === null ? "" : `; measure it to ± ${formatNumber(measureTo.accuracy, measureTo.unit)} or better`;
  return reason === "missing" ? name : `${name} (${REASONS[reason]}${to})`;
}

const REASONS: Readonly<Record<MissingFact["reason"], string>> = {
  missing: "missing",
  doubtful: "in doubt",
  unreadable: "cannot be read",
  conflicting: "contradicts itself",
  "too-close": "too close to the limit for its accuracy",
};

const DEMANDS: Readonly<Record<LimitSpoken["is"], string>> = {
  below: "not below",
  above: "not above",
  atOrBelow: "above",
  atOrAbove: "below",
  outside: "",
  oneOf: "none of:",
  noneOf: "one of:",
  when: "as the rule demands",
};

/** What the limit asks for ("not below 9 mm", "20.4 to 28.8 V", "none of: coated"). */
export function limitInWords(limit: LimitSpoken): string {
  const of = limit.fact === null ? "" : ` (${factName(limit.fact)})`;
  return `${DEMANDS[limit.is]} ${limitValueInWords(limit)}${of}`.trim();
}

/**
 * How far a value lies from the failing limit ("2 mm beyond the limit (7 %)", "3 mm to spare (20 %)").
 *
 * @param unit - of the limit; the difference of two temperatures is in kelvin
 */
export function marginInWords({ value, fraction }: Margin, unit: string | null): string {
  if (value === 0) return "on the limit";
  const share = fraction === null ? "" : ` (${formatNumber(Math.abs(fraction) * 100, null, 3)} %)`;
  const distance = formatNumber(Math.abs(value), unit === "°C" ? "K" : unit);
  return `${distance} ${value < 0 ? "beyond the limit" : "to spare"}${share}`;
}

const BREAKS: Readonly<Record<LimitShown["is"], string>> = {
  below: "below",
  above: "above",
  atOrBelow: "not above",
  atOrAbove: "not below",
  outside: "outside",
  oneOf: "one of:",
  noneOf: "none of:",
  when: "",
};

/** A limit of the book ("fails where hole depth is below the hole depth the bolt needs; from 2026-01-01"). */
export function limitInForceInWords(limit: LimitShown, judged: string | null): string {
  const verb = limit.outcome === "fail" ? "fails" : "warns";
  const dates = `from ${limit.from}${limit.until === null ? "" : ` until ${limit.until}`}`;
  return `${verb} ${whereBroken(limit, judged === null ? "it" : factName(judged))}; ${dates}`;
}

/**
 * Where a limit of the book is broken ("where hole depth is below the hole depth the bolt needs").
 *
 * @param subject - what is judged, in words
 */
export function whereBroken(limit: Omit<LimitShown, "from" | "until" | "reviewBy" | "cites">, subject: string): string {
  if (limit.is === "when") return `where ${limit.condition}`;
  const bounds = limit.bounds.map((bound) => boundInWords(bound, limit.unit)).join(" to ");
  const against = limit.choices.length > 0 ? limit.choices.map(plainWords).join(", ") : bounds;
  return `where ${subject} is ${BREAKS[limit.is]} ${against}`;
}

/** A bound of a limit ("9 mm", "1.5 × the lowest speed the model is meant for"). */
export function boundInWords({ value, fact, times, plus }: LimitShown["bounds"][number], unit: string | null): string {
  if (value !== null) return formatNumber(value, unit);
  const scaled = times === 1 ? "" : `${formatNumber(times)} × `;
  const shiftUnit = unit === "°C" ? "K" : unit;
  const shifted = plus === 0 ? "" : ` ${plus < 0 ? "−" : "+"} ${formatNumber(Math.abs(plus), shiftUnit)}`;
  return `${scaled}the ${factName(fact ?? "")}${shifted}`;
}

function limitValueInWords({ is, value, unit }: LimitSpoken): string {
  if (is === "when") return "";
  if (value === null) return "a value that is not known";
  if (typeof value === "number") return formatNumber(value, unit);
  const [low, high] = value;
  if (typeof low === "number" && typeof high === "number") return `${formatNumber(low)} to ${formatNumber(high, unit)}`;
  return value.map((choice) => plainWords(String(choice))).join(", ");
}
