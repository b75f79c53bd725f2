import { cellName } from "../../base/index.js";
import { spelledText } from "./cell-spelling.js";
import type { EditCell } from "./edits.js";

/** Blanks at the ends, and line breaks, are kept only where the part says so. */
const EDGES = /^\s|\s$|\n/;
const LONGEST_KEPT = 300;
const MOST_KEPT = 5_000;

/** Writes cells of our own: texts in the cell itself, numbers plain, never a formula. */
export class CellXml {
  readonly #prefix: string;
  readonly #styles: readonly number[];
  readonly #texts = new Map<string, string>();

  /**
   * @param prefix - of the part's elements, with the colon
   * @param styles - number of the format for each look
   */
  constructor(prefix: string, styles: readonly number[]) {
    this.#prefix = prefix;
    this.#styles = styles;
  }

  /** The cells of a row from a column on. */
  cells(row: number, firstColumn: number, cells: readonly (EditCell | null)[]): string {
    let xml = "";
    for (const [i, cell] of cells.entries()) if (cell) xml += this.#cell(cellName(row, firstColumn + i), cell);
    return xml;
  }

  /** Results say the same of many rows. */
  #spelled(text: string): string {
    if (text.length > LONGEST_KEPT) return spelledText(text);
    const known = this.#texts.get(text);
    if (known !== undefined) return known;
    const spelled = spelledText(text);
    if (this.#texts.size >= MOST_KEPT) this.#texts.clear();
    this.#texts.set(text, spelled);
    return spelled;
  }

  #cell(name: string, { content, look }: EditCell): string {
    const p = this.#prefix;
    const start = `<${p}c r="${name}" s="${this.#styles[look] ?? 0}"`;
    if (content === "") return `${start}/>`;
    if (typeof content === "number") return `${start}><${p}v>${content}</${p}v></${p}c>`;
    const text = this.#spelled(content);
    const space = EDGES.test(text) ? ' xml:space="preserve"' : "";
    return `${start} t="inlineStr"><${p}is><${p}t${space}>${text}</${p}t></${p}is></${p}c>`;
  }
}
