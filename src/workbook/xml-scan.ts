import { DEPTH_LIMIT, TAG_BYTES } from "./limits.js";
import {
  AMPERSAND,
  BAD,
  BANG,
  CARRIAGE_RETURN,
  CLASS_OF_BYTE,
  GREATER,
  INCOMPLETE,
  LESS,
  LINE_FEED,
  QUESTION,
  SLASH,
  SPACE,
} from "./xml-bytes.js";
import { entityCode, entityEnd } from "./xml-entities.js";
import { refuseDamagedXml, refuseDepth, refuseDoctype, refuseTagLength } from "./xml-faults.js";
import { OpenElements } from "./xml-open-elements.js";
import { type Inside, instructionBody, sectionAt } from "./xml-sections.js";
import { StartTag } from "./xml-start-tag.js";
import { Stretch } from "./xml-stretch.js";
import { sameBytes } from "./xml-text.js";
import { WantedText } from "./xml-wanted-text.js";
import { XmlWindow } from "./xml-window.js";

const BYTE_ORDER_MARK = [0xef, 0xbb, 0xbf];

/** Follows one pass over XML; what there is to know stands in the scanner while it calls. */
export interface XmlEvents {
  /** An element opens: `tag` holds its attributes. Returns true if the text inside is wanted when it closes. */
  open(xml: XmlScanner): boolean;
  /** An element closes: `text` holds the text inside, if it was wanted. */
  close(xml: XmlScanner): void;
  /**
   * Takes whole elements that it recognises byte by byte, ahead of the scanner and without the events above. What it
   * takes must be well-formed, without line ends and without text that was wanted; this is where speed comes from.
   *
   * @param at - place of a "<" inside the element that is open
   * @returns where the first element begins that it leaves to the scanner; `at` if it takes none
   */
  pass?(xml: XmlScanner, bytes: Uint8Array, at: number, to: number): number;
}

/**
 * Runs once over XML in UTF-8 that comes in pieces, and is strict: what is not well-formed ends in an error, at the
 * byte where it shows. Keeps nothing but the tag it is at and the text that is wanted, however large the part is.
 *
 * A part that declares another version than 1.0 is read as 1.0, as that standard asks of its readers.
 */
export class XmlScanner {
  /** The start tag of the element that opens. */
  readonly tag = new StartTag();
  /** Text inside the element that closes. */
  readonly text = new WantedText();
  /** Place among the known names, from 1, of the element that opens or closes; 0 for any other name. */
  element = 0;
  /** 1 for the root element. */
  depth = 0;
  /** Where the tag that is reported begins and ends, bytes from the beginning of the part; the same twice for `<a/>`. */
  tagFrom = 0;
  tagTo = 0;
  isSelfClosing = false;
  /** The line that is being read, from 1. */
  line = 1;

  readonly #part: string;
  readonly #known: readonly Uint8Array[];
  readonly #events: XmlEvents;
  readonly #window = new XmlWindow();
  readonly #stretch = new Stretch();
  readonly #open = new OpenElements();
  /** Where the part proper begins, behind a byte order mark. */
  #start = 0;
  /** Bytes that must be in hand before it is worth looking again. */
  #needed = 0;
  #isLast = false;
  #inside: Inside = "text";
  #sawRoot = false;
  #wantedAt = 0;

  /**
   * @param part - name of the part, for messages
   * @param known - local names that are told apart, the frequent ones first
   */
  constructor(part: string, known: readonly string[], events: XmlEvents) {
    this.#part = part;
    this.#known = known.map((name) => new TextEncoder().encode(name));
    this.#events = events;
  }

