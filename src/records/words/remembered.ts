/** Texts remembered at most; past it everything is forgotten, since what comes again comes again soon. */
const MOST_REMEMBERED = 4_000;

/** The same function of a text, which answers from memory what it was asked before. */
export function rememberedTexts<T>(answer: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const now = answer(text);
    if (known.size >= MOST_REMEMBERED) known.clear();
    known.set(text, now);
    return now;
  };
}
