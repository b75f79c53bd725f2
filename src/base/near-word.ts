/**
 * The word that was probably meant: the nearest of the known ones, if it is near enough.
 *
 * @returns " did you mean …" as it follows a sentence, or the empty text
 */
export function didYouMean(word: string, known: Iterable<string>): string {
  const near = nearWord(word, known);
  return near === null ? "" : `; did you mean "${near}"?`;
}

function nearWord(word: string, known: Iterable<string>): string | null {
  return nearestWords(word, known, 1)[0] ?? null;
}

/**
 * The nearest known words, the nearest first.
 *
 * @param most - how many are wanted
 * @param share - a word may be as many letters away as this part of its own; one letter always
 */
export function nearestWords(
  word: string,
  known: Iterable<string>,
  most: number,
  share: number = 1 / 3,
): readonly string[] {
  // A very long word is no slip of the pen, and comparing it letter by letter would take long.
  if (word.length > 64) return [];
  const folded = fold(word);
  const farthest = Math.max(1, Math.floor(folded.length * share));
  const near: { readonly candidate: string; readonly steps: number }[] = [];
  for (const candidate of known) {
    const steps = stepsBetween(folded, fold(candidate));
    if (steps <= farthest) near.push({ candidate, steps });
  }
  return near
    .sort((a, b) => a.steps - b.steps)
    .slice(0, most)
    .map(({ candidate }) => candidate);
}

function fold(word: string): string {
  return word.toLowerCase().replace(/[\s_.\u2010-\u2015-]+/gu, "-");
}

/** Letters to change, add, leave out or swap with the next (restricted Damerau-Levenshtein distance). */
function stepsBetween(a: string, b: string): number {
  if (Math.abs(a.length - b.length) > 22) return Number.POSITIVE_INFINITY;
  let before: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let steps = Math.min((last[j] ?? 0) + 1, (row[j - 1] ?? 0) + 1, (last[j - 1] ?? 0) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1])
        steps = Math.min(steps, (before[j - 2] ?? 0) + 1);
      row.push(steps);
    }
    before = last;
    last = row;
  }
  return last[b.length] ?? 0;
}
