import type { PhraseReading } from "./cell-choice.js";
import type { CellReading } from "./cell-reading.js";

/** Different texts remembered per column; a column with more of them repeats itself little. */
const MOST_TEXTS = 2_000;

/** What the texts of one column were read as; most columns say the same few things in thousands of rows. */
export interface ColumnMemory {
  readonly readings: Map<string, CellReading>;
  /** Null where the cell is no phrase (a word for missing, an error). */
  readonly phrases: Map<string, PhraseReading | null>;
}

export function newColumnMemory(): ColumnMemory {
  return { readings: new Map(), phrases: new Map() };
}

/** The reading of a text, taken from the store where it is there. */
export function remembered<T>(store: Map<string, T> | undefined, text: string, read: () => T): T {
  const known = store?.get(text);
  if (known !== undefined) return known;
  const reading = read();
  if (store && store.size < MOST_TEXTS) store.set(text, reading);
  return reading;
}
