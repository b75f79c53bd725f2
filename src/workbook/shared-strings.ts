import type { CellValue } from "./cells.js";
import type { Part } from "./package.js";
import { TextRuns, textValue, undoEscapes } from "./rich-text.js";
import { passXml } from "./xml-pass.js";

/**
 * The texts that cells refer to by number, as values; null for a text of blanks only. The counts that the part
 * states are not believed.
 *
 * @throws Unreadable if the part is damaged
 */
export function readSharedStrings(part: Part, mostCharacters: number): readonly (CellValue | null)[] {
  const values: (CellValue | null)[] = [];
  const runs = new TextRuns();
  let inText = false;
  passXml(part, {
    open(name, _attributes, depth) {
      if (depth === 2) {
        inText = name === "si";
        runs.begin();
        return false;
      }
      return inText && depth > 2 && runs.open(name, depth - 2);
    },
    close(_name, text, depth) {
      if (inText && depth > 2) runs.close(text);
      if (inText && depth === 2) values.push(textValue(undoEscapes(runs.text), mostCharacters));
    },
  });
  return values;
}
