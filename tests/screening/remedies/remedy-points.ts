import { single } from "../../../src/base/index.js";
import { type FactDefinition, type FactState, factOf } from "../../../src/facts/index.js";
import { STEPS, type Steps } from "../../../src/quantities/index.js";

/** Evenly spread numbers from 0 up to 1, the same for the same seed. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

const WORDS: Readonly<Record<string, readonly string[]>> = {
  thread: ["M5", "M6", "M8", "M 6 x 0,75", "M12", "10-32 UNF", "1/4-28 UNF", "1/4-20 UNC", "BSP 1/4"],
  sensor_thread: ["M6", "M8", "1/4-28 UNF"],
  ip_rating: ["IP20", "IP54", "IP 65", "IP66", "IP67", "IP66/IP67", "IP69"],
  sensor_model: ["baseline", "example-compact", "example-slow-shaft", "EXAMPLE SLOW-120"],
};

/**
 * A fact with some value that a survey could give: what people write, anything plausible, an interval, a bound.
 *
 * @param gaps - share of facts that are not known
 */
export function someState(id: string, random: () => number, gaps: number = 0.04): FactState {
  const pick = <T>(from: readonly T[]): T => from[Math.floor(random() * from.length)] as T;
  const origin = { kind: "cells", cells: [{ sheet: "S", cell: "A1" }] } as const;
  const definition = factOf(id);
  if (random() < gaps) return { known: false, reason: pick(["missing", "doubtful", "unreadable"] as const), origin };
  if (definition.kind === "yes-no") return { known: true, value: random() < 0.5, origin };
  if (definition.choices) return { known: true, value: pick(definition.choices), origin };
  if (definition.plausible) return { known: true, value: someNumber(definition, random), origin };
  return { known: true, value: pick(WORDS[id] ?? ["a", "b"]), origin };
}

function someNumber(definition: FactDefinition, random: () => number): { lowest: number; highest: number } {
  const { lowest, highest } = definition.plausible ?? { lowest: 0, highest: 1 };
  const steps = STEPS.get(definition.id);
  const digits = definition.kind === "count" ? 0 : random() < 0.5 ? 1 : 3;
  const spread =
    random() < 0.5 && highest > 0
      ? Math.max(lowest, 0.01) * (highest / Math.max(lowest, 0.01)) ** random()
      : lowest + random() * (highest - lowest) * random();
  const sizes = steps?.by === "sizes" ? steps.series.flat() : [];
  const size = sizes[Math.floor(random() * sizes.length)];
  const value = size !== undefined && random() < 0.7 ? size : Number(Math.max(spread, lowest).toFixed(digits));
  const within = Math.min(Math.max(value, lowest), highest);
  const kind = random();
  if (kind < 0.06) {
    const half = Math.abs(within) * 0.05;
    return { lowest: Number((within - half).toFixed(3)), highest: Number((within + half).toFixed(3)) };
  }
  return kind < 0.08 ? { lowest: Number.NEGATIVE_INFINITY, highest: within } : single(within);
}

/**
 * The steps between a number and what it is to become, without both, the nearest to the latter first: what a smaller
 * change would be. Written without the ladders of the program.
 */
export function smallerSteps(steps: Steps, from: { lowest: number; highest: number }, to: number): readonly number[] {
  if (steps.by !== "step" && steps.by !== "sizes") throw new Error("a word has no smaller step");
  const up = to > from.highest;
  const between = (value: number): boolean =>
    up ? value > from.highest && value < to : value < from.lowest && value > to;
  const nearestFirst = (values: readonly number[]) => values.filter(between).sort((a, b) => (up ? b - a : a - b));
  if (steps.by === "sizes") return nearestFirst(steps.series.find((sizes) => sizes.includes(to)) ?? []);
  const found: number[] = [];
  for (let n = 1; found.length < 60; n++) {
    const value = Number((Math.round(to / steps.step + (up ? -n : n)) * steps.step).toPrecision(12));
    if (!between(value)) break;
    found.push(value);
  }
  return found;
}
