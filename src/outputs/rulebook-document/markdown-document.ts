import { markedOutcome } from "../wording/outcomes.js";
import type { Block, Entry, Line, Piece, Row, Table } from "./block.js";
import { type BookShown, bookShown, type RulebookDocumentInput } from "./book-shown.js";
import { documentBlocks, titleBlocks } from "./document-blocks.js";
import { htmlText, markdownCode, markdownId, markdownPath, markdownText } from "./markdown-text.js";
import { sectionsOf } from "./sections.js";
import { pictureNotes, pictureRows, valueNotes } from "./zone-words.js";

/** The rulebook as Markdown (CommonMark with tables), with the same content as the page; pictures are tables. */
export function rulebookMarkdown(input: RulebookDocumentInput): string {
  const book: BookShown = bookShown(input);
  const blocks = documentBlocks(book);
  return `${[...titleBlocks(book).flatMap(partsOf), contents(blocks), ...blocks.flatMap(partsOf)].join("\n\n")}\n`;
}

/** Blocks as parts that an empty line divides. */
export function markdownBlocks(blocks: readonly Block[]): string {
  return `${blocks.flatMap(partsOf).join("\n\n")}\n`;
}

function contents(blocks: readonly Block[]): string {
  const lines = sectionsOf(blocks).flatMap(({ head, parts }) => [
    `- ${linked(head.line, head.id)}`,
    ...parts.map((part) => `  - ${linked(part.line, part.id)}`),
  ]);
  return `## Contents\n\n${lines.join("\n")}`;
}

function linked(line: Line, id: string): string {
  return `[${lineOf(line)}](#${markdownId(id)})`;
}

function partsOf(block: Block): readonly string[] {
  switch (block.is) {
    case "heading":
      return [...(block.id === "" ? [] : [anchor(block.id)]), `${"#".repeat(block.level)} ${lineOf(block.line)}`];
    case "text":
      return [lineOf(block.line)];
    case "list":
      return [listOf(block.items)];
    case "box":
      return [`**${markdownText(block.title)}**`, listOf(block.items)];
    case "entries":
      return block.entries.flatMap(entryParts);
    case "fold":
      if (block.isOpen) return [`**${markdownText(block.summary)}**`, ...block.blocks.flatMap(partsOf)];
      return [`<details><summary>${htmlText(block.summary)}</summary>`, ...block.blocks.flatMap(partsOf), "</details>"];
    case "picture": {
      const { picture } = block;
      const notes = [...valueNotes(picture), ...pictureNotes(picture)];
      const rows = pictureRows(picture).map(([values, outcome]): Row => ({ cells: [[values], [outcome]] }));
      const table = tableOf({ is: "table", caption: "", headings: [picture.axis, "outcome"], rows });
      return notes.length === 0 ? [table] : [table, markdownText(`${notes.join("; ")}.`)];
    }
    case "table":
      return [...(block.caption === "" ? [] : [`**${markdownText(block.caption)}**`]), tableOf(block)];
  }
}

/** A label with what stands under it: in its line, or in parts of its own. */
function entryParts({ label, blocks: [first, ...others] }: Entry): readonly string[] {
  const own = `**${markdownText(label)}:**`;
  const rest = others.flatMap(partsOf);
  if (first === undefined) return [own];
  return first.is === "text" ? [`${own} ${lineOf(first.line)}`, ...rest] : [own, ...partsOf(first), ...rest];
}

function listOf(items: readonly Line[]): string {
  return items.map((item) => `- ${lineOf(item)}`).join("\n");
}

function tableOf({ headings, rows }: Table): string {
  const cells = (texts: readonly string[]): string => `| ${texts.map((text) => text || " ").join(" | ")} |`;
  return [
    cells(headings.map(markdownText)),
    cells(headings.map(() => "---")),
    ...rows.map(({ id, cells: [first = [], ...others] }) =>
      cells([`${id === undefined ? "" : anchor(id)}${lineOf(first)}`, ...others.map(lineOf)]),
    ),
  ].join("\n");
}

function anchor(id: string): string {
  return `<a id="${markdownId(id)}"></a>`;
}

function lineOf(line: Line): string {
  return line.map(pieceOf).join("");
}

function pieceOf(piece: Piece): string {
  if (typeof piece === "string") return markdownText(piece);
  if ("link" in piece) return `[${markdownText(piece.link)}](#${markdownId(piece.to)})`;
  if ("strong" in piece) return `**${markdownText(piece.strong)}**`;
  if ("outcome" in piece) return `**${markedOutcome(piece.outcome)}**`;
  if ("file" in piece) return `[${markdownText(piece.file)}](${markdownPath(piece.path)})`;
  return piece.to === undefined ? markdownCode(piece.code) : `[${markdownCode(piece.code)}](#${markdownId(piece.to)})`;
}
