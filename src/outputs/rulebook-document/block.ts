import type { Outcome } from "../../base/index.js";
import type { BandPicture } from "./band-picture.js";

/**
 * A piece of a line: plain text, or text that leads to an id of the document, an id or name as written in files
 * (`code`, which may lead somewhere, too), a file beside the document, a word that stands out, or an outcome with its mark.
 */
export type Piece =
  | string
  | { readonly link: string; readonly to: string }
  | { readonly code: string; readonly to?: string }
  | { readonly file: string; readonly path: string }
  | { readonly strong: string }
  | { readonly outcome: Outcome };

/** Pieces that stand side by side. */
export type Line = readonly Piece[];

/** A row of a table; its first cell names it. */
export interface Row {
  /** Where links to the row lead. */
  readonly id?: string;
  readonly cells: readonly Line[];
}

/** A table with a caption; every row has a cell for each heading. */
export interface Table {
  readonly is: "table";
  readonly caption: string;
  readonly headings: readonly string[];
  readonly rows: readonly Row[];
  /** Tables of one kind have columns of the same widths. */
  readonly kind?: "rules" | "cases" | "facts" | "computed" | "index";
}

/** A part of the document; the same parts are written as HTML and as Markdown. */
export type Block =
  /** The id is empty where nothing leads to the heading. */
  | { readonly is: "heading"; readonly level: 1 | 2 | 3 | 4; readonly id: string; readonly line: Line }
  | { readonly is: "text"; readonly line: Line }
  | { readonly is: "list"; readonly items: readonly Line[] }
  | { readonly is: "box"; readonly title: string; readonly items: readonly Line[] }
  | { readonly is: "entries"; readonly entries: readonly Entry[] }
  | { readonly is: "fold"; readonly summary: string; readonly isOpen: boolean; readonly blocks: readonly Block[] }
  | { readonly is: "picture"; readonly picture: BandPicture }
  | Table;

/** What is said under a label ("Applies where"). */
export interface Entry {
  readonly label: string;
  readonly blocks: readonly Block[];
}

/** A paragraph. */
export function text(...line: Line): Block {
  return { is: "text", line };
}

/** A list; without items nothing. */
export function list(items: readonly Line[]): readonly Block[] {
  return items.length === 0 ? [] : [{ is: "list", items }];
}

/** An entry of one paragraph. */
export function entry(label: string, ...line: Line): Entry {
  return { label, blocks: [text(...line)] };
}

/** Lines one after the other, with a sign between them. */
export function joined(lines: readonly Line[], between = ", "): Line {
  return lines.flatMap((line, index) => (index === 0 ? line : [between, ...line]));
}

/** Ids within the document; what a file calls a thing is part of them. */
export const idOf = {
  rule: (id: string): string => `rule-${id}`,
  fact: (id: string): string => `fact-${id.replaceAll(".", "-")}`,
  topic: (name: string): string => `topic-${name}`,
  model: (id: string): string => `model-${id}`,
  table: (id: string): string => `table-${id}`,
  group: (id: string): string => `group-${id}`,
  way: (id: string): string => `way-${id}`,
} as const;
