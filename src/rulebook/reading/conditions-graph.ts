import type { Condition } from "../book/rule.js";

/** Comparisons that one rule may come to once its named conditions are written out; more would slow every point. */
export const MOST_COMPARISONS = 2000;

/** Names of the conditions that a condition refers to. */
function namesIn(condition: Condition): readonly string[] {
  switch (condition.kind) {
    case "named":
      return [condition.name];
    case "not":
      return namesIn(condition.part);
    case "comparison":
      return [];
    default:
      return condition.parts.flatMap(namesIn);
  }
}

/**
 * The first chain of named conditions that comes back to where it began.
 *
 * @returns the names in order, the first one again at the end; null where there is no such chain
 */
export function findCycle(conditions: ReadonlyMap<string, Condition>): readonly string[] | null {
  const done = new Set<string>();
  for (const start of conditions.keys()) {
    const cycle = cycleFrom(start, conditions, done);
    if (cycle) return cycle;
  }
  return null;
}

/** Walks with a list of its own: a thousand conditions in a row are allowed and must not overflow the stack. */
function cycleFrom(
  start: string,
  conditions: ReadonlyMap<string, Condition>,
  done: Set<string>,
): readonly string[] | null {
  const trail: { name: string; next: string[] }[] = [];
  const enter = (name: string): void => {
    const condition = conditions.get(name);
    trail.push({ name, next: condition ? [...namesIn(condition)] : [] });
  };
  if (!done.has(start)) enter(start);
  for (let last = trail.at(-1); last !== undefined; last = trail.at(-1)) {
    const name = last.next.shift();
    if (name === undefined) {
      done.add(last.name);
      trail.pop();
      continue;
    }
    const known = trail.findIndex((step) => step.name === name);
    if (known >= 0) return [...trail.slice(known).map((step) => step.name), name];
    if (!done.has(name)) enter(name);
  }
  return null;
}

/**
 * How many comparisons a condition comes to with its named conditions written out, counted without writing them out.
 *
 * @param sizes - counts known already, by name; added to
 */
export function sizeOf(
  condition: Condition,
  conditions: ReadonlyMap<string, Condition>,
  sizes: Map<string, number>,
): number {
  switch (condition.kind) {
    case "comparison":
      return 1;
    case "not":
      return sizeOf(condition.part, conditions, sizes);
    case "named": {
      const known = sizes.get(condition.name);
      if (known !== undefined) return known;
      const named = conditions.get(condition.name);
      const size = named ? sizeOf(named, conditions, sizes) : 0;
      sizes.set(condition.name, size);
      return size;
    }
    default:
      return condition.parts.reduce((sum, part) => sum + sizeOf(part, conditions, sizes), 0);
  }
}
