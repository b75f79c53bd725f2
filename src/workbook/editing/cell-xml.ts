import { cellName } from "../../base/index.js";
import { spelledText } from "./cell-spelling.js";
import type { EditCell } from "./edits.js";

/** Writes cells of our own: texts in the cell itself, numbers plain, never a formula. */
export class CellXml {
  readonly #prefix: string;
  readonly #styles: readonly number[];

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

  #cell(name: string, { content, look }: EditCell): string {
    const p = this.#prefix;
    const start = `<${p}c r="${name}" s="${this.#styles[look] ?? 0}"`;
    if (content === "") return `${start}/>`;
    if (typeof content === "number") return `${start}><${p}v>${content}</${p}v></${p}c>`;
    return `${start} t="inlineStr"><${p}is><${p}t xml:space="preserve">${spelledText(content)}</${p}t></${p}is></${p}c>`;
  }
}
