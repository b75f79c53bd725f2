import { foldText, type Interval, isSingle, round12 } from "../../base/index.js";
import { type FactDefinition, type FactValue, factOf, type UnknownReason } from "../../facts/index.js";
import type { CompiledMember } from "../../rulebook/index.js";
import { eachOnce, type GroupFactState, type Lacking } from "./group-state.js";
import type { RowPart } from "./row-parts.js";

/** What some rows bring, and how many rows bring just that. */
export interface CountedPart {
  readonly part: RowPart;
  readonly rows: number;
}

/**
 * What the rows of a group come to in one of its facts. It depends on no order of rows. Rows that are not known well
 * enough widen it: of a sum with an unknown part only the lower end is known, a count lies between the rows that are
 * surely meant and those that may be.
 *
 * @param parts - each different part once, those of rows that are not meant left out
 */
export function together(member: CompiledMember, parts: readonly CountedPart[]): GroupFactState {
  const meant = parts.filter(({ part }) => part.holds !== false);
  const lacking = eachOnce(meant.flatMap(({ part }) => part.lacking));
  switch (member.is) {
    case "count":
      return known(countOf(meant), member, lacking);
    case "distinct":
      return known(differentOf(member, meant), member, lacking);
    case "sum":
      return known(sumOf(member, meant), member, lacking);
    case "minimum":
      return extreme(member, meant, lacking, false);
    case "maximum":
      return extreme(member, meant, lacking, true);
    case "same":
      return sameOf(member, meant, lacking);
  }
}

function known(value: FactValue, { fact }: CompiledMember, lacking: readonly Lacking[]): GroupFactState {
  const settled = typeof value !== "object" || isSingle(value);
  return { known: true, value, origin: originIn(fact), lacking: settled ? [] : lacking };
}

function unknown(reason: UnknownReason, { fact }: CompiledMember, lacking: readonly Lacking[]): GroupFactState {
  const wanted = lacking.length > 0 || fact === null ? lacking : [{ fact, reason }];
  return { known: false, reason, origin: originIn(fact), lacking: wanted };
}

function originIn(fact: string | null): GroupFactState["origin"] {
  return { kind: "derived", from: fact === null ? [] : [fact] };
}

function rowsOf(parts: readonly CountedPart[]): number {
  return parts.reduce((sum, { rows }) => sum + rows, 0);
}

function countOf(parts: readonly CountedPart[]): Interval {
  const sure = rowsOf(parts.filter(({ part }) => part.holds === true));
  return { lowest: sure, highest: rowsOf(parts) };
}

/** The numbers that are known, and how many rows say nothing of use. */
function numbersOf(parts: readonly CountedPart[]) {
  const numbers = parts.flatMap(({ part, rows }) => {
    const value = part.said?.known ? part.said.value : null;
    return typeof value === "object" && value !== null ? [{ value, rows, sure: part.holds === true }] : [];
  });
  return { numbers, silent: parts.filter(({ part }) => part.said?.known !== true) };
}

function sumOf({ fact }: CompiledMember, parts: readonly CountedPart[]): Interval {
  const { numbers, silent } = numbersOf(parts);
  const ends = numbers.map(({ value: { lowest, highest }, rows, sure }) => ({
    lowest: rows * (sure ? lowest : Math.min(0, lowest)),
    highest: rows * (sure ? highest : Math.max(0, highest)),
  }));
  const { lowest: least } = possible(factOf(fact ?? ""));
  const open = rowsOf(silent) > 0;
  return {
    lowest: open && least < 0 ? Number.NEGATIVE_INFINITY : added(ends.map(({ lowest }) => lowest)),
    highest: open ? Number.POSITIVE_INFINITY : added(ends.map(({ highest }) => highest)),
  };
}

/** Added in one order whatever the order of the rows: the last digit of a sum depends on it. */
function added(numbers: readonly number[]): number {
  return round12([...numbers].sort((a, b) => a - b).reduce((sum, one) => sum + one, 0));
}

