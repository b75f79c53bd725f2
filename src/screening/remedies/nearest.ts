/** What holds for all values from one step to another: all would do, none would, or it is not the same for all. */
export type Answer = "helps" | "no" | "open";

/**
 * The first step that helps, where whole stretches of steps can be asked about at once: a stretch without help is passed
 * over, one that is open is halved. So nothing is taken for granted of how help and no help follow each other.
 *
 * @param count - number of steps, the nearest first
 * @param ask - about the steps `from` to `to`, both included; of a single step, an open answer counts as no
 * @param mostAsked - questions after which it is taken for granted that what helps lies towards the far end: where other
 *   facts are known by an interval, every single step of a long stretch can be open
 * @returns the index of the step, or null where no step helps or none was found
 */
export function nearestThatHelps(
  count: number,
  ask: (from: number, to: number) => Answer,
  mostAsked: number = 400,
): number | null {
  let asked = 0;
  const within = (from: number, to: number): number | null => {
    asked += 1;
    if (asked > mostAsked) return null;
    const answer = ask(from, to);
    if (answer === "helps") return from;
    if (answer === "no" || from === to) return null;
    const middle = (from + to) >> 1;
    return within(from, middle) ?? within(middle + 1, to);
  };
  if (count === 0 || ask(0, count - 1) === "no") return null;
  let from = 0;
  for (let size = 1; from < count; size *= 2) {
    const found = within(from, Math.min(from + size, count) - 1);
    if (asked > mostAsked) return firstTowardsTheEnd(count, ask);
    if (found !== null) return found;
    from += size;
  }
  return null;
}

/** The step from which on the ladder helps up to its far end, found by halving; null where the far end does not help. */
function firstTowardsTheEnd(count: number, ask: (from: number, to: number) => Answer): number | null {
  if (ask(count - 1, count - 1) !== "helps") return null;
  let [no, helps] = [-1, count - 1];
  while (helps - no > 1) {
    const middle = (no + helps) >> 1;
    if (ask(middle, middle) === "helps") helps = middle;
    else no = middle;
  }
  return helps;
}
