import { SaxesParser, type SaxesTagPlain } from "saxes";
import { DEPTH_LIMIT } from "./limits.js";
import type { Part } from "./package.js";
import { partDecoder } from "./xml-encoding.js";
import { refuseDamagedXml, refuseDepth, refuseDoctype } from "./xml-faults.js";

const CHUNK_BYTES = 65_536;

/** Attributes of one element by their names as written; made without a prototype. */
export type Attributes = Readonly<Record<string, string>>;

/** Follows one pass over a part. Names come without their prefix, whatever prefix the writing program chose. */
export interface XmlListener {
  /**
   * @param depth - 1 for the root element
   * @returns true if the text inside the element is wanted when it closes
   */
  open(name: string, attributes: Attributes, depth: number): boolean;
  /** @param text - the text inside the element, or "" where it was not asked for */
  close(name: string, text: string, depth: number): void;
}

/**
 * Runs once over the XML of a part. Text that nobody asked for is never kept.
 *
 * @param onBytes - told how many bytes of the part are done
 * @throws Unreadable if the part is not well-formed, nests too deep or declares a document type
 */
export function passXml(part: Part, listener: XmlListener, onBytes: (done: number) => void = () => {}): void {
  const parser = new SaxesParser<{ xmlns: false; position: false }>({ xmlns: false, position: false });
  let depth = 0;
  let wantedAt = 0;
  let text = "";
  const collect = (piece: string): void => {
    text += piece;
  };

  parser.on("error", () => refuseDamagedXml(part.name, parser.line));
  parser.on("doctype", () => refuseDoctype(part.name));
  parser.on("cdata", (piece) => {
    if (wantedAt > 0) text += piece;
  });
  parser.on("opentag", (tag: SaxesTagPlain) => {
    depth += 1;
    if (depth > DEPTH_LIMIT) refuseDepth(part.name, parser.line);
    const wanted = listener.open(localName(tag.name), tag.attributes, depth);
    if (wanted && wantedAt === 0) {
      wantedAt = depth;
      text = "";
      // Only now, so that blanks between elements are never gathered, however many there are.
      parser.on("text", collect);
    }
  });
  parser.on("closetag", (tag: SaxesTagPlain) => {
    const own = wantedAt === depth;
    if (own) {
      parser.off("text");
      wantedAt = 0;
    }
    listener.close(localName(tag.name), own ? text : "", depth);
    depth -= 1;
  });

  const decode = partDecoder(part);
  for (let from = 0; from < part.bytes.length; from += CHUNK_BYTES) {
    const to = Math.min(part.bytes.length, from + CHUNK_BYTES);
    const last = to === part.bytes.length;
    const chunk = decode(part.bytes.subarray(from, to), last);
    if (chunk === null) refuseDamagedXml(part.name, parser.line);
    parser.write(chunk);
    onBytes(to);
  }
  parser.close();
}

/** The name without its prefix: "row" for "x:row". */
export function localName(name: string): string {
  const colon = name.indexOf(":");
  return colon < 0 ? name : name.slice(colon + 1);
}
