import type { CellLook, FrameLine } from "./edits.js";

/** Outcomes are told by shape and word; lines and letters are near black, the fill is a light grey. */
const DARK = "FF202020";
const GREY = "FF8C8C8C";
const NEUTRAL = "FFF0F0EE";
/** Number of the built-in format "text" (ISO/IEC 29500-1, 18.8.30). */
const TEXT_FORMAT = 49;

/** A font; all items here are spelled without prefix and with single quotes, as `StylesEdit` takes them. */
export function fontXml({ bold, points }: CellLook): string {
  return `<font>${bold ? "<b/>" : ""}<sz val='${points}'/><name val='Calibri'/><family val='2'/></font>`;
}

/** The neutral fill. */
export function fillXml(): string {
  return `<fill><patternFill patternType='solid'><fgColor rgb='${NEUTRAL}'/><bgColor indexed='64'/></patternFill></fill>`;
}

/** A line under the cell. */
export function borderXml(line: "hair" | "thin"): string {
  const bottom = `<bottom style='${line}'><color rgb='${GREY}'/></bottom>`;
  return `<border><left/><right/><top/>${bottom}<diagonal/></border>`;
}

/** A line all around the cell. */
export function frameXml(line: FrameLine): string {
  const sides = ["left", "right", "top", "bottom"];
  const drawn = sides.map((side) => `<${side} style='${line}'><color rgb='${DARK}'/></${side}>`);
  return `<border>${drawn.join("")}<diagonal/></border>`;
}

/**
 * A cell format made of these.
 *
 * @param named - whether the workbook has named styles, the first of which is the usual one
 */
export function lookXml(
  look: CellLook,
  numbers: { readonly font: number; readonly fill: number; readonly border: number },
  named: boolean,
): string {
  const format = look.staysText ? TEXT_FORMAT : 0;
  const { font, fill, border } = numbers;
  return [
    `<xf numFmtId='${format}' fontId='${font}' fillId='${fill}' borderId='${border}'${named ? " xfId='0'" : ""}`,
    look.staysText ? " quotePrefix='1' applyNumberFormat='1'" : "",
    " applyFont='1' applyFill='1' applyBorder='1' applyAlignment='1'>",
    `<alignment horizontal='left' vertical='top'${look.wrap ? " wrapText='1'" : ""}/></xf>`,
  ].join("");
}
