import fc from "fast-check";
import { type FactDefinition, type FactState, isNumeric, type UnknownReason } from "../../src/facts/index.js";

const REASONS: readonly UnknownReason[] = ["missing", "doubtful", "unreadable", "conflicting"];
const THREADS = ["M5", "M6", "M8", "M10", "1/4-28 UNF", "M6x0.75", "no thread"];
const DAYS = ["2026-01-31", "2026-03-01", "2027-02-28"];
const CODES = ["IP65", "IP67", "IP66/IP68", "IP69", "IP20", "no code"];

function stateOf(value: string | boolean | { readonly lowest: number; readonly highest: number }): FactState {
  return { known: true, value, origin: { kind: "none" } };
}

/** What a fact may say that is no number. */
function wordsOf({ kind, choices, id }: FactDefinition): readonly (string | boolean)[] {
  if (kind === "yes-no") return [true, false];
  if (choices) return choices;
  if (kind === "date") return DAYS;
  return id === "ip_rating" ? CODES : THREADS;
}

/** Sizes of all orders within what is plausible, and small ones more often than a straight line would give. */
function sizeWithin({ plausible, kind }: FactDefinition): fc.Arbitrary<number> {
  const { lowest, highest } = plausible ?? { lowest: 0.1, highest: 1000 };
  const at = (share: number): number => Math.min(highest, lowest + (highest - lowest) * share ** 3);
  // Evenly spread steps: doubles between 0 and 1 are mostly next to nothing.
  const size = fc.integer({ min: 0, max: 1_000_000 }).map((step) => at(step / 1_000_000));
  return kind === "count" ? size.map(Math.round) : size;
}

function numberState(definition: FactDefinition): fc.Arbitrary<FactState> {
  const size = sizeWithin(definition);
  const exact = size.map((value) => stateOf({ lowest: value, highest: value }));
  const wide = fc.tuple(size, size).map(([a, b]) => stateOf({ lowest: Math.min(a, b), highest: Math.max(a, b) }));
  const near = fc
    .tuple(size, fc.double({ min: 0, max: 0.1, noNaN: true }))
    .map(([value, share]) =>
      stateOf({ lowest: value - Math.abs(value) * share, highest: value + Math.abs(value) * share }),
    );
  return fc.oneof(exact, exact, near, wide);
}

/** Any state in which a fact can be, known three times out of four. */
export function anyState(definition: FactDefinition): fc.Arbitrary<FactState> {
  const unknown = fc
    .constantFrom(...REASONS)
    .map((reason): FactState => ({ known: false, reason, origin: { kind: "none" } }));
  const told = isNumeric(definition) ? numberState(definition) : fc.constantFrom(...wordsOf(definition)).map(stateOf);
  return fc.oneof({ arbitrary: told, weight: 3 }, { arbitrary: unknown, weight: 1 });
}

/** Turns a state into one of those that it leaves possible: a word, or a single number. */
export function completionOf(
  definition: FactDefinition,
): fc.Arbitrary<(state: FactState | undefined) => FactState | undefined> {
  if (!isNumeric(definition)) {
    return fc.constantFrom(...wordsOf(definition)).map((word) => (state) => (state?.known ? state : stateOf(word)));
  }
  return fc
    .tuple(sizeWithin(definition), fc.double({ min: 0, max: 1, noNaN: true }))
    .map(([size, share]) => (state) => {
      if (!state?.known || typeof state.value !== "object") return stateOf({ lowest: size, highest: size });
      const { lowest, highest } = state.value;
      const inside = Math.min(highest, lowest + (highest - lowest) * share);
      const value =
        definition.kind === "count" && lowest !== highest
          ? Math.min(highest, Math.max(lowest, Math.round(inside)))
          : inside;
      return stateOf({ lowest: value, highest: value });
    });
}
