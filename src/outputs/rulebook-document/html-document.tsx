import { htmlPage } from "../html/page.js";
import { bookInWords } from "../wording/overlays.js";
import type { Block } from "./block.js";
import { type BookShown, bookShown, type RulebookDocumentInput } from "./book-shown.js";
import { documentBlocks, titleBlocks } from "./document-blocks.js";
import { documentStyle } from "./document-style.js";
import { Blocks, Pieces } from "./html-blocks.js";
import { Hatchings } from "./picture-svg.js";
import { sectionsOf } from "./sections.js";

/** The rulebook as one HTML page: for a light or a dark screen and for paper, without scripts, nothing to fetch. */
export function rulebookHtml(input: RulebookDocumentInput): string {
  const book = bookShown(input);
  const blocks = documentBlocks(book);
  return htmlPage({
    title: bookInWords(book.rulebook),
    style: documentStyle(runningHead(book)),
    script: null,
    mainId: "document",
    body: (
      <>
        <Hatchings />
        <header>
          <Blocks blocks={titleBlocks(book)} />
        </header>
        <Contents blocks={blocks} />
        <main id="document" tabIndex={-1}>
          <Blocks blocks={blocks} />
        </main>
      </>
    ),
  });
}

/** What stands on top of every printed page. */
function runningHead({ rulebook, asOf }: BookShown): string {
  return `${bookInWords(rulebook)}, in force on ${asOf}`;
}

/** Clauses and annexes, with their parts below them; rules are found by the tables of clause 4. */
function Contents({ blocks }: { readonly blocks: readonly Block[] }) {
  return (
    <nav aria-labelledby="contents">
      <h2 id="contents">Contents</h2>
      <ul>
        {sectionsOf(blocks).map(({ head, parts }) => (
          <li key={head.id}>
            <a href={`#${head.id}`}>
              <Pieces line={head.line} />
            </a>
            {parts.length > 0 && (
              <ul>
                {parts.map((part) => (
                  <li key={part.id}>
                    <a href={`#${part.id}`}>
                      <Pieces line={part.line} />
                    </a>
                  </li>
                ))}
              </ul>
            )}
          </li>
        ))}
      </ul>
    </nav>
  );
}
