import { SaxesParser, type SaxesTagPlain } from "saxes";
import { DEPTH_LIMIT } from "../limits.js";
import type { Part } from "../package.js";
import { quoted } from "../unreadable.js";
import { localName } from "../xml-pass.js";
import { cannotEdit } from "./uneditable.js";

/** An element and where it stands in the text of its part; `start` up to, not including, `end`. */
export interface XmlPlace {
  /** As written, with its prefix. */
  readonly name: string;
  readonly local: string;
  /** Values of its attributes by their names as written. */
  readonly attributes: Readonly<Record<string, string>>;
  readonly start: number;
  /** Behind the `>` of the opening tag. */
  readonly openEnd: number;
  readonly selfClosed: boolean;
  /** Where the closing tag begins; of an element that closes itself, its end. */
  closeStart: number;
  end: number;
  readonly children: XmlPlace[];
}

/** A small part as text in which places can be found and changed; all that is not changed stays as it is. */
export interface PartText {
  readonly name: string;
  readonly text: string;
  readonly root: XmlPlace;
}

const DECLARED = /^\ufeff?<\?xml[^>]{0,100}?encoding\s*=\s*["']([A-Za-z0-9._:-]{1,40})["']/;

/**
 * Reads a small part with the place of each of its elements.
 *
 * @throws Uneditable if the part is not written in UTF-8 or is not well-formed
 */
export function partText(part: Part): PartText {
  const text = decoded(part);
  const root = placesIn(text, part.name);
  return { name: part.name, text, root };
}

function decoded({ name, bytes }: Part): string {
  try {
    const text = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
    const declared = DECLARED.exec(text)?.[1]?.toLowerCase() ?? "utf-8";
    // A part that says UTF-16 in single bytes is read as UTF-8 too.
    if (/^(?:utf-?8|us-ascii|ascii|utf-16.*)$/.test(declared) && !text.includes("\0")) return text;
  } catch {
    // Said below.
  }
  return cannotEdit("not-utf-8", `its part ${quoted(name)} is not written in UTF-8`);
}

function placesIn(text: string, name: string): XmlPlace {
  const parser = new SaxesParser<{ xmlns: false; position: false }>({ xmlns: false, position: false });
  const open: XmlPlace[] = [];
  let root: XmlPlace | null = null;
  const damaged = (): never => cannotEdit("damaged-xml", `its part ${quoted(name)} is damaged`);
  parser.on("error", damaged);
  parser.on("doctype", damaged);
  parser.on("opentag", (tag: SaxesTagPlain) => {
    if (open.length >= DEPTH_LIMIT) damaged();
    const openEnd = parser.position;
    const place: XmlPlace = {
      name: tag.name,
      local: localName(tag.name),
      attributes: tag.attributes,
      // Within a tag no other "<" can stand.
      start: text.lastIndexOf("<", openEnd - 1),
      openEnd,
      selfClosed: tag.isSelfClosing,
      closeStart: openEnd,
      end: openEnd,
      children: [],
    };
    open.at(-1)?.children.push(place);
    root ??= place;
    open.push(place);
  });
  parser.on("closetag", (tag: SaxesTagPlain) => {
    const place = open.pop();
    if (!place || tag.isSelfClosing) return;
    place.end = parser.position;
    place.closeStart = text.lastIndexOf("<", place.end - 1);
  });
  parser.write(text);
  parser.close();
  return root ?? damaged();
}

/** An attribute: its value as written (entities and all), and where that stands between its quotes. */
export interface AttributePlace {
  readonly value: string;
  readonly from: number;
  readonly to: number;
}

const ATTRIBUTE = /([^\s=/"'<>]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;

/** The attributes of an opening tag that is known to be well-formed, by their names as written. */
export function attributesOf(tag: string, start: number = 0): ReadonlyMap<string, AttributePlace> {
  const found = new Map<string, AttributePlace>();
  for (const match of tag.matchAll(ATTRIBUTE)) {
    const value = match[2] ?? match[3] ?? "";
    const to = start + match.index + match[0].length - 1;
    found.set(match[1] ?? "", { value, from: to - value.length, to });
  }
  return found;
}

/** The attributes of a place. */
export function attributesAt(part: PartText, place: XmlPlace): ReadonlyMap<string, AttributePlace> {
  return attributesOf(part.text.slice(place.start, place.openEnd), place.start);
}

/** The children of a place with this name, whatever their prefix. */
export function childrenNamed(place: XmlPlace, local: string): readonly XmlPlace[] {
  return place.children.filter((child) => child.local === local);
}

/** The prefix with its colon, or nothing: "x:" for "x:row". */
export function prefixOf(name: string): string {
  return name.slice(0, name.indexOf(":") + 1);
}
