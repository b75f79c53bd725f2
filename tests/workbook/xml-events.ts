import { Unreadable } from "../../src/workbook/unreadable.js";
import { XmlFeed } from "../../src/workbook/xml-feed.js";
import { passXml } from "../../src/workbook/xml-pass.js";
import { XmlScanner } from "../../src/workbook/xml-scan.js";

/** What a pass over a part gave: every event as a line, and how it ended. */
export interface Pass {
  readonly events: readonly string[];
  /** "whole", or code and sentence of the refusal. */
  readonly ending: string;
  readonly code: string;
}

/** Elements whose text is asked for: those with short names, so that both passes ask alike. */
const isWanted = (name: string): boolean => name.length === 1 || name.length === 3;

/** The events of the reference parser. */
export function referencePass(bytes: Uint8Array): Pass {
  const events: string[] = [];
  return ended(events, () =>
    passXml(
      { name: "p.xml", bytes },
      {
        open(name, attributes, depth) {
          events.push(`${depth} <${name} ${JSON.stringify(Object.entries(attributes))}>`);
          return isWanted(name);
        },
        close(name, text, depth) {
          events.push(`${depth} ${JSON.stringify(text)}</${name}>`);
        },
      },
    ),
  );
}

/**
 * The events of the scanner.
 *
 * @param pieces - sizes of the pieces in which it gets the bytes, used in turn
 */
export function scannerPass(bytes: Uint8Array, pieces: readonly number[]): Pass {
  const events: string[] = [];
  const names: string[] = [];
  const scanner = new XmlScanner("p.xml", [], {
    open(xml) {
      const { tag } = xml;
      const attributes = Array.from({ length: tag.attributeCount }, (_, i) => [tag.attributeName(i), tag.value(i)]);
      names[xml.depth] = tag.localName;
      // As an object would list them: names that are whole numbers first.
      const listed = Object.entries(Object.fromEntries(attributes));
      events.push(`${xml.depth} <${tag.localName} ${JSON.stringify(listed)}>`);
      return isWanted(tag.localName);
    },
    close(xml) {
      events.push(`${xml.depth} ${JSON.stringify(xml.text.string)}</${names[xml.depth]}>`);
    },
  });
  return ended(events, () => {
    const feed = new XmlFeed("p.xml", scanner);
    let from = 0;
    for (let i = 0; from < bytes.length; i++) {
      const to = Math.min(bytes.length, from + (pieces[i % pieces.length] ?? 1));
      // A copy that is spoiled afterwards, so that nothing can lean on bytes that are gone.
      const piece = new Uint8Array(bytes.subarray(from, to));
      feed.write(piece);
      piece.fill(0x3c);
      from = to;
    }
    feed.end();
  });
}

function ended(events: readonly string[], pass: () => void): Pass {
  try {
    pass();
    return { events, ending: "whole", code: "whole" };
  } catch (error) {
    if (!(error instanceof Unreadable)) throw error;
    return { events, ending: `${error.file.code}: ${error.file.text}`, code: error.file.code };
  }
}
