/** Written behind the last line by old programs; it is no text. */
const END_MARK = "\u001a";

/** Blanks behind a value that are still taken for its own. */
const LONGEST_BLANK = 100_000;

/** A text table without what follows its last value. */
export interface TableText {
  readonly text: string;
  /** Whether an end mark (Ctrl-Z) was left out. */
  readonly hadEndMark: boolean;
}

/**
 * Leaves out blank lines, lines of separators alone and an end mark behind the last value, however many there are:
 * lines that hold nothing must not count against the limit of rows, nor take time.
 */
export function withoutBlankEnd(text: string, separator: string): TableText {
  const end = endOfValues(text, text.length, separator);
  const hadEndMark = text[end - 1] === END_MARK;
  if (!hadEndMark) return { text: throughLine(text, end), hadEndMark };
  const before = text.slice(0, end - 1);
  return { text: throughLine(before, endOfValues(before, end - 1, separator)), hadEndMark };
}

function endOfValues(text: string, from: number, separator: string): number {
  let end = from;
  while (end > 0 && (text[end - 1] === separator || /\s/.test(text[end - 1] ?? ""))) end -= 1;
  return end;
}

/** The text to the end of the line in which its last value stands: blanks behind that value are its own. */
function throughLine(text: string, end: number): string {
  const rest = /[\r\n]/.exec(text.slice(end, end + LONGEST_BLANK));
  return text.slice(0, rest ? end + rest.index : end + LONGEST_BLANK);
}
