/** What tests take from a page: its text, ids, links and headings, without a browser. */

/** The text of a part of a page, entities as the signs they stand for. */
export function textOf(html: string): string {
  return html
    .replace(/<[^>]*>/g, "")
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&#39;", "'")
    .replaceAll("&amp;", "&");
}

/** All ids of a page, in their order. */
export function idsOf(html: string): readonly string[] {
  return [...html.matchAll(/\sid="([^"]*)"/g)].map(([, id]) => id ?? "");
}

/** Where the links of a page lead within it. */
export function targetsOf(html: string): readonly string[] {
  return [...html.matchAll(/\shref="#([^"]*)"/g)].map(([, id]) => id ?? "");
}

/** Levels of the headings of a page, in their order. */
export function levelsOf(html: string): readonly number[] {
  return [...html.matchAll(/<h([1-6])[\s>]/g)].map(([, level]) => Number(level));
}

/** The parts of a page that begin with the heading of a rule, by the rule's id; each ends at the next heading. */
export function rulePartsOf(html: string): ReadonlyMap<string, string> {
  const parts = html.split(/(?=<h[1-4][\s>])/).map((part) => [/^<h4 id="rule-([^"]*)"/.exec(part)?.[1], part] as const);
  return new Map(parts.flatMap(([id, part]) => (id === undefined ? [] : [[id, part] as const])));
}

/** How often a text stands in another. */
export function timesIn(text: string, part: string): number {
  return text.split(part).length - 1;
}
