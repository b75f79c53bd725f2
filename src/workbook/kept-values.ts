import type { CellValue } from "./cells.js";
import { textValue } from "./rich-text.js";
import type { SharedTexts } from "./shared-texts.js";

const MOST_KEPT = 100_000;
const LONGEST_KEPT = 200;
/** Stands for a cell that holds nothing. */
export const NOTHING = -1;

/**
 * The values of a workbook other than numbers, each under a number by which cells refer to it. Equal texts become one
 * object as far as memory allows, so that readers can remember what they made of it.
 */
export class KeptValues {
  readonly #values: CellValue[] = [];
  readonly #shared: SharedTexts | null;
  /** Numbers below this belong to the shared texts. */
  readonly #first: number;
  readonly #mostCharacters: number;
  readonly #byContent = new Map<string, number>();

  /**
   * @param mostCharacters - of a cell
   * @param shared - texts of the workbook, all there are by now, which are kept under their own numbers
   */
  constructor(mostCharacters: number, shared: SharedTexts | null = null) {
    this.#shared = shared;
    this.#first = shared?.length ?? 0;
    this.#mostCharacters = mostCharacters;
  }

  /** The value under a number that was given out. */
  at(reference: number): CellValue {
    const value = reference < this.#first ? this.#shared?.at(reference) : this.#values[reference - this.#first];
    return value as CellValue;
  }

  /** Keeps a text as `textValue` understands it; NOTHING for blanks only. */
  text(text: string): number {
    const known = this.#byContent.get(text);
    if (known !== undefined) return known;
    const value = textValue(text, this.#mostCharacters);
    return this.#add(text, value);
  }

  /** Keeps a value other than a number. */
  value(value: CellValue): number {
    // No text of a survey holds a NUL, so that the kinds cannot be taken for one another.
    const key = value.kind === "text" ? value.text : `\0${value.kind} ${contentOf(value)}`;
    return this.#byContent.get(key) ?? this.#add(key, value);
  }

  #add(key: string, value: CellValue | null): number {
    const reference = value === null ? NOTHING : this.#first + this.#values.push(value) - 1;
    if (key.length <= LONGEST_KEPT && this.#byContent.size < MOST_KEPT) this.#byContent.set(key, reference);
    return reference;
  }
}

function contentOf(value: CellValue): string {
  switch (value.kind) {
    case "text":
    case "error":
      return value.text;
    case "date":
      return value.iso;
    case "boolean":
      return String(value.boolean);
    case "unusable":
      return value.why;
    default:
      return "";
  }
}