  /**
   * Goes on with the next bytes; they may end anywhere, also inside a character.
   *
   * @throws Unreadable if the part is not well-formed, nests too deep or declares a document type
   */
  write(piece: Uint8Array): void {
    this.text.settle();
    this.#window.append(piece);
    if (this.#window.pending >= this.#needed) this.#scan();
  }

  /** Ends the part. @throws Unreadable if something of it is missing */
  end(): void {
    this.#isLast = true;
    this.#scan();
    const isWhole = this.#window.pending === 0 && this.#sawRoot && this.depth === 0 && this.#inside === "text";
    if (!isWhole) refuseDamagedXml(this.#part, this.line);
  }

  #scan(): void {
    const window = this.#window;
    this.#needed = 0;
    if (window.before + window.at === 0 && !this.#passMark()) return;
    while (window.at < window.to) {
      this.#passAhead(window);
      const next = this.#step(window.bytes, window.at, window.to);
      if (next === INCOMPLETE) {
        // Twice as many, so that one endless tag is not looked at over and over.
        this.#needed = 2 * window.pending;
        if (window.pending > TAG_BYTES) refuseTagLength(this.#part, this.line);
        return;
      }
      if (next === BAD) refuseDamagedXml(this.#part, this.line);
      window.at = next;
    }
  }

  /** Passes a byte order mark; false if it cannot be told yet whether there is one. */
  #passMark(): boolean {
    const { bytes, to } = this.#window;
    const mark = BYTE_ORDER_MARK.slice(0, to);
    if (to === 0 || mark.some((byte, i) => bytes[i] !== byte)) return true;
    if (to < BYTE_ORDER_MARK.length) return this.#isLast;
    this.#window.at = BYTE_ORDER_MARK.length;
    this.#start = BYTE_ORDER_MARK.length;
    return true;
  }

  #passAhead(window: XmlWindow): void {
    const events = this.#events;
    if (events.pass === undefined || this.#inside !== "text" || window.bytes[window.at] !== LESS) return;
    if (this.depth > 0) window.at = events.pass(this, window.bytes, window.at, window.to);
  }

  /** Takes what comes next; gives where it ends, INCOMPLETE or BAD. */
  #step(bytes: Uint8Array, at: number, to: number): number {
    if (this.#inside !== "text") return this.#passBody(bytes, at, to);
    if (bytes[at] !== LESS) return this.depth === 0 ? this.#passOutside(bytes, at) : this.#passText(bytes, at, to);
    if (at + 1 >= to) return INCOMPLETE;
    switch (bytes[at + 1]) {
      case SLASH:
        return this.#closeTag(bytes, at, to);
      case BANG:
        return this.#openSection(bytes, at, to);
      case QUESTION:
        return this.#openInstruction(bytes, at, to);
      default:
        return this.#openTag(bytes, at, to);
    }
  }

  #openTag(bytes: Uint8Array, at: number, to: number): number {
    const { tag } = this;
    const end = tag.read(bytes, at + 1, to);
    if (end === INCOMPLETE) return INCOMPLETE;
    this.line += tag.lines;
    if (end === BAD || (this.depth === 0 && this.#sawRoot)) return BAD;
    if (end - at > TAG_BYTES) refuseTagLength(this.#part, this.line);
    this.#sawRoot = true;
    this.depth += 1;
    if (this.depth > DEPTH_LIMIT) refuseDepth(this.#part, this.line);
    this.element = this.#knownElement(bytes, tag.nameFrom, tag.nameTo);
    this.#place(at, end, tag.isSelfClosing);
    const isWanted = this.#events.open(this);
    if (isWanted && this.#wantedAt === 0) this.#wantedAt = this.depth;
    if (tag.isSelfClosing) this.#close();
    else this.#open.push(bytes, tag.fullNameFrom, tag.nameTo, this.element);
    return end;
  }

  #knownElement(bytes: Uint8Array, from: number, to: number): number {
    const known = this.#known;
    for (let i = 0; i < known.length; i++) {
      const name = known[i] as Uint8Array;
      if (name.length === to - from && sameBytes(bytes, from, name)) return i + 1;
    }
    return 0;
  }

  #closeTag(bytes: Uint8Array, at: number, to: number): number {
    if (this.depth === 0) return BAD;
    let end = at + 2 + this.#open.nameLength;
    if (end >= to) return INCOMPLETE;
    if (!this.#open.isNamedAt(bytes, at + 2)) return BAD;
    let lines = 0;
    for (; end < to && bytes[end] !== GREATER; end++) {
      if (((CLASS_OF_BYTE[bytes[end] ?? 0] ?? 0) & SPACE) === 0) return BAD;
      if (this.#window.endsLine(end)) lines += 1;
    }
    if (end >= to) return INCOMPLETE;
    this.line += lines;
    this.element = this.#open.element;
    this.#place(at, end + 1, false);
    this.#open.pop();
    this.#close();
    return end + 1;
  }

  #close(): void {
    const isOwn = this.#wantedAt === this.depth;
    if (isOwn) this.text.finish();
    this.#events.close(this);
    if (isOwn) {
      this.#wantedAt = 0;
      this.text.drop();
    }
    this.depth -= 1;
  }

  #place(from: number, to: number, isSelfClosing: boolean): void {
    this.tagFrom = this.#window.before + from;
    this.tagTo = this.#window.before + to;
    this.isSelfClosing = isSelfClosing;
  }

  #passText(bytes: Uint8Array, at: number, to: number): number {
    const byte = bytes[at];
    if (byte === CARRIAGE_RETURN) return this.#passReturn(at);
    if (byte === AMPERSAND) {
      const end = entityEnd(bytes, at, to);
      if (end > 0 && this.#wantedAt > 0) this.text.addCharacter(entityCode(bytes, at));
      return end;
    }
    const end = this.#stretch.passText(bytes, at, to);
    this.line += this.#stretch.lines;
    if (end > 0 && this.#wantedAt > 0) this.text.add(bytes, at, end);
    return end;
  }

  /** A carriage return is a line feed, and nothing where a line feed follows it (XML 1.0, section 2.11). */
  #passReturn(at: number): number {
    const next = at + 1;
    if (next >= this.#window.to && !this.#isLast) return INCOMPLETE;
    if (!this.#window.endsLine(at)) return next;
    this.line += 1;
    const isText = this.#inside === "text" || this.#inside === "cdata";
    if (isText && this.#wantedAt > 0) this.text.addCharacter(LINE_FEED);
    return next;
  }

  /** Outside the root element there is only white space. */
  #passOutside(bytes: Uint8Array, at: number): number {
    const byte = bytes[at] ?? 0;
    if (byte === CARRIAGE_RETURN) return this.#passReturn(at);
    if (byte === LINE_FEED) this.line += 1;
    return ((CLASS_OF_BYTE[byte] ?? 0) & SPACE) === 0 ? BAD : at + 1;
  }

  #openSection(bytes: Uint8Array, at: number, to: number): number {
    const section = sectionAt(bytes, at, to);
    if (section === INCOMPLETE) return INCOMPLETE;
    if (section === null) return BAD;
    if (section.kind === "document-type") return this.#sawRoot ? BAD : refuseDoctype(this.#part);
    if (section.kind === "cdata" && this.depth === 0) return BAD;
    this.#inside = section.kind;
    return section.bodyFrom;
  }

  #openInstruction(bytes: Uint8Array, at: number, to: number): number {
    const isFirst = this.#window.before + at === this.#start;
    const end = instructionBody(bytes, at, to, isFirst);
    if (end < 0) return end;
    // A declaration is taken whole; of any other instruction the body is still to come.
    if (bytes[end - 1] !== GREATER) this.#inside = "instruction";
    else for (let i = at; i < end; i++) if (this.#window.endsLine(i)) this.line += 1;
    return end;
  }

  #passBody(bytes: Uint8Array, at: number, to: number): number {
    if (bytes[at] === CARRIAGE_RETURN) return this.#passReturn(at);
    const stretch = this.#stretch;
    const isText = this.#inside === "cdata" && this.#wantedAt > 0;
    const end = stretch.passBody(this.#inside, bytes, at, to);
    this.line += stretch.lines;
    if (end < 0) return end;
    if (isText) this.text.add(bytes, at, stretch.charactersTo);
    if (stretch.isClosed) this.#inside = "text";
    return end;
  }
}
