import { round12 } from "./round.js";
import { DIMENSIONS, type Dimension, findUnitById, UNITS, type Unit } from "./unit-table.js";

export type { Dimension, Unit } from "./unit-table.js";
export { otherQuantityOf } from "./unit-table.js";

/**
 * A number in one unit as a number in another of the same dimension, to 12 significant digits.
 *
 * @param from - id of a unit of the dimension
 * @param to - id of a unit of the dimension
 * @throws RangeError if either is no unit of the dimension
 */
export function convert(value: number, from: string, to: string, dimension: Dimension): number {
  const source = unitOf(from, dimension);
  const target = unitOf(to, dimension);
  return source === target ? round12(value) : round12(target.fromBase(source.toBase(value)));
}

/**
 * The unit with this id among those of the dimension.
 *
 * @throws RangeError if there is none
 */
export function unitOf(id: string, dimension: Dimension): Unit {
  const unit = findUnitById(id, dimension);
  if (!unit) throw new RangeError(`"${id}" is no unit of ${dimension}`);
  return unit;
}

/** Blanks and full stops do not count in a unit as written; middle dots and the multiplication signs are one. */
function foldUnit(text: string): string {
  return text
    .normalize("NFC")
    .replace(/[\s\u00a0\u202f\u2009.]+/gu, "")
    .replace(/[·⋅×∙•]/gu, "·")
    .replace(/μ/gu, "µ")
    .replace(/[−‐‑–]/gu, "-");
}

/**
 * The unit that a text spells, looked for among the units of one dimension. Case counts only where it
 * tells two units apart (mW and MW, m and M).
 *
 * @returns the unit, or null where the text spells none or two of that dimension
 */
export function unitSpelled(text: string, dimension: Dimension): Unit | null {
  const folded = foldUnit(text);
  if (folded === "") return null;
  const index = spellingsOf(dimension);
  const exact = index.exact.get(folded);
  if (exact) return exact;
  const loose = index.loose.get(folded.toLowerCase());
  return loose?.length === 1 ? (loose[0] ?? null) : null;
}

/** Every dimension in which the text spells a unit. */
export function dimensionsSpelled(text: string): readonly Dimension[] {
  return DIMENSIONS.filter((dimension) => unitSpelled(text, dimension) !== null);
}

interface SpellingIndex {
  readonly exact: ReadonlyMap<string, Unit>;
  readonly loose: ReadonlyMap<string, readonly Unit[]>;
}

const indexes = new Map<Dimension, SpellingIndex>();

function spellingsOf(dimension: Dimension): SpellingIndex {
  const known = indexes.get(dimension);
  if (known) return known;
  const exact = new Map<string, Unit>();
  const loose = new Map<string, Unit[]>();
  for (const unit of UNITS.filter((u) => u.dimension === dimension)) {
    for (const spelling of [unit.id, ...unit.spellings]) {
      const folded = foldUnit(spelling);
      exact.set(folded, unit);
      const lower = folded.toLowerCase();
      const others = loose.get(lower) ?? [];
      if (!others.includes(unit)) loose.set(lower, [...others, unit]);
    }
  }
  const index: SpellingIndex = { exact, loose };
  indexes.set(dimension, index);
  return index;
}