/** What a number that nobody wrote down can be; plausible ranges tell slips of the pen and settle nothing but a sign. */
function possible({ plausible }: FactDefinition): Interval {
  const lowest = plausible !== undefined && plausible.lowest >= 0 ? 0 : Number.NEGATIVE_INFINITY;
  return { lowest, highest: Number.POSITIVE_INFINITY };
}

/** The smallest, or with the signs turned the greatest, of the numbers; a row that may be meant may change one end. */
function extreme(
  member: CompiledMember,
  parts: readonly CountedPart[],
  lacking: readonly Lacking[],
  greatest: boolean,
): GroupFactState {
  const turned = ({ lowest, highest }: Interval): Interval =>
    greatest ? { lowest: -highest, highest: -lowest } : { lowest, highest };
  const { numbers, silent } = numbersOf(parts);
  const sure = numbers.filter((one) => one.sure);
  if (sure.length === 0) return unknown(lacking[0]?.reason ?? "missing", member, lacking);
  const lows = numbers.map(({ value }) => turned(value).lowest);
  if (silent.length > 0) lows.push(turned(possible(factOf(member.fact ?? ""))).lowest);
  const highs = sure.map(({ value }) => turned(value).highest);
  return known(turned({ lowest: Math.min(...lows), highest: Math.min(...highs) }), member, lacking);
}

/** How many different words the rows say; a word that is not known may be one of them or another. */
function differentOf({ fact }: CompiledMember, parts: readonly CountedPart[]): Interval {
  const sure = new Set<string>();
  const maybe = new Set<string>();
  let silent = 0;
  let silentAndMeant = 0;
  for (const { part, rows } of parts) {
    if (part.said?.known) (part.holds === true ? sure : maybe).add(wordOf(part.said.value));
    else {
      silent += rows;
      if (part.holds === true) silentAndMeant += rows;
    }
  }
  const all = new Set([...sure, ...maybe]).size + silent;
  const choices = factOf(fact ?? "").choices?.length ?? Number.POSITIVE_INFINITY;
  return { lowest: Math.max(sure.size, Math.min(1, silentAndMeant)), highest: Math.min(all, choices) };
}

function wordOf(value: FactValue): string {
  return typeof value === "string" ? foldText(value) : String(value);
}

/**
 * What the rows state alike. An empty cell yields to the others, as the cells of one row do; one that is doubted or
 * cannot be read does not. Numbers agree where their intervals meet; which of them is right is then open.
 */
function sameOf(member: CompiledMember, parts: readonly CountedPart[], lacking: readonly Lacking[]): GroupFactState {
  const said = parts.flatMap(({ part }) => (part.said ? [part.said] : []));
  const values = said.flatMap((one) => (one.known ? [one.value] : []));
  const agreed = values.length === 0 ? undefined : agreedOf(values);
  if (agreed === null)
    return unknown("conflicting", member, member.fact === null ? [] : [{ fact: member.fact, reason: "conflicting" }]);
  const spoiling = lacking.find(({ reason }) => reason !== "missing");
  if (spoiling) return unknown(spoiling.reason, member, lacking);
  return agreed === undefined ? unknown("missing", member, lacking) : known(agreed, member, []);
}

/** Null where they contradict each other. */
function agreedOf(values: readonly FactValue[]): FactValue | null {
  const numbers = values.filter((value) => typeof value === "object");
  if (numbers.length > 0) {
    const lowest = Math.max(...numbers.map((one) => one.lowest));
    const highest = Math.min(...numbers.map((one) => one.highest));
    if (lowest > highest) return null;
    return {
      lowest: Math.min(...numbers.map((one) => one.lowest)),
      highest: Math.max(...numbers.map((one) => one.highest)),
    };
  }
  if (new Set(values.map(wordOf)).size > 1) return null;
  // Of several spellings always the same one, whatever the order of the rows.
  return values.reduce((least, value) => (String(value) < String(least) ? value : least));
}
