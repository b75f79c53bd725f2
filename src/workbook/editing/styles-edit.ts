import { quoted } from "../unreadable.js";
import type { CellLook, FrameLine } from "./edits.js";
import { borderXml, fillXml, fontXml, frameXml, lookXml } from "./style-xml.js";
import { TextChanges } from "./text-changes.js";
import { cannotEdit } from "./uneditable.js";
import {
  attributesAt,
  attributesOf,
  childrenNamed,
  type PartText,
  partText,
  prefixOf,
  type XmlPlace,
} from "./xml-places.js";

/** Spreadsheet programs keep fewer kinds of cell formats than this. */
const MOST_FORMATS = 64_000;

/** The lists that are added to, in the order in which the part must hold them. */
const ORDER = [
  "numFmts",
  "fonts",
  "fills",
  "borders",
  "cellStyleXfs",
  "cellXfs",
  "cellStyles",
  "dxfs",
  "tableStyles",
  "colors",
  "extLst",
];
type ListName = "fonts" | "fills" | "borders" | "cellXfs";

/** What a list holds at the least: cells without a format of their own take the first of each. */
const ITEM: Readonly<Record<ListName, string>> = { fonts: "font", fills: "fill", borders: "border", cellXfs: "xf" };
const FIRST: Readonly<Record<ListName, readonly string[]>> = {
  fonts: ["<font><sz val='11'/><name val='Calibri'/></font>"],
  fills: ["<fill><patternFill patternType='none'/></fill>", "<fill><patternFill patternType='gray125'/></fill>"],
  borders: ["<border><left/><right/><top/><bottom/><diagonal/></border>"],
  cellXfs: ["<xf numFmtId='0' fontId='0' fillId='0' borderId='0'/>"],
};

/**
 * Adds cell formats to the styles of a workbook. What is there keeps its number and its bytes; every format of ours
 * is put behind the last.
 */
export class StylesEdit {
  readonly #part: PartText;
  readonly #prefix: string;
  readonly #hasCellStyles: boolean;
  readonly #lists: Readonly<Record<ListName, AddedList>>;

  /** @throws Uneditable if the part is no list of styles, or has no room for more */
  constructor(part: PartText) {
    const { root } = part;
    if (root.local !== "styleSheet") cannotEdit("no-styles", `its part ${quoted(part.name)} is no list of styles`);
    this.#part = part;
    this.#prefix = prefixOf(root.name);
    this.#hasCellStyles = childrenNamed(root, "cellStyleXfs").some(({ children }) => children.length > 0);
    const list = (name: ListName) => new AddedList(part, name, this.#prefix);
    this.#lists = { fonts: list("fonts"), fills: list("fills"), borders: list("borders"), cellXfs: list("cellXfs") };
  }

  /** Number under which cells refer to a format of our own. */
  look(look: CellLook): number {
    const { fonts, fills, borders, cellXfs } = this.#lists;
    const font = fonts.add(fontXml(look));
    const fill = look.filled ? fills.add(fillXml()) : 0;
    const border = look.bottomLine === "none" ? 0 : borders.add(borderXml(look.bottomLine));
    return this.#checked(cellXfs.add(lookXml(look, { font, fill, border }, this.#hasCellStyles)));
  }

  /** Number of the format that is like `base` but framed. */
  framed(base: number, line: FrameLine): number {
    const { borders, cellXfs } = this.#lists;
    const border = borders.add(frameXml(line));
    return this.#checked(cellXfs.addWritten(withBorder(cellXfs.written(base), border)));
  }

  /** The part with the formats added. */
  result(): string {
    const changes = new TextChanges(this.#part);
    for (const name of ["fonts", "fills", "borders", "cellXfs"] as const) this.#lists[name].write(changes);
    return changes.result();
  }

  #checked(number: number): number {
    return number < MOST_FORMATS ? number : cannotEdit("too-many-styles", "it has no room for more cell formats");
  }
}

/** The styles of a workbook that has none. */
export function emptyStyles(namespace: string): PartText {
  const text = `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<styleSheet xmlns="${namespace}"></styleSheet>`;
  return partText({ name: "styles", bytes: new TextEncoder().encode(text) });
}

/** One list of the styles part, and what is added to it. */
class AddedList {
  readonly #part: PartText;
  readonly #name: ListName;
  readonly #prefix: string;
  readonly #place: XmlPlace | undefined;
  readonly #items: readonly XmlPlace[];
  readonly #added: string[] = [];
  readonly #known = new Map<string, number>();

