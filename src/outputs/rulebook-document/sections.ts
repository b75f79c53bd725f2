import type { Block } from "./block.js";

type Heading = Extract<Block, { is: "heading" }>;

/** Headings of the second level with those of the third below them: what a table of contents lists. */
export function sectionsOf(
  blocks: readonly Block[],
): readonly { readonly head: Heading; readonly parts: readonly Heading[] }[] {
  const sections: { head: Heading; parts: Heading[] }[] = [];
  for (const block of blocks) {
    if (block.is !== "heading") continue;
    if (block.level === 2) sections.push({ head: block, parts: [] });
    else if (block.level === 3) sections.at(-1)?.parts.push(block);
  }
  return sections;
}
