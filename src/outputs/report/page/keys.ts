const STEPS: Readonly<Record<string, (at: number, last: number) => number>> = {
  ArrowDown: (at, last) => Math.min(at + 1, last),
  ArrowUp: (at) => Math.max(at - 1, 0),
  Home: () => 0,
  End: (_, last) => last,
};

/** Arrows, Home and End go from line to line of a list; Enter and the space bar open a line by themselves. */
export function moveBetweenLines(event: KeyboardEvent): void {
  const { target, currentTarget } = event;
  const step = STEPS[event.key];
  const isPlain = !event.altKey && !event.ctrlKey && !event.metaKey && !event.shiftKey;
  if (!step || !isPlain || !(target instanceof HTMLElement) || !(currentTarget instanceof HTMLElement)) return;
  if (target.tagName !== "SUMMARY") return;
  const lines = [...currentTarget.querySelectorAll<HTMLElement>("summary")];
  lines[step(lines.indexOf(target), lines.length - 1)]?.focus();
  event.preventDefault();
}
