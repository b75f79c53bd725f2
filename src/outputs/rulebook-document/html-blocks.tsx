import type { ComponentChildren } from "preact";
import { Mark } from "../html/mark.js";
import { shownText } from "../html/shown-text.js";
import type { Block, Entry, Line, Piece, Table } from "./block.js";
import { Picture } from "./picture-svg.js";

/** Parts of the document as elements of a page. */
export function Blocks({ blocks }: { readonly blocks: readonly Block[] }) {
  return <>{blocks.map((block) => one(block))}</>;
}

function one(block: Block) {
  switch (block.is) {
    case "heading":
      return (
        <Heading level={block.level} id={block.id}>
          <Pieces line={block.line} />
        </Heading>
      );
    case "text":
      return (
        <p>
          <Pieces line={block.line} />
        </p>
      );
    case "list":
      return <List items={block.items} />;
    case "box":
      return (
        <section class="cautions" aria-label={shownText(block.title)}>
          <p>
            <strong>{shownText(block.title)}</strong>
          </p>
          <List items={block.items} />
        </section>
      );
    case "entries":
      return <Entries entries={block.entries} />;
    case "fold":
      return (
        <details open={block.isOpen}>
          <summary>{shownText(block.summary)}</summary>
          <Blocks blocks={block.blocks} />
        </details>
      );
    case "picture":
      return <Picture picture={block.picture} />;
    case "table":
      return <TableOf table={block} />;
  }
}

interface HeadingParts {
  readonly level: 1 | 2 | 3 | 4;
  readonly id: string;
  readonly children: ComponentChildren;
}

function Heading({ level, id, children }: HeadingParts) {
  const own = shownText(id);
  if (level === 1) return <h1 id={own}>{children}</h1>;
  if (level === 2) return <h2 id={own}>{children}</h2>;
  return level === 3 ? <h3 id={own}>{children}</h3> : <h4 id={own}>{children}</h4>;
}

function List({ items }: { readonly items: readonly Line[] }) {
  return (
    <ul>
      {items.map((item) => (
        <li>
          <Pieces line={item} />
        </li>
      ))}
    </ul>
  );
}

function Entries({ entries }: { readonly entries: readonly Entry[] }) {
  return (
    <dl>
      {entries.map(({ label, blocks }) => (
        <div>
          <dt>{shownText(label)}</dt>
          <dd>
            <Blocks blocks={blocks} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

/** A table of so few rows stays on one page; browsers would leave the caption of a longer one alone, too, but seldom. */
const KEPT_TOGETHER = 12;

function TableOf({ table: { caption, headings, rows, kind } }: { readonly table: Table }) {
  return (
    <div class={rows.length <= KEPT_TOGETHER && kind !== "cases" ? "wide together" : "wide"}>
      <table class={kind}>
        <caption>{shownText(caption)}</caption>
        <thead>
          <tr>
            {headings.map((heading) => (
              <th scope="col">{shownText(heading)}</th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map(({ id, cells: [first = [], ...others] }) => (
            <tr id={id === undefined ? undefined : shownText(id)}>
              <th scope="row">
                <Pieces line={first} />
              </th>
              {others.map((cell) => (
                <td>
                  <Pieces line={cell} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

/** The pieces of a line, links and marks included. */
export function Pieces({ line }: { readonly line: Line }) {
  return <>{line.map((piece) => pieceOf(piece))}</>;
}

function pieceOf(piece: Piece) {
  if (typeof piece === "string") return shownText(piece);
  if ("link" in piece) return <a href={hrefOf(piece.to)}>{shownText(piece.link)}</a>;
  if ("strong" in piece) return <strong>{shownText(piece.strong)}</strong>;
  if ("outcome" in piece) return <Mark outcome={piece.outcome} />;
  if ("file" in piece)
    return <a href={piece.path.split("/").map(encodeURIComponent).join("/")}>{shownText(piece.file)}</a>;
  const code = <code>{shownText(piece.code)}</code>;
  return piece.to === undefined ? code : <a href={hrefOf(piece.to)}>{code}</a>;
}

function hrefOf(id: string): string {
  return `#${encodeURIComponent(shownText(id))}`;
}