  constructor(part: PartText, name: ListName, prefix: string) {
    const [place, ...others] = childrenNamed(part.root, name);
    if (others.length > 0 || place?.children.some(({ local }) => local !== ITEM[name])) {
      cannotEdit("unknown-styles", `its part ${quoted(part.name)} lists ${name} in a way that is not understood`);
    }
    this.#part = part;
    this.#name = name;
    this.#prefix = prefix;
    this.#place = place;
    this.#items = place?.children ?? [];
    // Lists that are missing or empty get what the numbers of other parts refer to.
    if (this.#items.length === 0) for (const item of FIRST[name]) this.add(item);
  }

  /** Number of an item, written without prefix; the same item is added once. */
  add(item: string): number {
    return this.addWritten(item.replace(/<(\/?)(?=[a-z])/g, `<$1${this.#prefix}`).replaceAll("'", '"'));
  }

  /** The same for an item that is spelled as the part spells it. */
  addWritten(item: string): number {
    const known = this.#known.get(item);
    if (known !== undefined) return known;
    const number = this.#items.length + this.#added.length;
    this.#added.push(item);
    this.#known.set(item, number);
    return number;
  }

  /** An item as the part spells it; one that does not exist counts as the first. */
  written(number: number): string {
    const place = this.#items[number];
    if (place) return this.#part.text.slice(place.start, place.end);
    if (number > 0) return this.written(0);
    return this.#added[0] ?? "";
  }

  write(changes: TextChanges): void {
    const content = this.#added.join("");
    if (content === "") return;
    const place = this.#place;
    const count = this.#items.length + this.#added.length;
    if (!place) {
      const list = `<${this.#prefix}${this.#name} count="${count}">${content}</${this.#prefix}${this.#name}>`;
      const after = ORDER.slice(ORDER.indexOf(this.#name) + 1);
      const next = this.#part.root.children.find((child) => after.includes(child.local));
      if (next) changes.replace(next.start, next.start, list);
      else changes.append(this.#part.root, list);
      return;
    }
    const stated = attributesAt(this.#part, place).get("count");
    if (stated) changes.replace(stated.from, stated.to, String(count));
    changes.append(place, content);
  }
}

/** A cell format with another border; all else stays as written. */
function withBorder(xf: string, border: number): string {
  const tagEnd = openingEnd(xf);
  let tag = withAttribute(xf.slice(0, tagEnd), "borderId", String(border));
  tag = withAttribute(tag, "applyBorder", "1");
  return tag + xf.slice(tagEnd);
}

/** Where the first tag ends; attribute values may hold a ">". */
function openingEnd(xml: string): number {
  let quote = "";
  for (let i = 0; i < xml.length; i++) {
    const sign = xml.charAt(i);
    if (quote !== "") {
      if (sign === quote) quote = "";
    } else if (sign === '"' || sign === "'") quote = sign;
    else if (sign === ">") return i + 1;
  }
  return xml.length;
}

function withAttribute(tag: string, name: string, value: string): string {
  const known = attributesOf(tag).get(name);
  if (known) return tag.slice(0, known.from) + value + tag.slice(known.to);
  const end = tag.endsWith("/>") ? tag.length - 2 : tag.length - 1;
  return `${tag.slice(0, end).trimEnd()} ${name}="${value}"${tag.slice(end)}`;
}
