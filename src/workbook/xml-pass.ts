import { SaxesParser, type SaxesTagPlain } from "saxes";
import { DEPTH_LIMIT } from "./limits.js";
import type { Part } from "./package.js";
import { grouped, quoted, refuse } from "./unreadable.js";
import { partDecoder } from "./xml-encoding.js";

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

  parser.on("error", () => refuseDamaged(part, parser.line));
  parser.on("doctype", () => refuseDoctype(part));
  parser.on("cdata", (piece) => {
    if (wantedAt > 0) text += piece;
  });
  parser.on("opentag", (tag: SaxesTagPlain) => {
    depth += 1;
    if (depth > DEPTH_LIMIT) refuseDepth(part, parser.line);
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
    if (chunk === null) refuseDamaged(part, parser.line);
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

function refuseDamaged(part: Part, line: number): never {
  return refuse(
    "damaged-xml",
    `the part ${quoted(part.name)} is damaged at its line ${grouped(line)}; open the workbook in a spreadsheet program and save it again`,
  );
}

function refuseDoctype(part: Part): never {
  return refuse(
    "document-type",
    `the part ${quoted(part.name)} declares a document type, which no spreadsheet program writes and which can be used to attack a reader; get the workbook again from whoever sent it`,
  );
}

function refuseDepth(part: Part, line: number): never {
  return refuse(
    "too-deep",
    `the part ${quoted(part.name)} nests more than ${DEPTH_LIMIT} levels deep at its line ${grouped(line)}, which no spreadsheet program writes; get the workbook again from whoever sent it`,
  );
}
