import type { NumberFormat } from "./cells.js";
import { builtInFormat, formatOfCode } from "./number-formats.js";
import type { Part } from "./package.js";
import { passXml } from "./xml-pass.js";

/**
 * The number format of every cell style, by the number under which cells refer to it.
 *
 * @throws Unreadable if the part is damaged
 */
export function readStyles(part: Part): readonly NumberFormat[] {
  const codes = new Map<number, NumberFormat>();
  const formatIds: number[] = [];
  let section = "";
  passXml(part, {
    open(name, attributes, depth) {
      if (depth === 2) section = name;
      if (depth === 3 && section === "numFmts" && name === "numFmt") {
        codes.set(Number(attributes.numFmtId), formatOfCode(attributes.formatCode ?? ""));
      }
      if (depth === 3 && section === "cellXfs" && name === "xf") formatIds.push(Number(attributes.numFmtId ?? 0));
      return false;
    },
    close() {},
  });
  // A code of its own comes before the built-in meaning of its number: some programs reuse low numbers.
  return formatIds.map((id) => codes.get(id) ?? builtInFormat(id));
}
