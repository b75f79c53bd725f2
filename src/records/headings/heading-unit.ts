import { type Dimension, dimensionsSpelled, foldText, type Unit, unitSpelled } from "../../base/index.js";

/** What the words of a heading, beside its name, say of the unit of bare numbers below it. */
export interface LooseUnit {
  readonly unit: Unit | null;
  /** Several units, a multiple (x 10) or a unit that nobody knows: bare numbers below mean nothing certain. */
  readonly unsettled: boolean;
  /** The heading ends with a unit of another quantity. */
  readonly foreign: boolean;
}

const NOTHING: LooseUnit = { unit: null, unsettled: false, foreign: false };
const UNSETTLED: LooseUnit = { unit: null, unsettled: true, foreign: false };

/** Spellings of units that are other words too; among the words of a heading they name no unit. */
const ALSO_WORDS: ReadonlySet<string> = new Set(
  "in min mini foot feet pied pieds pie pies po ins deg grad grados degree degrees tag tage dia dias day jour jours t°".split(
    " ",
  ),
);
const MULTIPLE =
  /(?:^|[\s(])[x×*]\s?10+(?![\d.,])|(?:^|[\s(])10+\s?[x×*]|[([]\s*10+\s|(?:^|[\s(])1\/\d+\s|\bh{1,2}:m{1,2}\b/i;
const MULTIPLIED_UNIT = /^(?:da|[kMmcdhµ])(.{2,})$/u;
const AREA_OR_VOLUME = /^(?:mm|cm|dm|m|in|ft)[²³23]$/;
/** Most words that one unit is written in (ft lb, deg F). */
const LONGEST_UNIT = 2;

/**
 * Looks for units among all words of a heading (Hole depth (drilled) (inch), Torque lbf ft, depth/mm), where the
 * plain places for a unit hold none.
 */
export function looseUnit(heading: string, dimension: Dimension): LooseUnit {
  if (MULTIPLE.test(heading)) return UNSETTLED;
  const tokens = heading.split(/[\s()[\]{},;:|]+/u).filter((token) => token !== "");
  const found = new Map<string, Unit>();
  let odd = false;
  for (let i = 0; i < tokens.length; ) {
    const taken = takeUnit(tokens, i, dimension, found);
    if (taken === 0) odd ||= isOdd(bareOf(tokens[i] ?? ""), dimension, found);
    i += Math.max(1, taken);
  }
  const [unit] = found.values();
  if (odd || found.size > 1) return UNSETTLED;
  if (unit) return { ...NOTHING, unit };
  const last = bareOf(tokens[tokens.length - 1] ?? "");
  return isSure(last) && dimensionsSpelled(last).length > 0 ? { ...NOTHING, foreign: true } : NOTHING;
}

/** Notes the unit that begins at a token; returns how many tokens it takes. */
function takeUnit(tokens: readonly string[], at: number, dimension: Dimension, found: Map<string, Unit>): number {
  for (let length = LONGEST_UNIT; length >= 1; length--) {
    if (at + length > tokens.length) continue;
    const text = bareOf(tokens.slice(at, at + length).join(" "));
    const unit = length > 1 || isSure(text) ? unitSpelled(text, dimension) : null;
    const single = length > 1 && unitSpelled(tokens[at] ?? "", dimension) !== null;
    if (unit && !single) {
      found.set(unit.id, unit);
      return length;
    }
  }
  return 0;
}

/** Digits and signs in front of a unit as it stands in a heading (≥15mm) taken off. */
function bareOf(text: string): string {
  return text.replace(/^[^\p{L}"″”°µ%/]+|[*.!?¹²³]*$/gu, (part) => (/[²³]/.test(part) ? part : ""));
}

function isSure(text: string): boolean {
  return (text.length > 1 || /["″”%]/.test(text)) && !ALSO_WORDS.has(foldText(text));
}

/** A multiple of a unit, an area, or two things parted by a stroke of which one is a unit. */
function isOdd(token: string, dimension: Dimension, found: Map<string, Unit>): boolean {
  const known = dimensionsSpelled(token).length > 0;
  if (!known && AREA_OR_VOLUME.test(token)) return true;
  const base = known ? undefined : MULTIPLIED_UNIT.exec(token)?.[1];
  if (base !== undefined && isSure(base) && unitSpelled(base, dimension) !== null) return true;
  if (known || !token.includes("/")) return false;
  const parts = token.split("/");
  const units = parts.map((part) => unitSpelled(part, dimension));
  units.forEach((unit, i) => {
    if (unit && (isSure(parts[i] ?? "") || i === units.length - 1)) found.set(unit.id, unit);
  });
  return units.every((unit) => unit === null) && parts.every((part) => dimensionsSpelled(part).length > 0);
}
